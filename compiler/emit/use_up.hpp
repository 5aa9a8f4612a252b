#pragma once

#include "emit/compiled.hpp"
#include "use_up/recipes.hpp"

#include <string>

namespace manciple::emit {

/// What is asked of what is left, and found.
struct UseUp {
  const kitchen::Kitchen& library;
  std::vector<use_up::Left> left;
  use_up::Wanted wanted;
  use_up::Suggestions suggestions;
  std::optional<foods::FoodId> only; ///< asked for
  bool on_day = false;               ///< asked for what is there on a day of the plan
};

/// What is left of a plan, what goes off first, and which recipes use it, for the terminal.
std::string use_up_text(const Compiled& compiled, const UseUp& use_up);

} // namespace manciple::emit
