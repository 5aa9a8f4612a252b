#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "purchase/plans.hpp"
#include "purchase/stops.hpp"

namespace manciple::purchase {

/// Limits among which one plan is to be chosen for each good.
struct Joint {
  /// By room row: what there is, in 1e-6 microlitres.
  std::vector<std::int64_t> room;
  /// By spend row: what must be spent, and the stop's shop if its credit depends on the plans (then
  /// all its stops are among the rows).
  std::vector<Money> least_spend;
  std::vector<std::optional<ShopId>> credit_shop;
  /// By shop: what is taken off before credit.
  std::vector<Money> off;
  /// Subtracted for reductions that do not depend on the plans, and added for stops.
  Cost constant;
  /// Least possible total less the plans' priced costs.
  Fine priced_constant = 0;
};

struct Choice {
  Cost cost = impossible;
  /// By good: index of its plan.
  std::vector<std::size_t> plan;
  bool finished = true;
};

/// The cheapest combination of plans within the limits that costs less than `below`: labels, good
/// by good, cut off by priced costs. Gives up when the limits are reached or after `most` steps.
Choice combine(const Model& model, const std::vector<const PlanSet*>& goods, const Joint& joint,
               Cost below, Limits& limits, std::size_t most);

} // namespace manciple::purchase
