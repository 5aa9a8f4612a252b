#pragma once

#include "foods/food.hpp"

namespace manciple::prep {

/// Minutes of hands-on work to bring `grams` (edible; for juice, the whole fruit, zested too) of a
/// food to a form, with a knife, a grater and a squeezer. Common practice, no source.
int cutting_minutes(foods::Form form, const foods::Rational& grams);

/// Minutes to divide meat, fish or bread into `bags` meal-size bags, label and freeze them. Common
/// practice, no source.
int portioning_minutes(int bags);

/// Days in the fridge to thaw: about a day for each 4 to 5 lb, at least overnight (USDA FSIS, "The
/// Big Thaw": 24 hours for every 4 to 5 pounds). `grams` is of the largest single package.
int thawing_days(const foods::Rational& grams);

} // namespace manciple::prep
