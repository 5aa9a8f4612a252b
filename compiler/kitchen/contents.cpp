#include "kitchen/contents.hpp"

#include "kitchen/known_appliances.hpp"

#include <algorithm>

namespace manciple::kitchen {

const foods::Food* food_of(const Kitchen& kitchen, const Ingredient& line) {
  const foods::FoodId* id = line.food();
  return id == nullptr ? nullptr : &kitchen.food(*id);
}

bool is(const Kitchen& kitchen, const Ingredient& line, foods::Class what) {
  const foods::Food* food = food_of(kitchen, line);
  return food != nullptr && foods::is(*food, what);
}

bool holds(const Kitchen& kitchen, const Recipe& recipe, foods::Class what) {
  return std::any_of(recipe.ingredients.begin(), recipe.ingredients.end(),
                     [&](const Ingredient& line) { return is(kitchen, line, what); });
}

bool is_baked_from_flour(const Kitchen& kitchen, const Recipe& recipe) {
  return holds(kitchen, recipe, foods::Class::flour) &&
         std::any_of(recipe.method.begin(), recipe.method.end(), [](const MethodStep& step) {
           return known_appliance(step.appliance).is_oven;
         });
}

const foods::Food* least_safe(const Kitchen& kitchen, const Recipe& recipe) {
  const foods::Food* out = nullptr;
  for (const Ingredient& line : recipe.ingredients) {
    const foods::Food* food = food_of(kitchen, line);
    if (food != nullptr && food->safe_at &&
        (out == nullptr || food->safe_at->value.fahrenheit > out->safe_at->value.fahrenheit)) {
      out = food;
    }
  }
  return out;
}

} // namespace manciple::kitchen
