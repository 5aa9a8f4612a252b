#pragma once

#include "kitchen/kitchen.hpp"

#include <string_view>

namespace manciple::kitchen {

/// Every step that needs an appliance which the household does not have, or has none of, is an
/// error that names the dishes of the plan that come to need it, through recipes in recipes.
void check_appliances(const Kitchen& kitchen, text::Diagnostics& diagnostics);

/// Whether what comes from an appliance is hot: whatever a household names, but for what is known
/// to be cold.
bool heats(std::string_view appliance);

/// Whether a step of the method needs such an appliance.
bool is_heated(const Recipe& recipe);

} // namespace manciple::kitchen
