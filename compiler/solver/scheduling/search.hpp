#pragma once

#include "scheduling/network.hpp"

#include <chrono>

namespace manciple::scheduling {

struct Budget {
  std::chrono::steady_clock::time_point deadline;
  std::int64_t nodes = 0;
};

/// Branch and bound over start times with learning (lazy clause generation: Ohrimenko, Stuckey and
/// Codish 2009). Makes the incumbent `schedule` (feasible, with a valid bound) shorter and its
/// bound higher until they meet or the budget is spent; adds to its nodes.
///
/// Every whole minute is a possible start, so nothing is lost by activities whose pieces take
/// different things, for which a schedule in which nothing can move earlier need not come from a
/// list. (Whole minutes are enough: rounding all starts down breaks nothing.)
void improve(const ActivityNetwork& network, const Budget& budget, Schedule& schedule);

} // namespace manciple::scheduling
