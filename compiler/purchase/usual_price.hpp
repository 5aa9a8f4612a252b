#pragma once

#include "kitchen/kitchen.hpp"

#include <optional>

namespace manciple::purchase {

using measure::Rational;

/// What the shops ask for a food, or for what may stand for it.
struct UsualPrice {
  Rational unit; ///< cents for a unit, in terms of the first of the foods that stand for each other
  Rational pack; ///< cents for the cheapest pack
  Rational size; ///< of that pack, in the same terms
  text::Span at; ///< the price of the unit
};

/// The least regular price, tax counted, of the shops that a trip of the plan could stop at while
/// the offer holds, or else of any. What is not known counts as it is guessed.
std::optional<UsualPrice> usual_price(const kitchen::Kitchen& kitchen, foods::FoodId food);

/// What a unit of a food would cost to buy again, before tax, in cents: the least regular price, as
/// above, of those that are known. Nothing where none is.
std::optional<Rational> replacement_price(const kitchen::Kitchen& kitchen, foods::FoodId food);

} // namespace manciple::purchase
