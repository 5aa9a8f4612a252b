#pragma once

#include "measure/quantity.hpp"

/// What a kitchen can measure. Amounts stay exact in all that is worked out; where they become
/// words for a cook, they become what a cup, a spoon, a scale or a knife shows: the nearest such
/// amount, of two that are as near the smaller one (salt can be added, not taken out), and never
/// nothing where there is something. *Common practice, no source.*
namespace manciple::measure {

/// Whole cups and a quarter, a third, a half, two thirds, three quarters of one.
Rational by_the_cup(const Rational& cups);
/// Halves of a tablespoon.
Rational by_the_tablespoon(const Rational& tablespoons);
/// Quarters of a teaspoon, and an eighth, the smallest spoon of a set.
Rational by_the_teaspoon(const Rational& teaspoons);

/// How finely a knife cuts what is counted.
enum class Cut {
  whole,   ///< what is not cut at all: bay leaves, sprigs
  halves,  ///< what is small: cloves, stalks, eggs, leaves
  quarters ///< what is large; of less than one also thirds, of three or more halves
};
Rational by_the_piece(const Rational& pieces, Cut cut);

} // namespace manciple::measure
