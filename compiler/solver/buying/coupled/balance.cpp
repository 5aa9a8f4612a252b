#include "buying/coupled/balance.hpp"

#include <algorithm>
#include <cstdlib>
#include <optional>

namespace manciple::buying {
namespace {

/// Sums in each of the two lists: a million pairs, for sums of some hundred thousand Money.
constexpr std::size_t most_sums = 1024;

/// What a item can add to a row by a change of its column.
struct Shift {
  Money by = 0;
  std::size_t column = 0;
};
struct Choices {
  std::size_t item = 0;
  /// The first is the column as it is, which adds nothing.
  std::vector<Shift> shifts;

  /// Between the least and the most it can add.
  Money middle() const {
    const auto [least, most] = std::minmax_element(
        shifts.begin(), shifts.end(), [](const Shift& a, const Shift& b) { return a.by < b.by; });
    return (least->by + most->by) / 2;
  }
  Money widest() const {
    Money most = 0;
    for (const Shift& shift : shifts) {
      most = std::max(most, std::abs(shift.by));
    }
    return most;
  }
};

/// All sums of one shift of each of the items [begin, end), ascending; `code` tells which shifts.
struct Sum {
  Money value = 0;
  std::size_t code = 0;
};
std::vector<Sum> sums_of(const std::vector<Choices>& items, std::size_t begin, std::size_t end) {
  std::vector<Sum> sums(1);
  std::size_t radix = 1;
  for (std::size_t i = begin; i < end; ++i) {
    const std::size_t before = sums.size();
    for (std::size_t s = 1; s < items[i].shifts.size(); ++s) {
      for (std::size_t k = 0; k < before; ++k) {
        sums.push_back({sums[k].value + items[i].shifts[s].by, sums[k].code + s * radix});
      }
    }
    radix *= items[i].shifts.size();
  }
  std::sort(sums.begin(), sums.end(), [](const Sum& a, const Sum& b) {
    return a.value != b.value ? a.value < b.value : a.code < b.code;
  });
  return sums;
}

class Balance {
public:
  Balance(const std::vector<ColumnSet>& items, const Joint& joint,
          const std::vector<std::size_t>& together, std::vector<std::size_t> column)
      : items_(items), joint_(joint), together_(together), column_(std::move(column)) {
    spent_.assign(joint.least_spend.size(), 0);
    for (std::size_t item = 0; item < items.size(); ++item) {
      for (std::size_t row = 0; row < spent_.size(); ++row) {
        spent_[row] += now(item).spend[row];
      }
    }
  }

  /// The last row gets what is left; false if that cannot be enough.
  bool run() {
    for (done_ = 0; done_ + 1 < together_.size() && to_spare() >= 0; ++done_) {
      if (!fill(together_[done_])) {
        return false;
      }
    }
    return to_spare() >= 0;
  }
  const std::vector<std::size_t>& column() const { return column_; }

private:
  const Column& now(std::size_t item) const { return items_[item].columns[column_[item]]; }

  /// What is spent beyond the limits in the rows that are not done.
  Money to_spare() const {
    Money sum = 0;
    for (std::size_t i = done_; i < together_.size(); ++i) {
      sum += spent_[together_[i]] - joint_.least_spend[together_[i]];
    }
    return sum;
  }

  bool is_free(std::size_t row) const {
    return std::find(together_.begin() + static_cast<std::ptrdiff_t>(done_), together_.end(),
                     row) != together_.end();
  }

  /// It is no worse except that it shares out otherwise what is spent in the rows not done.
  bool may_replace(const Column& column, const Column& old) const {
    if (column.cost > old.cost) {
      return false;
    }
    for (std::size_t row = 0; row < column.room.size(); ++row) {
      if (column.room[row] > old.room[row]) {
        return false;
      }
    }
    Money more = 0;
    for (std::size_t row = 0; row < column.spend.size(); ++row) {
      if (is_free(row)) {
        more += column.spend[row] - old.spend[row];
      } else if (column.spend[row] < old.spend[row]) {
        return false;
      }
    }
    return more >= 0;
  }

  Choices choices(std::size_t item, std::size_t row) const {
    Choices result{item, {{0, column_[item]}}};
    const std::vector<Column>& columns = items_[item].columns;
    for (std::size_t p = 0; p < columns.size() && result.shifts.size() < most_shifts; ++p) {
      const Money by = columns[p].spend[row] - now(item).spend[row];
      const bool known = std::any_of(result.shifts.begin(), result.shifts.end(),
                                     [&](const Shift& shift) { return shift.by == by; });
      if (!known && may_replace(columns[p], now(item))) {
        result.shifts.push_back({by, p});
      }
    }
    return result;
  }

  void take(std::size_t item, std::size_t column) {
    for (std::size_t row = 0; row < spent_.size(); ++row) {
      spent_[row] += items_[item].columns[column].spend[row] - now(item).spend[row];
    }
    column_[item] = column;
  }

  /// Spends in the row what must be, and no more than can be spared.
  bool fill(std::size_t row) {
    std::vector<Choices> items;
    for (std::size_t item = 0; item < items_.size(); ++item) {
      items.push_back(choices(item, row));
      if (items.back().shifts.size() == 1) {
        items.pop_back();
      }
    }
    // Goods that add little make the lists; the others bring the row to where most sums are.
    std::stable_sort(items.begin(), items.end(),
                     [](const Choices& a, const Choices& b) { return a.widest() < b.widest(); });
    std::size_t middle = 0;
    std::size_t end = 0;
    for (std::size_t* const bound : {&middle, &end}) {
      std::size_t count = 1;
      *bound = middle;
      while (*bound < items.size() && count * items[*bound].shifts.size() <= most_sums) {
        count *= items[(*bound)++].shifts.size();
      }
    }
    Money middle_sum = 0;
    for (std::size_t i = 0; i < end; ++i) {
      middle_sum += items[i].middle();
    }
    for (std::size_t i = items.size(); i-- > end;) {
      approach(items[i], joint_.least_spend[row] - spent_[row] - middle_sum);
    }
    return meet(items, middle, end, joint_.least_spend[row] - spent_[row]);
  }

  void approach(const Choices& choices, Money missing) {
    const auto nearest = std::min_element(
        choices.shifts.begin(), choices.shifts.end(), [&](const Shift& a, const Shift& b) {
          return std::abs(a.by - missing) < std::abs(b.by - missing);
        });
    take(choices.item, nearest->column);
  }

  /// The least sum of both lists that is not below what is missing.
  bool meet(const std::vector<Choices>& items, std::size_t middle, std::size_t end, Money missing) {
    const std::vector<Sum> first = sums_of(items, 0, middle);
    const std::vector<Sum> second = sums_of(items, middle, end);
    std::optional<Money> least;
    std::size_t code = 0;
    std::size_t other_code = 0;
    std::size_t k = second.size();
    for (const Sum& sum : first) {
      while (k > 0 && sum.value + second[k - 1].value >= missing) {
        --k;
      }
      if (k < second.size() && (!least || sum.value + second[k].value < *least)) {
        least = sum.value + second[k].value;
        code = sum.code;
        other_code = second[k].code;
      }
    }
    if (!least || *least - missing > to_spare()) {
      return false;
    }
    for (std::size_t i = 0; i < end; ++i) {
      std::size_t& rest = i < middle ? code : other_code;
      const std::vector<Shift>& shifts = items[i].shifts;
      take(items[i].item, shifts[rest % shifts.size()].column);
      rest /= shifts.size();
    }
    return true;
  }

  static constexpr std::size_t most_shifts = 8;

  const std::vector<ColumnSet>& items_;
  const Joint& joint_;
  const std::vector<std::size_t>& together_;
  std::vector<std::size_t> column_;
  /// By spend row.
  std::vector<Money> spent_;
  /// So many of the rows have what they need.
  std::size_t done_ = 0;
};

} // namespace

std::vector<std::size_t> balance(const std::vector<ColumnSet>& items, const Joint& joint,
                                 std::vector<std::size_t> together,
                                 std::vector<std::size_t> column) {
  // What may be bought late may mostly be bought early, too, but not the other way round: the last
  // stops first.
  std::reverse(together.begin(), together.end());
  Balance last_first(items, joint, together, column);
  if (last_first.run()) {
    return last_first.column();
  }
  std::reverse(together.begin(), together.end());
  Balance first_first(items, joint, together, std::move(column));
  first_first.run();
  return first_first.column();
}

} // namespace manciple::buying
