#pragma once

#include "buying/search.hpp"

namespace manciple::buying {

/// The search when room, credit or spend-over-X reductions couple the items.
///
/// Multipliers on these make the items independent again, so that choose_stops bounds every set of
/// stops. A set whose bound leaves hope is settled exactly (see settle_stops.hpp). The multipliers
/// are those that suit the sets that looked best. There is always a list: the first one is that of
/// independent items, made to fit by raising the price of room.
Found search_coupled(const Model& model, const Coupling& coupling,
                     const Table<ItemId, Prepared>& items, const StopChoices& choices,
                     WorkBudget& budget);

} // namespace manciple::buying
