#pragma once

#include "text/diagnostics.hpp"

/// Messages of the kitchen phase: what the files say.
namespace manciple::kitchen::errors {

using text::Code;

inline constexpr Code unknown_food{"K001", "a line names no food or recipe that is known"};
inline constexpr Code unknown_recipe{"K002", "a recipe that is not in the library"};
inline constexpr Code unread_amount{"K003", "an amount that cannot be read"};
inline constexpr Code unread_word{"K004", "a word of a line that is not understood"};
inline constexpr Code bad_value{"K005", "a value that cannot be read as what is needed"};
inline constexpr Code unknown_person{"K006", "a person who is not in the household"};
inline constexpr Code unknown_shop{"K007", "a shop without a price list"};
inline constexpr Code outside_plan{"K008", "a date outside the plan"};
inline constexpr Code wrong_measure{"K009", "an amount in a measure that the food does not have"};
inline constexpr Code bad_offer{"K010", "a price that cannot be read"};
inline constexpr Code unknown_slot{"K011", "a meal that the household does not have"};
inline constexpr Code unknown_appliance{"K012", "an appliance that the household does not have"};
inline constexpr Code wrong_order{"K013", "an end that comes before its beginning"};
inline constexpr Code kept_too_long{"K014", "raw food said to be good for longer than is safe"};

} // namespace manciple::kitchen::errors
