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

/// Shallow pans of 9 by 13 in over which hot food is spread to cool in time, 2 in deep. Shallow
/// pans and smaller portions: FDA Food Code 2022, 3-501.15; the depth: common practice, no source.
int cooling_pans(const foods::Rational& millilitres);

} // namespace manciple::prep
