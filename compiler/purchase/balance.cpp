#include "purchase/balance.hpp"

#include <algorithm>
#include <cstdlib>
#include <optional>

namespace manciple::purchase {
namespace {

/// Sums in each of the two lists: a million pairs, for sums of some hundred thousand Money.
constexpr std::size_t most_sums = 1024;

/// What a good can add to a row by a change of its plan.
struct Shift {
  Money by = 0;
  std::size_t plan = 0;
};
struct Choices {
  GoodId good = 0;
  /// The first is the plan as it is, which adds nothing.
  std::vector<Shift> shifts;

  /// Between the least and the most it can add.
  Money middle() const {
    const auto [least, most] = std::minmax_element(
        shifts.begin(), shifts.end(), [](const Shift& a, const Shift& b) { return a.by < b.by; });
    return (least->by + most->by) / 2;
  }
  Money widest() const {
    Money most = 0;
    for (const Shift& shift : shifts)
      most = std::max(most, std::abs(shift.by));
    return most;
  }
};

/// All sums of one shift of each of the goods [begin, end), ascending; `code` tells which shifts.
struct Sum {
  Money value = 0;
  std::size_t code = 0;
};
std::vector<Sum> sums_of(const std::vector<Choices>& goods, std::size_t begin, std::size_t end) {
  std::vector<Sum> sums(1);
  std::size_t radix = 1;
  for (std::size_t i = begin; i < end; ++i) {
    const std::size_t before = sums.size();
    for (std::size_t s = 1; s < goods[i].shifts.size(); ++s)
      for (std::size_t k = 0; k < before; ++k)
        sums.push_back({sums[k].value + goods[i].shifts[s].by, sums[k].code + s * radix});
    radix *= goods[i].shifts.size();
  }
  std::sort(sums.begin(), sums.end(), [](const Sum& a, const Sum& b) {
    return a.value != b.value ? a.value < b.value : a.code < b.code;
  });
  return sums;
}

class Balance {
public:
  Balance(const std::vector<PlanSet>& goods, const Joint& joint,
          const std::vector<std::size_t>& together, std::vector<std::size_t> plan)
      : goods_(goods), joint_(joint), together_(together), plan_(std::move(plan)) {
    spent_.assign(joint.least_spend.size(), 0);
    for (GoodId good = 0; good < goods.size(); ++good)
      for (std::size_t row = 0; row < spent_.size(); ++row)
        spent_[row] += now(good).spend[row];
  }

  /// The last row gets what is left; false if that cannot be enough.
  bool run() {
    for (done_ = 0; done_ + 1 < together_.size() && to_spare() >= 0; ++done_)
      if (!fill(together_[done_]))
        return false;
    return to_spare() >= 0;
  }
  const std::vector<std::size_t>& plan() const { return plan_; }

private:
  const Plan& now(GoodId good) const { return goods_[good].plans[plan_[good]]; }

  /// What is spent beyond the limits in the rows that are not done.
  Money to_spare() const {
    Money sum = 0;
    for (std::size_t i = done_; i < together_.size(); ++i)
      sum += spent_[together_[i]] - joint_.least_spend[together_[i]];
    return sum;
  }

  bool is_free(std::size_t row) const {
    return std::find(together_.begin() + static_cast<std::ptrdiff_t>(done_), together_.end(),
                     row) != together_.end();
  }

  /// It is no worse except that it shares out otherwise what is spent in the rows not done.
  bool may_replace(const Plan& plan, const Plan& old) const {
    if (plan.cost > old.cost)
      return false;
    for (std::size_t row = 0; row < plan.room.size(); ++row)
      if (plan.room[row] > old.room[row])
        return false;
    Money more = 0;
    for (std::size_t row = 0; row < plan.spend.size(); ++row) {
      if (is_free(row))
        more += plan.spend[row] - old.spend[row];
      else if (plan.spend[row] < old.spend[row])
        return false;
    }
    return more >= 0;
  }

  Choices choices(GoodId good, std::size_t row) const {
    Choices result{good, {{0, plan_[good]}}};
    const std::vector<Plan>& plans = goods_[good].plans;
    for (std::size_t p = 0; p < plans.size() && result.shifts.size() < most_shifts; ++p) {
      const Money by = plans[p].spend[row] - now(good).spend[row];
      const bool known = std::any_of(result.shifts.begin(), result.shifts.end(),
                                     [&](const Shift& shift) { return shift.by == by; });
      if (!known && may_replace(plans[p], now(good)))
        result.shifts.push_back({by, p});
    }
    return result;
  }

  void take(GoodId good, std::size_t plan) {
    for (std::size_t row = 0; row < spent_.size(); ++row)
      spent_[row] += goods_[good].plans[plan].spend[row] - now(good).spend[row];
    plan_[good] = plan;
  }

  /// Spends in the row what must be, and no more than can be spared.
  bool fill(std::size_t row) {
    std::vector<Choices> goods;
    for (GoodId good = 0; good < goods_.size(); ++good) {
      goods.push_back(choices(good, row));
      if (goods.back().shifts.size() == 1)
        goods.pop_back();
    }
    // Goods that add little make the lists; the others bring the row to where most sums are.
    std::stable_sort(goods.begin(), goods.end(),
                     [](const Choices& a, const Choices& b) { return a.widest() < b.widest(); });
    std::size_t middle = 0;
    std::size_t end = 0;
    for (std::size_t* const bound : {&middle, &end}) {
      std::size_t count = 1;
      *bound = middle;
      while (*bound < goods.size() && count * goods[*bound].shifts.size() <= most_sums)
        count *= goods[(*bound)++].shifts.size();
    }
    Money middle_sum = 0;
    for (std::size_t i = 0; i < end; ++i)
      middle_sum += goods[i].middle();
    for (std::size_t i = goods.size(); i-- > end;)
      approach(goods[i], joint_.least_spend[row] - spent_[row] - middle_sum);
    return meet(goods, middle, end, joint_.least_spend[row] - spent_[row]);
  }

  void approach(const Choices& choices, Money missing) {
    const auto nearest = std::min_element(
        choices.shifts.begin(), choices.shifts.end(), [&](const Shift& a, const Shift& b) {
          return std::abs(a.by - missing) < std::abs(b.by - missing);
        });
    take(choices.good, nearest->plan);
  }

  /// The least sum of both lists that is not below what is missing.
  bool meet(const std::vector<Choices>& goods, std::size_t middle, std::size_t end, Money missing) {
    const std::vector<Sum> first = sums_of(goods, 0, middle);
    const std::vector<Sum> second = sums_of(goods, middle, end);
    std::optional<Money> least;
    std::size_t code = 0;
    std::size_t other_code = 0;
    std::size_t k = second.size();
    for (const Sum& sum : first) {
      while (k > 0 && sum.value + second[k - 1].value >= missing)
        --k;
      if (k < second.size() && (!least || sum.value + second[k].value < *least)) {
        least = sum.value + second[k].value;
        code = sum.code;
        other_code = second[k].code;
      }
    }
    if (!least || *least - missing > to_spare())
      return false;
    for (std::size_t i = 0; i < end; ++i) {
      std::size_t& rest = i < middle ? code : other_code;
      const std::vector<Shift>& shifts = goods[i].shifts;
      take(goods[i].good, shifts[rest % shifts.size()].plan);
      rest /= shifts.size();
    }
    return true;
  }

  static constexpr std::size_t most_shifts = 8;

  const std::vector<PlanSet>& goods_;
  const Joint& joint_;
  const std::vector<std::size_t>& together_;
  std::vector<std::size_t> plan_;
  /// By spend row.
  std::vector<Money> spent_;
  /// So many of the rows have what they need.
  std::size_t done_ = 0;
};

} // namespace

std::vector<std::size_t> balance(const std::vector<PlanSet>& goods, const Joint& joint,
                                 std::vector<std::size_t> together, std::vector<std::size_t> plan) {
  // What may be bought late may mostly be bought early, too, but not the other way round: the last
  // stops first.
  std::reverse(together.begin(), together.end());
  Balance last_first(goods, joint, together, plan);
  if (last_first.run())
    return last_first.plan();
  std::reverse(together.begin(), together.end());
  Balance first_first(goods, joint, together, std::move(plan));
  first_first.run();
  return first_first.plan();
}

} // namespace manciple::purchase
