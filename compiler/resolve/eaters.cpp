#include "resolve/eaters.hpp"

#include "kitchen/table.hpp"
#include "resolve/errors.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace manciple::resolve {
using kitchen::Kitchen;
using kitchen::Meal;
using kitchen::Person;
using kitchen::Plan;

std::vector<const Person*> eaters(const Kitchen& kitchen, const DishRef& ref) {
  const Meal& meal = kitchen.plan->meals[ref.meal];
  return kitchen::eaters(kitchen.household, *kitchen.plan, meal, meal.dishes[ref.dish]);
}

namespace {

// Nobody knows who eats: the dish is made as its recipe is written, and leftovers are a share of
// that.
Rational as_written(const Kitchen& kitchen, const DishRef& ref) {
  const Plan& plan = *kitchen.plan;
  const kitchen::Ingredient& what = plan.meals[ref.meal].dishes[ref.dish].what;
  if (what.recipe() == nullptr) {
    return 0;
  }
  // The cooking that it is of, and how many meals are of that one.
  bool found = false;
  int meals = 0;
  for (std::size_t m = 0; m < plan.meals.size(); ++m) {
    for (std::size_t d = 0; d < plan.meals[m].dishes.size(); ++d) {
      const kitchen::Dish& dish = plan.meals[m].dishes[d];
      if (dish.what.recipe() == nullptr || *dish.what.recipe() != *what.recipe()) {
        continue;
      }
      if (dish.kind == kitchen::Dish::Kind::cooked) {
        if (found) {
          return kitchen.recipe(*what.recipe()).serves / meals;
        }
        meals = 0;
      }
      ++meals;
      found = found || DishRef{m, d} == ref;
    }
  }
  return kitchen.recipe(*what.recipe()).serves / std::max(meals, 1);
}

} // namespace

std::vector<std::vector<Rational>> servings(const Kitchen& kitchen,
                                            text::Diagnostics& diagnostics) {
  std::vector<std::vector<Rational>> out;
  const Plan& plan = *kitchen.plan;
  for (std::size_t m = 0; m < plan.meals.size(); ++m) {
    std::vector<Rational>& of_meal = out.emplace_back();
    for (std::size_t d = 0; d < plan.meals[m].dishes.size(); ++d) {
      const kitchen::Dish& dish = plan.meals[m].dishes[d];
      Rational sum = 0;
      for (const Person* person : eaters(kitchen, {m, d})) {
        sum += kitchen::portion(*person, plan.meals[m], dish);
      }
      // Guests alone do not tell who lives here.
      if (kitchen.household.people.empty() && !dish.servings) {
        sum = std::max(sum, as_written(kitchen, {m, d}));
      } else if (sum == 0 && dish.servings.value_or(0) == 0 &&
                 dish.kind != kitchen::Dish::Kind::plain) {
        diagnostics.error(
            errors::nobody_eats, dish.at,
            fmt::format("nobody is there to eat this on {}", text::print_day(plan.meals[m].date)),
            "leave the meal out ('none') on that day, or say for how many");
      }
      of_meal.push_back(dish.servings.value_or(sum));
    }
  }
  return out;
}

} // namespace manciple::resolve
