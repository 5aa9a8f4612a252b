#pragma once

#include "scheduling/network.hpp"

namespace manciple::scheduling {

/// Minutes that no schedule can beat: the longest chain, and for each resource the work that has
/// to be done after some head and before some tail, at full capacity.
int lower_bound(const ActivityNetwork& network);

} // namespace manciple::scheduling
