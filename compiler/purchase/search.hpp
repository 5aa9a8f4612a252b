#pragma once

#include <vector>

#include "purchase/stops.hpp"

namespace manciple::purchase {

/// The best solution for goods as prepared (perhaps under a restriction) and stops as chosen.
/// `shortages` are left to the caller unless room is the reason.
Solution search(const Model& model, const std::vector<Prepared>& goods,
                const std::vector<StopChoice>& choices, const Options& options);

} // namespace manciple::purchase
