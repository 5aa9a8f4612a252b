#include "purchase/repair.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <optional>
#include <tuple>

namespace manciple::purchase {
namespace {

constexpr int most_moves = 200;
/// Moves that are looked at in pairs.
constexpr std::size_t most_paired = 1000;
/// What a Money that is still to be spent counts for, and a litre and night that is missing.
constexpr double short_penalty = 1;
constexpr double room_penalty = 50'000;

/// All in Money.
class Repair {
public:
  Repair(const std::vector<PlanSet>& goods, const Joint& joint, std::vector<std::size_t> plan)
      : goods_(goods), joint_(joint), plan_(std::move(plan)) {
    rows_.assign(joint.room.size() + joint.least_spend.size(), 0);
    for (GoodId good = 0; good < goods.size(); ++good)
      add(rows_, good, plan_[good], 1);
  }

  std::vector<std::size_t> run() {
    for (int moves = 0; moves < most_moves; ++moves) {
      collect();
      if (!take_best_one() && !take_best_pair())
        break;
    }
    return std::move(plan_);
  }

private:
  using Rows = std::vector<double>;
  struct Step {
    double cost = 0;
    GoodId good = 0;
    std::size_t plan = 0;
    Rows rows;
  };

  void add(Rows& rows, GoodId good, std::size_t plan, double times) const {
    const Plan& one = goods_[good].plans[plan];
    for (std::size_t row = 0; row < one.room.size(); ++row)
      rows[row] += times * static_cast<double>(one.room[row]);
    for (std::size_t row = 0; row < one.spend.size(); ++row)
      rows[one.room.size() + row] += times * static_cast<double>(one.spend[row]);
  }

  double penalty(const Rows& rows) const {
    const std::size_t rooms = joint_.room.size();
    double sum = 0;
    for (std::size_t row = 0; row < rooms; ++row)
      sum += room_penalty * std::max(0.0, rows[row] - static_cast<double>(joint_.room[row])) / 1e12;
    for (std::size_t row = rooms; row < rows.size(); ++row)
      sum += short_penalty *
             std::max(0.0, static_cast<double>(joint_.least_spend[row - rooms]) - rows[row]);
    return sum;
  }
  double penalty_after(const Step& a, const Step* b) const {
    Rows& rows = scratch_;
    rows = rows_;
    for (std::size_t row = 0; row < rows.size(); ++row)
      rows[row] += a.rows[row] + (b != nullptr ? b->rows[row] : 0);
    return penalty(rows);
  }

  /// All single steps from here, the ones that change the cost least first.
  void collect() {
    steps_.clear();
    for (GoodId good = 0; good < goods_.size(); ++good)
      for (std::size_t plan = 0; plan < goods_[good].plans.size(); ++plan) {
        if (plan == plan_[good])
          continue;
        Step step;
        step.cost = static_cast<double>(goods_[good].plans[plan].cost.value -
                                        goods_[good].plans[plan_[good]].cost.value) /
                    static_cast<double>(fine_per_money);
        step.good = good;
        step.plan = plan;
        step.rows.assign(rows_.size(), 0);
        add(step.rows, good, plan, 1);
        add(step.rows, good, plan_[good], -1);
        steps_.push_back(std::move(step));
      }
    std::sort(steps_.begin(), steps_.end(), [](const Step& a, const Step& b) {
      return std::tuple(std::abs(a.cost), a.good, a.plan) <
             std::tuple(std::abs(b.cost), b.good, b.plan);
    });
  }

  void take(const Step& step) {
    for (std::size_t row = 0; row < rows_.size(); ++row)
      rows_[row] += step.rows[row];
    plan_[step.good] = step.plan;
  }

  bool take_best_one() {
    const Step* best = nullptr;
    double least = penalty(rows_) - least_gain;
    for (const Step& step : steps_)
      if (const double now = step.cost + penalty_after(step, nullptr); now < least) {
        least = now;
        best = &step;
      }
    if (best != nullptr)
      take(*best);
    return best != nullptr;
  }

  bool take_best_pair() {
    std::optional<std::pair<std::size_t, std::size_t>> best;
    double least = penalty(rows_) - least_gain;
    const std::size_t count = std::min(steps_.size(), most_paired);
    for (std::size_t a = 0; a < count; ++a)
      for (std::size_t b = a + 1; b < count; ++b) {
        const double cost = steps_[a].cost + steps_[b].cost;
        if (steps_[a].good == steps_[b].good || cost >= least)
          continue;
        if (const double now = cost + penalty_after(steps_[a], &steps_[b]); now < least) {
          least = now;
          best.emplace(a, b);
        }
      }
    if (best) {
      take(steps_[best->first]);
      take(steps_[best->second]);
    }
    return best.has_value();
  }

  /// Less than any price, more than rounding.
  static constexpr double least_gain = 1e-3;

  const std::vector<PlanSet>& goods_;
  const Joint& joint_;
  std::vector<std::size_t> plan_;
  Rows rows_;
  std::vector<Step> steps_;
  mutable Rows scratch_;
};

} // namespace

std::vector<std::size_t> repair(const std::vector<PlanSet>& goods, const Joint& joint,
                                std::vector<std::size_t> plan) {
  return Repair(goods, joint, std::move(plan)).run();
}

} // namespace manciple::purchase
