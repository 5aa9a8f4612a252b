#pragma once

#include "text/diagnostics.hpp"

/// Messages of the prep phase.
namespace manciple::prep::errors {

using text::Code;

/// A prep session is too short for its work.
inline constexpr Code too_short{"S001"};

} // namespace manciple::prep::errors
