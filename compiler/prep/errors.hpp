#pragma once

#include "text/diagnostics.hpp"

/// Messages of the prep phase.
namespace manciple::prep::errors {

using text::Code;

/// A prep session is too short for its work.
inline constexpr Code too_short{"S001"};
/// A dish is done long before its meal, since what it needs is wanted by others after it.
inline constexpr Code done_early{"S002"};

/// A dish that is eaten hot is packed for the next day.
inline constexpr Code hot_and_packed{"S003"};

/// A dish is begun when those who cook it have no time yet.
inline constexpr Code nobody_there{"S004"};

} // namespace manciple::prep::errors
