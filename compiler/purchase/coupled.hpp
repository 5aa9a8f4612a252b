#pragma once

#include <vector>

#include "purchase/stops.hpp"

namespace manciple::purchase {

/// The search when room, credit or spend-over-X reductions couple the goods.
///
/// Prices (Lagrange multipliers) on these make the goods independent again, so that choose_stops
/// bounds every set of stops. A set whose bound leaves hope is settled exactly: all plans of each
/// good whose priced cost is within the remaining gap are listed, and the best combination of them
/// found by branch and bound. No combination outside these lists can be better, since each plan's
/// excess over its good's least priced cost is part of the gap.
Solution search_coupled(const Model& model, const std::vector<Prepared>& goods,
                        const std::vector<StopChoice>& choices, const Options& options);

} // namespace manciple::purchase
