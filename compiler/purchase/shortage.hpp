#pragma once

#include <vector>

#include "purchase/good.hpp"

namespace manciple::purchase {

/// The goods whose demands cannot be met even if everything is bought everywhere, each with its
/// first unmet demand and why.
std::vector<Shortage> shortages(const std::vector<Prepared>& goods, const Model& model);

/// Names the place that is fullest beyond its room in a solution made without regard to room.
std::vector<Shortage> room_shortage(const std::vector<Prepared>& goods, const Model& model,
                                    const Solution& solution);

} // namespace manciple::purchase
