#pragma once

#include "scheduling/network.hpp"

namespace manciple::scheduling {

/// A good schedule, quickly: several priority rules, serial and parallel generation, forwards and
/// backwards, each made shorter by justification. Stops when `bound` is reached. Starts by
/// activity.
std::vector<int> quick_schedule(const Network& network, int bound);

int length(const Network& network, const std::vector<int>& start);

} // namespace manciple::scheduling
