#pragma once

#include "resolve/by_products.hpp"
#include "resolve/resolve.hpp"

namespace manciple::resolve {

/// What is made, how much of it, when and for whom. A dish is cooked for its meal, with what later
/// meals eat as leftovers; a recipe that is an ingredient, or one to make ahead, in the fewest
/// batches that the plan's prep sessions and its keeping time allow, else on the day of its use.
/// `order` has each recipe before those that it needs. What others leave over is taken before
/// anything is made or bought. When they are good until is for `date_makings`.
struct Made {
  std::vector<Making> makings;
  std::vector<ByProduct> by_products;
};
Made makings(const kitchen::Kitchen& kitchen, const std::vector<std::vector<Rational>>& servings,
             const std::vector<kitchen::RecipeId>& order, const Barred& barred,
             text::Diagnostics& diagnostics);

/// How many times a recipe as written an ingredient of another takes: "6 cups vegetable stock" of a
/// recipe that makes 12 cups is a half. Nothing, with an error, when the recipe does not say.
std::optional<Rational> times_of(const kitchen::Kitchen& kitchen,
                                 const kitchen::Ingredient& ingredient,
                                 text::Diagnostics& diagnostics);

} // namespace manciple::resolve
