#pragma once

#include "text/diagnostics.hpp"

/// Messages of the prep phase.
namespace manciple::prep::errors {

using text::Code;

inline constexpr Code too_short{"S001", "a prep session is too short for its work"};

} // namespace manciple::prep::errors
