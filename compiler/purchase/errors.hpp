#pragma once

#include "text/diagnostics.hpp"

/// Messages of the purchase phase.
namespace manciple::purchase::errors {

using text::Code;

inline constexpr Code no_offer{"P001", "no shop sells a food that is needed"};
inline constexpr Code too_late{"P002", "no trip in time for a use"};
inline constexpr Code does_not_keep{
    "P003", "bought on the last trip before, it would not keep until its use"};
inline constexpr Code must_be_fresh{"P004",
                                    "it would keep only in the freezer, but has to be fresh"};
inline constexpr Code limit{"P005", "shops sell less in a visit than is needed"};
inline constexpr Code no_room{"P006", "fridge, freezer or pantry is too small"};
inline constexpr Code unknown_keeping{"P007", "how long a food keeps is not known"};
inline constexpr Code over_budget{"P008", "the plan or a trip costs more than its budget"};
inline constexpr Code not_proven{"P009", "the search ended before the best list was proven"};
inline constexpr Code too_much{"P010", "a figure beyond what can be reckoned with exactly"};

} // namespace manciple::purchase::errors
