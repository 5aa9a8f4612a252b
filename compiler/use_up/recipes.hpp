#pragma once

#include "use_up/left.hpp"

#include <variant>
#include <vector>

namespace manciple::use_up {

/// So much of something that is left goes into a recipe.
struct Used {
  std::size_t left = 0; ///< its place among what is left
  Rational amount;
};

/// What a recipe needs and the house does not have.
struct Lacking {
  std::variant<foods::FoodId, kitchen::RecipeId> what; ///< of the library
  Rational amount;                                     ///< of a food
};

/// A recipe of the library that uses what is left, made once as it is written.
struct Suggestion {
  kitchen::RecipeId recipe{}; ///< of the library
  std::optional<Date> by;     ///< the last day on which all that it uses is good, if that is known
  std::vector<Used> uses;
  Rational saves; ///< what that is worth, in cents, as far as it is known
  std::vector<Lacking> lacking;
  std::vector<resolve::LabelCheck> labels; ///< to read before somebody of the household eats it
  std::optional<Date> planned;             ///< the plan has it about then
};

/// What is to be used up, and where.
struct Wanted {
  std::vector<std::size_t> lefts; ///< places among what is left
  Date day;                       ///< on which one asks
};

struct Suggestions {
  std::vector<Suggestion> all; ///< best first; those that the plan has soon come last
  std::size_t unfit = 0;       ///< recipes that use some of it and that somebody must not eat
  std::size_t unread = 0;      ///< recipes of the library that have errors, and are left out
};

/// The recipes of a library that use what is wanted, by what they save. A recipe that has what
/// somebody of the household must not have is left out, and so is one that cannot be read. The
/// library has no plan, before and after; in between each recipe is the only dish of one.
Suggestions suggest(kitchen::Library& library, const kitchen::Kitchen& kitchen,
                    const std::vector<Left>& left, const Wanted& wanted);

} // namespace manciple::use_up
