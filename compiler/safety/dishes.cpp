#include "safety/dishes.hpp"

#include "resolve/by_products.hpp"

namespace manciple::safety {

using resolve::Inside;

Dishes inside_dishes(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved) {
  Dishes out;
  const auto& meals = kitchen.plan->meals;
  for (std::size_t m = 0; m < meals.size(); ++m) {
    for (std::size_t d = 0; d < meals[m].dishes.size(); ++d) {
      out[{m, d}].add(kitchen, meals[m].dishes[d].what.target);
    }
  }
  for (const resolve::ByProduct& one : resolved.by_products) {
    if (one.parts.empty()) {
      continue;
    }
    const Inside left = resolve::inside(kitchen, resolved, one);
    for (const resolve::ByProduct::Part& part : one.parts) {
      for (const resolve::DishShare& share : resolved.shares_of(part.into)) {
        Inside& dish = out[share.dish];
        dish.foods.insert(left.foods.begin(), left.foods.end());
        dish.recipes.insert(left.recipes.begin(), left.recipes.end());
      }
    }
  }
  return out;
}

} // namespace manciple::safety
