#pragma once

#include "foods/food.hpp"

#include <optional>
#include <string>

/// Amounts of food as they are seen on a board or a shelf, rounded as a cook would.
namespace manciple::foods {

/// With the name of the food: "9 onions (2.3 lb)", "1/2 head romaine lettuce", "16 cloves garlic",
/// "4 stalks celery", "1.5 oz parmesan cheese". Parts of a piece in quarters and thirds, at least a
/// quarter; weights to half an ounce or 5 g, from a pound to a tenth, from a kilogram to 50 g.
std::string as_seen(const Food& food, const Rational& purchased, measure::Writing writing);

/// The same without the name, and without the number of pieces of what is weighed.
std::string amount_seen(const Food& food, const Rational& purchased, measure::Writing writing);

/// About how many whole pieces are in what is weighed out at a shop.
struct Pieces {
  std::string words;    ///< "2", "1 head"
  bool several = false; ///< of what is counted by itself, so that its name is in the plural
};
/// None for what nobody counts, and for less than one.
std::optional<Pieces> pieces_in(const Food& food, const Rational& purchased);

/// How many pieces a cook takes who has a knife: "5 1/2" cloves, "3/4" of a head. What weighs less
/// than 60 g is taken whole or halved, and no leaf or sprig is cut (`measure/at_hand.hpp`). Without
/// a piece, of those that a bare count means.
std::string pieces_to_take(const Food& food, const Rational& number, std::string_view piece);

/// A part of a whole in quarters and thirds: "about 2/3", "nearly all"; at least a quarter.
std::string part_of(const Rational& share);

/// Whether it is enough to see: an eighth of a piece, or 5 g or ml.
bool is_seen(const Food& food, const Rational& purchased);

} // namespace manciple::foods
