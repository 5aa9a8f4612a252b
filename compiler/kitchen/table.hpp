#pragma once

#include "kitchen/plan.hpp"

#include <vector>

namespace manciple::kitchen {

/// Who sits at the table: people of the household who are not away and guests who are there; of
/// these only those whom the dish names, and not those who have another dish in its place.
std::vector<const Person*> eaters(const Household& household, const Plan& plan, const Meal& meal,
                                  const Dish& dish);

/// How much somebody eats of a dish, in an adult's servings: what the dish says, else their portion
/// times their appetite at that meal. Of guests who come together, all of them.
Rational portion(const Person& person, const Meal& meal, const Dish& dish);

} // namespace manciple::kitchen
