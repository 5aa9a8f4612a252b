#pragma once

#include "text/diagnostics.hpp"

/// Messages of the resolve phase: what follows from the files taken together.
namespace manciple::resolve::errors {

using text::Code;

inline constexpr Code cycle{"R001", "recipes that need each other in a circle"};
inline constexpr Code no_leftovers{"R002", "leftovers of something that is not cooked before"};
inline constexpr Code leftovers_too_old{"R003", "leftovers that do not keep that long"};
inline constexpr Code allergen{"R004", "a meal serves a person what they must not have"};
inline constexpr Code cannot_scale{
    "R005", "a recipe is asked for in a measure that it does not say it makes"};
inline constexpr Code nobody_eats{"R006", "a dish that nobody is there to eat"};

} // namespace manciple::resolve::errors
