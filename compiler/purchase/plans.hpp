#pragma once

#include <vector>

#include "purchase/prices.hpp"
#include "purchase/stops.hpp"

namespace manciple::purchase {

/// The limits that are looked at in choosing among plans: nights of a place, and stops where it
/// matters how much is spent.
struct Rows {
  std::vector<std::pair<Place, Day>> room;
  struct Spend {
    StopId stop = 0;
    /// What must be spent there; more does not matter. 0 if nothing must.
    Money least = 0;
    /// What can be got back of what is spent there.
    Money credit = 0;
  };
  std::vector<Spend> spend;
};

/// One way to meet a good's demands with the stops given.
struct Plan {
  /// Purchases, waste and salvage as they are; with prices, for comparing.
  Cost cost;
  Fine priced = 0;
  /// By row: room taken, in 1e-6 microlitres; and Money spent.
  std::vector<std::int64_t> room;
  std::vector<Money> spend;
  std::vector<Buy> buys;
};

struct PlanSet {
  /// Ascending by priced cost.
  std::vector<Plan> plans;
  /// No plan was left out for costing too much, and none for lack of time.
  bool all = true;
  bool finished = true;
};

/// All plans of a good whose priced cost exceeds the least by at most `slack`, without those that
/// another one beats in cost and in every row. `open` says which of the good's visits can be used.
/// Gives up (`finished` is false) at `most` partial plans or when the limits are reached.
PlanSet plans_within(const Model& model, const Prepared& good, const std::vector<bool>& open,
                     const Prices& prices, const Rows& rows, Fine slack, std::size_t most,
                     Limits& limits);

} // namespace manciple::purchase
