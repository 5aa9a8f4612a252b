#pragma once

#include "buying/stops/stop_search.hpp"

namespace manciple::buying {

/// The best stops and plans found, and what is proven of them.
struct Found {
  /// `impossible` only where a restriction bars every plan.
  Cost cost = impossible;
  Cost bound = impossible;
  OpenStops open;
  Table<ItemId, ItemPlan> plans;
  std::int64_t subproblems = 0;

  [[nodiscard]] bool proven() const { return bound.value >= cost.value; }
};

/// For items as prepared (perhaps under a restriction) and stops as chosen.
Found search(const Model& model, const Table<ItemId, Prepared>& items, const StopChoices& choices,
             WorkBudget& budget);

} // namespace manciple::buying
