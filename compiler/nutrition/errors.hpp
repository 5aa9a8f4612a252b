#pragma once

#include "text/diagnostics.hpp"

/// Messages of the nutrition phase.
namespace manciple::nutrition::errors {

using text::Code;

/// An aim that the plan misses.
inline constexpr Code aim_missed{"N001"};

} // namespace manciple::nutrition::errors
