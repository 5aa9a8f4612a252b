#pragma once

#include "resolve/resolve.hpp"

#include <vector>

namespace manciple::resolve {

/// A making of before, and who has what is left of it.
struct MadeBefore {
  std::size_t lot = 0;
  kitchen::RecipeId recipe{};
  measure::Rational left; ///< times the recipe
  text::Date made;
  text::Date good_until;
  bool frozen = false;
  std::vector<Consumer> consumers = {};
};

/// What stands in the house, what goes off first before the rest, and what is frozen last.
std::vector<MadeBefore> made_before(const kitchen::Kitchen& kitchen,
                                    text::Diagnostics& diagnostics);

} // namespace manciple::resolve
