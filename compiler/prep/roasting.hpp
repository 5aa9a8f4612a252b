#pragma once

#include "foods/food.hpp"
#include "kitchen/recipe.hpp"

namespace manciple::prep {

/// Minutes in the oven of a food that `roasts`, of so many grams, where the step says how long
/// `usual` grams take: as many minutes a pound; and where the oven is as hot as the food's record
/// has it, not less than that says. What is heavier than its heaviest piece is two pieces or more.
int roasting_minutes(const foods::Food& food, const kitchen::MethodStep& step,
                     const foods::Rational& usual, const foods::Rational& grams);

} // namespace manciple::prep
