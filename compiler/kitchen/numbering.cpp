#include "kitchen/numbering.hpp"

#include <algorithm>
#include <numeric>

namespace manciple::kitchen {
namespace {

std::size_t at(RecipeId id) {
  return static_cast<std::size_t>(id);
}

void each_dish(Kitchen& kitchen, const auto& visit) {
  if (kitchen.plan) {
    for (Meal& meal : kitchen.plan->meals) {
      for (Dish& dish : meal.dishes) {
        visit(dish.what);
      }
    }
  }
}

// Old places in the new order.
std::vector<std::size_t> order_of(Kitchen& kitchen) {
  const std::vector<Recipe>& all = kitchen.recipes;
  std::vector<std::size_t> order;
  std::vector<bool> taken(all.size(), false);
  const auto take = [&](std::size_t place) {
    if (!taken[place]) {
      taken[place] = true;
      order.push_back(place);
    }
  };
  const auto take_named = [&](const Ingredient& line) {
    if (const RecipeId* id = line.recipe()) {
      take(at(*id));
    }
  };
  each_dish(kitchen, take_named);
  std::size_t next = 0;
  while (next < order.size()) { // it grows
    const Recipe& recipe = all[order[next++]];
    std::for_each(recipe.ingredients.begin(), recipe.ingredients.end(), take_named);
    for (const GivesLine& given : recipe.gives) {
      take_named(given.what);
    }
  }
  std::vector<std::size_t> by_name(all.size());
  std::iota(by_name.begin(), by_name.end(), std::size_t{0});
  std::sort(by_name.begin(), by_name.end(),
            [&](std::size_t a, std::size_t b) { return all[a].slug < all[b].slug; });
  std::for_each(by_name.begin(), by_name.end(), take);
  return order;
}

} // namespace

void number_recipes(Kitchen& kitchen) {
  std::vector<Recipe> ordered;
  std::vector<RecipeId> now(kitchen.recipes.size());
  for (const std::size_t old : order_of(kitchen)) {
    const RecipeId id{static_cast<std::uint32_t>(ordered.size())};
    now[old] = id;
    ordered.push_back(std::move(kitchen.recipes[old]));
    ordered.back().id = id;
  }
  kitchen.recipes = std::move(ordered);
  const auto rename_target = [&](Target& target) {
    if (const auto* old = std::get_if<RecipeId>(&target)) {
      target = now[at(*old)];
    }
  };
  const auto rename = [&](Ingredient& line) { rename_target(line.target); };
  for (Recipe& recipe : kitchen.recipes) {
    std::for_each(recipe.ingredients.begin(), recipe.ingredients.end(), rename);
    for (GivesLine& given : recipe.gives) {
      rename(given.what);
      std::for_each(given.of.begin(), given.of.end(), rename_target);
    }
  }
  each_dish(kitchen, rename);
  for (MadeLot& lot : kitchen.on_hand.made) {
    rename(lot.what);
  }
}

} // namespace manciple::kitchen
