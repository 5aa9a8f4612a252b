#pragma once

#include "text/diagnostics.hpp"

/// Messages of the purchase phase.
namespace manciple::purchase::errors {

using text::Code;

/// No shop of the trips is known to have a food that is needed.
inline constexpr Code no_offer{"P001"};
/// No trip in time for a use.
inline constexpr Code too_late{"P002"};
/// Bought on the last trip before, it would not keep until its use.
inline constexpr Code does_not_keep{"P003"};
/// It would keep only in the freezer, but has to be fresh.
inline constexpr Code must_be_fresh{"P004"};
/// Shops sell less in a visit than is needed.
inline constexpr Code limit{"P005"};
/// Fridge, freezer or pantry is too small.
inline constexpr Code no_room{"P006"};
/// How long a food keeps is not known.
inline constexpr Code unknown_keeping{"P007"};
/// The plan or a trip costs more than its budget.
inline constexpr Code over_budget{"P008"};
/// The search ended before the best list was proven.
inline constexpr Code not_proven{"P009"};
/// A figure beyond what can be reckoned with exactly.
inline constexpr Code too_much{"P010"};
/// A stop is made for less than it costs the household.
inline constexpr Code small_stop{"P011"};
/// A herb that no dish needs so much that a stop would be made for it.
inline constexpr Code worth_no_stop{"P012"};
/// An offer contains what someone who eats of it must not have.
inline constexpr Code allergen_of_maker{"P013"};

} // namespace manciple::purchase::errors
