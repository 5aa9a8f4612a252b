#pragma once

#include "kitchen/kitchen.hpp"

namespace manciple::kitchen {

/// Makes what somebody has otherwise in a dish (`for NAME: halloumi instead of chicken breast`) a
/// recipe and a dish of its own, so that demand, cost, work and labels follow by themselves. The
/// swap may lie in a recipe that the recipe needs. Leftovers of the dish are, for the same people,
/// leftovers of theirs. A food stands in for its weight as eaten, unless the swap says how much a
/// serving takes. Before recipes are numbered.
void split_meals(Kitchen& kitchen, text::Diagnostics& diagnostics);

} // namespace manciple::kitchen
