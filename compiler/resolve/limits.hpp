#pragma once

#include "resolve/resolve.hpp"

namespace manciple::resolve {

/// Checks every dish against what its eaters must not have, through recipes in recipes to any
/// depth. What a food contains is an error at the dish, with the way by which it gets there; what
/// differs by maker or is not known comes back as a label to read.
std::vector<LabelCheck> check_limits(const kitchen::Kitchen& kitchen,
                                     text::Diagnostics& diagnostics);

} // namespace manciple::resolve
