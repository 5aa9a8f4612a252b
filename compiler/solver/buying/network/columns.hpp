#pragma once

#include "buying/network/network.hpp"

#include <vector>

namespace manciple::buying {

/// The limits that are looked at in choosing among plans: nights of a place, and stops where it
/// matters how much is spent.
struct Rows {
  std::vector<std::pair<Place, Day>> room;
  struct Spend {
    /// Several stops are looked at together if each must be reached: less strict, but it leaves
    /// open where the same thing is bought.
    std::vector<StopId> stops;
    /// What must be spent there; more does not matter. 0 if nothing must.
    Money least = 0;
    /// What can be got back of what is spent there; then it is one stop.
    Money credit = 0;
  };
  std::vector<Spend> spend;
};

/// One plan of an item, as far as it matters to the others: a column of the program that chooses
/// one for each.
struct Column {
  /// Purchases, waste and so on as they are; and with multipliers, for comparing.
  Cost cost;
  Fine priced = 0;
  /// By row: room taken, in thousandths of a microlitre; and Money spent.
  std::vector<std::int64_t> room;
  std::vector<Money> spend;
  /// In the network.
  Path path;
};

struct ColumnSet {
  /// Ascending by priced cost.
  std::vector<Column> columns;
  /// None was left out for lack of time.
  bool finished = true;
};

/// All plans in the network whose priced cost exceeds the least by at most `slack`, without those
/// that another one dominates: in cost and in every row. Gives up (`finished` is false) at `most`
/// partial plans or when the budget is spent.
ColumnSet columns_within(const Network& network, const Tariff& tariff, const Rows& rows, Fine slack,
                         std::size_t most, WorkBudget& budget);

/// The same, up to what one of its paths exceeds the least by and `slack` more, and the column of
/// that path, which may be dominated. If it gives up, or nothing can be spent otherwise, there is
/// only that.
struct Alike {
  ColumnSet set;
  Column column;
};
Alike columns_like(const Network& network, const Tariff& tariff, const Rows& rows, const Path& path,
                   Fine slack, std::size_t most, WorkBudget& budget);

} // namespace manciple::buying
