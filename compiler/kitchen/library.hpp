#pragma once

#include "kitchen/kitchen.hpp"

namespace manciple::kitchen {

/// By recipe, whether it could be read without an error, and all recipes that it needs.
std::vector<bool> readable_recipes(const Kitchen& kitchen, const text::Diagnostics& diagnostics);

/// Warns of meals that a recipe says it suits and the household does not have.
void check_suits(const Kitchen& kitchen, text::Diagnostics& diagnostics);

} // namespace manciple::kitchen
