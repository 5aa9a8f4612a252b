#pragma once

#include <vector>

#include "purchase/good.hpp"

namespace manciple::purchase {

/// Of solutions with one total, the same stops and as many packs, one that is less work: what need
/// not be frozen is bought later, what is bought in two places that could be one is bought in one,
/// and the rest is bought early, on the great day of shopping rather than on the way home. It is
/// reached from `solution` by moving packs of an offer from visit to visit as long as the total
/// stays what it is and all limits are kept; so it is less work, but need not be the least.
Solution among_equals(const Model& model, const std::vector<Prepared>& goods,
                      const Solution& solution);

} // namespace manciple::purchase
