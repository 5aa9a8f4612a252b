#pragma once

#include "foods/food.hpp"
#include "kitchen/recipe.hpp"

namespace manciple::prep {

/// Whether a food is a roast, whose time in the oven grows with its weight.
bool is_roast(const foods::Food& food);

/// Minutes in the oven of a roast of so many grams, where the step says how long `usual` grams
/// take: as many minutes a pound; and where the oven is as hot as USDA FSIS has it (open data of
/// the FoodKeeper, January 2015, cooking times), not less than the table's least. What is heavier
/// than the largest piece of the table is two pieces or more.
int roasting_minutes(const foods::Food& food, const kitchen::MethodStep& step,
                     const foods::Rational& usual, const foods::Rational& grams);

} // namespace manciple::prep
