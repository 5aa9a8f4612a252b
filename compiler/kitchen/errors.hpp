#pragma once

#include "text/diagnostics.hpp"

/// Messages of the kitchen phase: what the files say.
namespace manciple::kitchen::errors {

using text::Code;

/// A line names no food or recipe that is known.
inline constexpr Code unknown_food{"K001"};
/// A recipe that is not in the library.
inline constexpr Code unknown_recipe{"K002"};
/// An amount that cannot be read.
inline constexpr Code unread_amount{"K003"};
/// A word of a line that is not understood.
inline constexpr Code unread_word{"K004"};
/// A value that cannot be read as what is needed.
inline constexpr Code bad_value{"K005"};
/// A person who is not in the household.
inline constexpr Code unknown_person{"K006"};
/// A shop without a price list.
inline constexpr Code unknown_shop{"K007"};
/// A date outside the plan.
inline constexpr Code outside_plan{"K008"};
/// An amount in a measure that the food does not have.
inline constexpr Code wrong_measure{"K009"};
/// A price that cannot be read.
inline constexpr Code bad_offer{"K010"};
/// A meal that the household does not have.
inline constexpr Code unknown_slot{"K011"};
/// An appliance that the household does not have.
inline constexpr Code unknown_appliance{"K012"};
/// An end that comes before its beginning.
inline constexpr Code wrong_order{"K013"};
/// Raw food said to be good for longer than is safe.
inline constexpr Code kept_too_long{"K014"};

/// A count from so long before the plan that much has been eaten since.
inline constexpr Code old_count{"K021"};
/// A diet that is not known.
inline constexpr Code unknown_diet{"K018"};
/// A swap in a dish for somebody that cannot be made.
inline constexpr Code no_such_swap{"K019"};
/// An aim that cannot be read.
inline constexpr Code unread_aim{"K020"};
/// A stop at a shop that is not open on the day.
inline constexpr Code closed{"K017"};
/// A food that nobody knows, carried as it is written.
inline constexpr Code as_written{"K016"};
/// What is not said and taken as usual.
inline constexpr Code taken_as_usual{"K015"};

} // namespace manciple::kitchen::errors
