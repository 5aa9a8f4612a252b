#pragma once

#include "kitchen/kitchen.hpp"

namespace manciple::safety {

/// The temperatures of a text in degrees Fahrenheit: "to 165 F in the middle", "74 C".
std::vector<int> temperatures_in(std::string_view text);

/// The end temperature that a recipe gives, if it gives one, must not be below what its raw meat,
/// fish and eggs need; and what is kept hot must be hot enough.
void check_temperatures(const kitchen::Kitchen& kitchen, const kitchen::Recipe& recipe,
                        text::Diagnostics& diagnostics);

} // namespace manciple::safety
