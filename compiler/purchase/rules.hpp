#pragma once

#include "kitchen/kitchen.hpp"

/// Rules of a household and of its freezer that hold for what is bought and for what was.
namespace manciple::purchase {

using measure::Rational;

/// Good for some days more than the plan is worth keeping. Common practice, no source.
inline constexpr int kept_days = 3;
/// Grams of a food that are worth a bag in the freezer, unless a use needs no more: two ounces. Our
/// own choice.
inline constexpr int least_frozen = 60;

/// Whether a container holds what a usual one does, as far as a cook minds: from three quarters of
/// it to five. Our own choice: it lets a can of 400 g stand for one of 15 oz.
bool is_usual_container(const Rational& amount, const Rational& usual);

/// Whether what goes off of a food is worth a word: more than scraps, and at least a tenth of what
/// there was, which is what peeling and scales give and take. Common practice, no source.
bool is_worth_using_up(const foods::Food& food, const Rational& left, const Rational& of);

/// Whether the household buys a food at a shop.
bool may_buy(const kitchen::Kitchen& kitchen, foods::FoodId food, const kitchen::Shop& shop);
/// By which share more a price counts there than at a shop that the household prefers; else 0.
Rational preference(const kitchen::Kitchen& kitchen, foods::FoodId food, const kitchen::Shop& shop);

} // namespace manciple::purchase
