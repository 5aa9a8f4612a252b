#pragma once

#include "text/diagnostics.hpp"

/// Messages of the safety phase: what in a recipe or a plan could make someone ill. Each says what
/// is wrong, what to do, and who says so. Errors are for what the FDA Food Code forbids and for
/// what may kill; the rest are warnings.
namespace manciple::safety::errors {

using text::Code;

/// Dried kidney beans that are not boiled.
inline constexpr Code beans_not_boiled{"H001"};
/// Garlic or herbs in oil, kept warm or for long.
inline constexpr Code garlic_in_oil{"H002"};
/// Raw eggs in what is not cooked.
inline constexpr Code raw_egg{"H003"};
/// A dish that is kept for longer than it is safe.
inline constexpr Code kept_too_long{"H004"};
/// Perishable food kept in the pantry.
inline constexpr Code kept_warm{"H005"};
/// Sprouts that are eaten raw.
inline constexpr Code raw_sprouts{"H006"};
/// Meat or fish that is eaten raw.
inline constexpr Code eaten_raw{"H007"};
/// Raw flour in what is not baked.
inline constexpr Code raw_flour{"H008"};
/// Meat that is partly cooked and finished later.
inline constexpr Code partly_cooked{"H009"};
/// Food that cools too slowly.
inline constexpr Code cools_slowly{"H010"};
/// Thawing where it is warm.
inline constexpr Code thawed_warm{"H011"};
/// What was thawed goes into the freezer again.
inline constexpr Code refrozen{"H012"};
/// Raw poultry or meat that is rinsed.
inline constexpr Code rinsed{"H013"};
/// A marinade of raw meat that is eaten, or meat that marinates where it is warm.
inline constexpr Code marinade{"H014"};
/// Home canning that does not kill botulism.
inline constexpr Code canned_at_home{"H015"};
/// An end temperature below the safe one, or food held too cool.
inline constexpr Code too_cool{"H016"};
/// A slow cooker that takes too long to heat what is in it.
inline constexpr Code slow_to_heat{"H017"};
/// Milk or juice that is not pasteurised.
inline constexpr Code unpasteurised{"H018"};
/// Stuffing inside a bird.
inline constexpr Code stuffed{"H019"};
/// Something that is poisonous unless it is done right.
inline constexpr Code poisonous{"H020"};
/// Honey for a child under one year.
inline constexpr Code honey_for_infant{"H021"};
/// What whoever is pregnant or nursing is advised not to eat.
inline constexpr Code for_expecting{"H022"};

} // namespace manciple::safety::errors
