#pragma once

#include "kitchen/kitchen.hpp"

namespace manciple::resolve {

/// How many times the recipe as written a kitchen makes where `needed` times would just do: the
/// least that it can measure and is not less; but if that leaves more than the give, and a little
/// less is within the give, that. The give is a tenth unless recipe or household say otherwise, and
/// nothing for what is baked from flour.
///
/// What can be measured: quarters and thirds of the recipe, where every counted ingredient, rounded
/// to whole ones (an egg, a chop, a slice), halves (a can) or quarters (an onion), is up by no more
/// than a quarter (it is rounded to the nearest, but up where that would be more than a tenth
/// less); and so many times that they come out without rounding. A recipe may say its
/// own (`made in`). Pieces under 15 g, such as a clove of garlic, and spices count for nothing
/// here. Common practice, no source.
measure::Rational times_to_make(const kitchen::Kitchen& kitchen, const kitchen::Recipe& recipe,
                                const measure::Rational& needed);

/// How long a recipe's method takes as it is written, in minutes, one step after the other,
/// with the time that it marinates.
int minutes_to_cook(const kitchen::Recipe& recipe);

/// The share of its food that a recipe can do without.
measure::Rational give_of(const kitchen::Kitchen& kitchen, const kitchen::Recipe& recipe);

/// Whether an ingredient is taken in whole pieces, or parts of them: eggs and onions, not cloves of
/// garlic and what is weighed.
bool comes_in_pieces(const kitchen::Kitchen& kitchen, const kitchen::Ingredient& ingredient);

/// What a piece weighs of fruit or vegetables that are taken in pieces, in the food's basis, as
/// purchased. Nothing of anything else, nor of a head, which is taken apart leaf by leaf.
std::optional<measure::Rational> piece_of_produce(const kitchen::Kitchen& kitchen,
                                                  const kitchen::Ingredient& ingredient);

/// How many times what is written an ingredient is taken where the recipe is made so many times: of
/// what is counted, whole things.
measure::Rational times_of_ingredient(const kitchen::Kitchen& kitchen,
                                      const kitchen::Recipe& recipe,
                                      const kitchen::Ingredient& ingredient,
                                      const measure::Rational& times);

/// The same of what a recipe gives besides its dish: whole things, the nearest number of them.
measure::Rational times_given(const kitchen::Kitchen& kitchen, const kitchen::Recipe& recipe,
                              const kitchen::Ingredient& given, const measure::Rational& times);

} // namespace manciple::resolve
