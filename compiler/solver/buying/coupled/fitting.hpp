#pragma once

#include "buying/stops/stop_search.hpp"

namespace manciple::buying {

/// Plans that fit into the room there is, for stops that are made: each item's cheapest one, while
/// room that is over-full is made dearer and dearer. Then what has been driven out takes its
/// cheapest plan again as far as there is room for it. Nothing is proven of them. None if even the
/// dearest room does not help (or the effort is spent).
std::optional<Table<ItemId, Plan>> fitting_plans(const Model& model, const Coupling& coupling,
                                                 const Table<ItemId, Prepared>& items,
                                                 const OpenStops& open, Effort& effort);

} // namespace manciple::buying
