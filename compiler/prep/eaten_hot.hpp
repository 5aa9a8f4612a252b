#pragma once

#include "kitchen/kitchen.hpp"

namespace manciple::prep {

/// Whether a dish comes hot to the table: heated, and no cake. Where no method says, it may be.
bool is_eaten_hot(const kitchen::Kitchen& kitchen, const kitchen::Recipe& recipe);

/// Whether a dish is eaten hot and nothing else: it is heated in its last steps, and there is no
/// bread or salad around it that is eaten cold.
bool goes_hot_to_the_table(const kitchen::Kitchen& kitchen, const kitchen::Recipe& recipe);

} // namespace manciple::prep
