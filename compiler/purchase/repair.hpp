#pragma once

#include <vector>

#include "purchase/combine.hpp"

namespace manciple::purchase {

/// Changes a choice of plans, one or two goods at a time, while that brings it nearer to the limits
/// or makes it cheaper: what is bought at one stop rather than another at the same price makes many
/// small steps possible. `plan` is by good; the result may still break limits.
std::vector<std::size_t> repair(const std::vector<PlanSet>& goods, const Joint& joint,
                                std::vector<std::size_t> plan);

} // namespace manciple::purchase
