#pragma once

#include "buying/stops/stop_search.hpp"

namespace manciple::buying {

/// Plans that fit into the room there is, for stops that are made: each item's cheapest one, while
/// room that is over-full is made dearer and dearer; or, if that does not help, as many of those as
/// there is room for. Then what has been driven out takes its cheapest plan again as far as it
/// fits. Nothing is proven of them.
Table<ItemId, ItemPlan> fitting_plans(const Model& model, const Coupling& coupling,
                                      const Table<ItemId, Prepared>& items, const OpenStops& open,
                                      WorkBudget& budget);

} // namespace manciple::buying
