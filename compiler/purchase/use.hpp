#pragma once

#include <vector>

#include "purchase/good.hpp"
#include "purchase/subproblem.hpp"

namespace manciple::purchase {

/// What becomes of what is bought, by the rule of use: who serves whom, what is frozen, kept and
/// thrown away, and its value. The buys must meet the demands (`cheapest` sees to that).
GoodSolution use_up(const Prepared& good, const std::vector<Buy>& buys);

/// Room that a good's solution takes: by night 0 ... last_day, in 1e-6 microlitres.
struct RoomTaken {
  std::vector<std::int64_t> cool;
  std::vector<std::int64_t> frozen;
};
RoomTaken room_taken(const Prepared& good, const GoodSolution& solution);

} // namespace manciple::purchase
