#pragma once

#include "kitchen/recipe.hpp"

#include <string>

namespace manciple::prep {

/// How a dish is warmed up, from the state in which it was kept: of a recipe that says "from
/// frozen, to 165 F", a box in the fridge is warmed "to 165 F". Empty if the recipe does not say.
std::string reheat_words(const kitchen::Recipe& recipe, bool frozen);

/// Whether it goes onto the heat frozen, so that it is not thawed first.
bool is_reheated_frozen(const kitchen::Recipe& recipe);

} // namespace manciple::prep
