#pragma once

#include <vector>

#include "purchase/stops.hpp"

namespace manciple::purchase {

/// The search when room, credit or spend-over-X reductions couple the goods.
///
/// Prices (Lagrange multipliers) on these make the goods independent again, so that choose_stops
/// bounds every set of stops. A set whose bound leaves hope is settled exactly (see settle.hpp).
/// The prices are those that suit the sets that looked best.
Solution search_coupled(const Model& model, const std::vector<Prepared>& goods,
                        const std::vector<StopChoice>& choices, const Options& options);

} // namespace manciple::purchase
