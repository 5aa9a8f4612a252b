#pragma once

#include "text/diagnostics.hpp"

/// Messages of the history phase: what has been done of a plan.
namespace manciple::history::errors {

using text::Code;

/// A day of shopping that is past and has no receipt.
inline constexpr Code no_receipt{"B001"};
/// Food that was eaten although nothing says that it was there.
inline constexpr Code not_there{"B002"};

/// A day of which nothing is known: before the first count, or after the plan.
inline constexpr Code unknown_day{"B003"};

} // namespace manciple::history::errors
