#pragma once

#include "kitchen/kitchen.hpp"

namespace manciple::kitchen {

/// Numbers recipes as the plan's meals come to them, the rest by name, so that nothing hangs on the
/// order in which files name them.
void number_recipes(Kitchen& kitchen);

} // namespace manciple::kitchen
