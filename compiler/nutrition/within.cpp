#include "nutrition/within.hpp"

#include "resolve/makings.hpp"
#include "resolve/uses.hpp"

#include <algorithm>
#include <map>
#include <utility>
#include <vector>

namespace manciple::nutrition {
namespace {

using kitchen::Ingredient;
using kitchen::Kitchen;
using kitchen::Recipe;

// A recipe, and how often it needs others.
struct Needing {
  const Recipe* recipe;
  std::vector<std::pair<kitchen::RecipeId, double>> parts;
  std::size_t next = 0; // of the parts, to be looked at
};

Needing needing(const Kitchen& kitchen, const Recipe& recipe) {
  Needing out{&recipe, {}};
  for (const Ingredient& line : recipe.ingredients) {
    const kitchen::RecipeId* part = line.recipe();
    if (part == nullptr || !line.amount || line.optional) {
      continue;
    }
    text::Diagnostics unsaid;
    if (const auto of = resolve::times_of(kitchen, line, unsaid)) {
      out.parts.emplace_back(*part, to_double(*of));
    }
  }
  return out;
}

// A recipe and all that it needs, each after what it needs. Chains may be long, so this does not
// call itself. A circle, which a library may have that nobody has checked, ends where it closes.
std::vector<Needing> in_order(const Kitchen& kitchen, const Recipe& recipe) {
  std::vector<Needing> done;
  std::vector<Needing> path{needing(kitchen, recipe)};
  std::map<kitchen::RecipeId, bool> on_path{{recipe.id, true}}; // of those that were seen
  while (!path.empty()) {
    Needing& at = path.back();
    if (at.next == at.parts.size()) {
      on_path[at.recipe->id] = false;
      done.push_back(std::move(at));
      path.pop_back();
      continue;
    }
    const kitchen::RecipeId part = at.parts[at.next].first;
    const auto [seen, fresh] = on_path.emplace(part, true);
    if (fresh) {
      ++at.next;
      path.push_back(needing(kitchen, kitchen.recipe(part)));
    } else if (seen->second) {
      at.parts.erase(at.parts.begin() + static_cast<std::ptrdiff_t>(at.next));
    } else {
      ++at.next;
    }
  }
  return done;
}

} // namespace

void each_recipe(const Kitchen& kitchen, const Recipe& recipe,
                 const std::function<void(const Recipe&, double)>& visit) {
  std::vector<Needing> order = in_order(kitchen, recipe);
  std::reverse(order.begin(), order.end());
  std::map<kitchen::RecipeId, double> times{{recipe.id, 1}};
  for (const Needing& one : order) {
    const double of = times[one.recipe->id];
    visit(*one.recipe, of);
    for (const auto& [part, share] : one.parts) {
      times[part] += of * share;
    }
  }
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
