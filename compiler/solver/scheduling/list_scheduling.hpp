#pragma once

#include "scheduling/network.hpp"

namespace manciple::scheduling {

/// The first incumbent: several priority rules, with the serial and the parallel schedule
/// generation scheme, forwards and backwards, each made shorter by justification. Stops when
/// `bound` is reached. Starts by activity.
std::vector<int> heuristic_schedule(const ActivityNetwork& network, int bound);

int length(const ActivityNetwork& network, const std::vector<int>& start);

} // namespace manciple::scheduling
