#pragma once

#include "kitchen/kitchen.hpp"

#include <string_view>

namespace manciple::kitchen {

/// Every step that needs an appliance which the household does not have, or has none of, is an
/// error that names the dishes of the plan that come to need it, through recipes in recipes.
void check_appliances(const Kitchen& kitchen, text::Diagnostics& diagnostics);

/// Says of each step whether it is hot: by what the household says of its appliance, or else by
/// what is known about it.
void mark_hot_steps(Recipe& recipe, const Household& household);

/// Whether a step of the method is hot.
bool is_heated(const Recipe& recipe);

/// Whether something is heated after the method has named the food (by its last word, "the rosemary
/// leaves"), or anything at all if it does not name it. No herb that is strewn on at the end is.
bool is_cooked(const Recipe& recipe, std::string_view food);

} // namespace manciple::kitchen
