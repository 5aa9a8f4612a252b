#pragma once

#include "buying/network/columns.hpp"

#include <cstdint>
#include <optional>
#include <vector>

namespace manciple::buying {

/// Limits among which one column is to be chosen for each item.
struct Joint {
  /// By room row: what there is, in thousandths of a microlitre.
  std::vector<std::int64_t> room;
  /// By spend row: what must be spent, and the stop's shop if its credit depends on the columns
  /// (then all its stops are among the rows).
  std::vector<Money> least_spend;
  std::vector<std::optional<ShopId>> credit_shop;
  /// What is taken off before credit.
  Table<ShopId, Money> off;
  /// Subtracted for reductions that do not depend on the columns, and added for stops.
  Cost constant;
  /// Least possible total less the columns' priced costs.
  Fine priced_constant = 0;
};

struct Choice {
  Cost cost = impossible;
  /// By item: index of its column.
  std::vector<std::size_t> column;
  bool finished = true;
};

/// The cheapest combination of columns within the limits that costs less than `below`: labels, item
/// by item, cut off by priced costs. Gives up when the budget is spent or after `most` steps.
Choice combine(const Model& model, const std::vector<const ColumnSet*>& items, const Joint& joint,
               Cost below, WorkBudget& budget, std::size_t most);

} // namespace manciple::buying
