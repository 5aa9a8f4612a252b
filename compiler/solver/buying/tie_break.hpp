#pragma once

#include "buying/search.hpp"

namespace manciple::buying {

/// Of lists that cost the same, one that is nicer: fewer packs, and on days that suit. Where items
/// are coupled, the multipliers have decided among those; here each item, one after the other,
/// takes its nicest plan for the stops made, if everything together then costs the same and fits.
void break_ties(const Model& model, const Table<ItemId, Prepared>& items, Found& found,
                WorkBudget& budget);

} // namespace manciple::buying
