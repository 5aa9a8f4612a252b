#pragma once

#include "foods/food.hpp"

#include <string>
#include <string_view>

/// Amounts of food as they are said and written on a list.
namespace manciple::foods {

/// An amount as purchased as a shopper says it, in the measure the food is shopped in:
/// "2.3 lb", "8", "0.5 head", "1 gal". `decimals` is how fine a part of a piece is told: a tenth
/// shows what is used of it without pretending to more, 0 is for what goes into a bag whole. Less
/// than a piece is told in tenths at least.
std::string customary(const Food& food, const Rational& purchased, measure::Writing writing,
                      int decimals = 1);

/// The least of a food that one buys where no pack is known: one piece, or a step of a scale.
struct ShopUnit {
  std::string word; ///< "each", "can", "bunch"; what is weighed is said by `customary`
  Rational size;    ///< as purchased, in the food's basis
  bool by_weight = false;
};
ShopUnit shop_unit(const Food& food, measure::System system);

/// What prices of a food are compared by: one of what is counted in a shop (a lemon, an egg), the
/// measure by which it is poured, else a pound or a kilogram.
struct PriceUnit {
  std::string word; ///< "/lb", "/gal", "/head", " each"
  Rational size;    ///< in the food's basis
};
PriceUnit price_unit(const Food& food, measure::System system);
/// A pound or a kilogram, of what has a weight.
PriceUnit weight_unit(measure::System system);

/// The piece that a bare count of it means: "medium", "clove", "slice"; empty if there is none.
std::string counted_by(const Food& food);

/// Counted by itself, as lemons and buns are, not by heads or slices.
bool counts_itself(const Food& food, std::string_view piece);

/// Whether an amount as purchased is worth a word: an ounce or so (30 g or ml), or half a piece.
/// Less is left in every pack and on every scale. *Common practice, no source.*
bool is_more_than_scraps(const Food& food, const Rational& purchased);

/// The food's name as it follows an amount: in the plural where the amount is of two or more that
/// are counted by themselves, not by heads or slices, and of what comes by the many, as beans do.
std::string name_of(const Food& food, const Rational& purchased);

/// The same with the food's name: "2.3 lb onions", "8 lemons", "1.5 heads garlic".
std::string with_name(const Food& food, const Rational& purchased, measure::Writing writing,
                      int decimals = 1);

} // namespace manciple::foods
