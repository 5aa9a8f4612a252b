#include "nutrition/within.hpp"

#include "resolve/makings.hpp"
#include "resolve/uses.hpp"

#include <algorithm>

namespace manciple::nutrition {
namespace {

using kitchen::Ingredient;
using kitchen::Kitchen;
using kitchen::Recipe;

// `path` leads to the recipe: a circle, which a library may have that nobody has checked, ends.
void visit_at(const Kitchen& kitchen, const Recipe& recipe, double times,
              std::vector<kitchen::RecipeId>& path,
              const std::function<void(const Recipe&, double)>& visit) {
  visit(recipe, times);
  path.push_back(recipe.id);
  for (const Ingredient& line : recipe.ingredients) {
    const kitchen::RecipeId* part = line.recipe();
    if (part == nullptr || !line.amount || line.optional ||
        std::find(path.begin(), path.end(), *part) != path.end()) {
      continue;
    }
    text::Diagnostics unsaid;
    if (const auto of = resolve::times_of(kitchen, line, unsaid)) {
      visit_at(kitchen, kitchen.recipe(*part), times * to_double(*of), path, visit);
    }
  }
  path.pop_back();
}

} // namespace

void each_recipe(const Kitchen& kitchen, const Recipe& recipe,
                 const std::function<void(const Recipe&, double)>& visit) {
  std::vector<kitchen::RecipeId> path;
  visit_at(kitchen, recipe, 1, path, visit);
}

std::vector<FoodOf> foods_of(const Kitchen& kitchen, const Recipe& recipe) {
  std::vector<FoodOf> out;
  const auto bought = resolve::purchased_per_making(kitchen, recipe);
  for (std::size_t i = 0; i < recipe.ingredients.size(); ++i) {
    const Ingredient& line = recipe.ingredients[i];
    const foods::FoodId* id = line.food();
    if (id == nullptr || !line.amount || line.optional) {
      continue;
    }
    const foods::Food& food = kitchen.food(*id);
    if (!food.from_tap && !food.is_household()) {
      out.push_back({line, *id, bought[i]});
    }
  }
  return out;
}

} // namespace manciple::nutrition
