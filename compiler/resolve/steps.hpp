#pragma once

#include "kitchen/kitchen.hpp"

namespace manciple::resolve {

/// How many times the recipe as written a kitchen makes where `needed` times would just do: what it
/// can measure and is not less; but if that leaves more than the give, and a little less is within
/// the give, that. The give is a tenth unless recipe or household say otherwise, and nothing for
/// what is baked from flour.
///
/// What can be measured: quarters and thirds of the recipe, where every counted ingredient, rounded
/// to whole ones (an egg, a chop, a slice), halves (a can) or quarters (an onion), is off by no
/// more than a quarter; and so many times that they come out without rounding. A recipe may say its
/// own (`made in`). Pieces under 15 g, such as a clove of garlic, and spices count for nothing
/// here. Common practice, no source.
measure::Rational times_to_make(const kitchen::Kitchen& kitchen, const kitchen::Recipe& recipe,
                                const measure::Rational& needed);

/// The share of its food that a recipe can do without.
measure::Rational give_of(const kitchen::Kitchen& kitchen, const kitchen::Recipe& recipe);

/// How many times what is written an ingredient is taken where the recipe is made so many times: of
/// what is counted, whole things.
measure::Rational times_of_ingredient(const kitchen::Kitchen& kitchen,
                                      const kitchen::Recipe& recipe,
                                      const kitchen::Ingredient& ingredient,
                                      const measure::Rational& times);

} // namespace manciple::resolve
