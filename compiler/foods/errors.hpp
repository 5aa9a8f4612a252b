#pragma once

#include "text/diagnostics.hpp"

/// Messages of the foods phase.
namespace manciple::foods::errors {

using text::Code;

/// A figure of a food record cannot be read.
inline constexpr Code bad_figure{"F001"};
/// A form, department, place or allergen that is not one.
inline constexpr Code unknown_word{"F002"};
/// Two foods claim one name, or two figures one form.
inline constexpr Code twice{"F003"};
/// A food record lacks what every food needs.
inline constexpr Code incomplete{"F004"};

} // namespace manciple::foods::errors
