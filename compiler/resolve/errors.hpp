#pragma once

#include "text/diagnostics.hpp"

/// Messages of the resolve phase: what follows from the files taken together.
namespace manciple::resolve::errors {

using text::Code;

/// Recipes that need each other in a circle.
inline constexpr Code cycle{"R001"};
/// Leftovers of something that is not cooked before.
inline constexpr Code no_leftovers{"R002"};
/// Leftovers that do not keep that long.
inline constexpr Code leftovers_too_old{"R003"};
/// A meal serves a person what they must not have.
inline constexpr Code must_not_have{"R004"};
/// A recipe is asked for in a measure that it does not say it makes.
inline constexpr Code cannot_scale{"R005"};
/// A dish that nobody is there to eat.
inline constexpr Code nobody_eats{"R006"};

/// What a recipe leaves over has something in it that an eater of another must not have.
inline constexpr Code not_for_all{"R008"};

/// A food of which nobody has said what is in it, for somebody who must not have something.
inline constexpr Code read_the_label{"R007"};

} // namespace manciple::resolve::errors
