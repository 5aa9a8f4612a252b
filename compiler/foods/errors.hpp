#pragma once

#include "text/diagnostics.hpp"

/// Messages of the foods phase.
namespace manciple::foods::errors {

using text::Code;

inline constexpr Code bad_figure{"F001", "a figure of a food record cannot be read"};
inline constexpr Code unknown_word{"F002", "a form, department, place or allergen that is not one"};
inline constexpr Code twice{"F003", "two foods claim one name, or two figures one form"};
inline constexpr Code incomplete{"F004", "a food record lacks what every food needs"};
inline constexpr Code no_conversion{"F005", "a food has no figure for a conversion"};

} // namespace manciple::foods::errors
