#include "kitchen/appliances.hpp"

#include "kitchen/errors.hpp"
#include "kitchen/known_appliances.hpp"
#include "text/nearest.hpp"
#include "text/phrases.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace manciple::kitchen {
namespace {

// So many dishes are named, and the rest counted.
constexpr std::size_t most_notes = 5;

// By recipe, whether it is `of` or needs it, at any depth.
std::vector<bool> in_need_of(const Kitchen& kitchen, RecipeId of) {
  const auto at = [](RecipeId id) { return static_cast<std::size_t>(id); };
  std::vector<std::vector<RecipeId>> users(kitchen.recipes.size());
  for (const Recipe& recipe : kitchen.recipes) {
    for (const Ingredient& line : recipe.ingredients) {
      if (const RecipeId* part = line.recipe()) {
        users[at(*part)].push_back(recipe.id);
      }
    }
  }
  std::vector<bool> needs(kitchen.recipes.size(), false);
  std::vector<RecipeId> open{of};
  needs[at(of)] = true;
  while (!open.empty()) {
    const RecipeId next = open.back();
    open.pop_back();
    for (const RecipeId user : users[at(next)]) {
      if (!needs[at(user)]) {
        needs[at(user)] = true;
        open.push_back(user);
      }
    }
  }
  return needs;
}

void name_dishes(const Kitchen& kitchen, RecipeId of, text::Diagnostic& said) {
  if (!kitchen.plan) {
    return;
  }
  const std::vector<bool> needs = in_need_of(kitchen, of);
  std::size_t count = 0;
  for (const Meal& meal : kitchen.plan->meals) {
    for (const Dish& dish : meal.dishes) {
      const RecipeId* recipe = dish.what.recipe();
      if (recipe != nullptr && dish.kind == Dish::Kind::cooked &&
          needs[static_cast<std::size_t>(*recipe)] && ++count <= most_notes) {
        said.note(dish.at, fmt::format("for {} {}", text::print_day(meal.date), meal.slot));
      }
    }
  }
  if (count > most_notes) {
    said.note({}, fmt::format("and for {} more", count - most_notes));
  }
}

void check_step(const Kitchen& kitchen, const Recipe& recipe, const MethodStep& step,
                text::Diagnostics& diagnostics) {
  const Appliance* known = kitchen.household.appliance(step.appliance);
  if (step.appliance.empty() || (known != nullptr && known->count > 0)) {
    return;
  }
  std::vector<std::string_view> names;
  for (const Appliance& a : kitchen.household.appliances) {
    names.push_back(a.name);
  }
  std::string fix = known == nullptr ? text::did_you_mean(step.appliance, names) : std::string();
  if (fix.empty()) {
    fix = fmt::format("if there is one, say so in plans/household.yaml: 'appliances: {{{}: 1}}'",
                      step.appliance);
  }
  name_dishes(kitchen, recipe.id,
              diagnostics.error(
                  errors::unknown_appliance, step.at,
                  fmt::format("this step needs the appliance '{}', but the household has none",
                              step.appliance),
                  fix));
}

// By recipe, whether nothing but `gives` of another speaks of it: nobody is going to make it.
std::vector<bool> only_given(const Kitchen& kitchen) {
  std::vector<bool> out(kitchen.recipes.size(), false);
  for (const Recipe& recipe : kitchen.recipes) {
    for (const GivesLine& given : recipe.gives) {
      if (const RecipeId* id = given.what.recipe()) {
        out[static_cast<std::size_t>(*id)] = true;
      }
    }
  }
  const auto wanted = [&](const Ingredient& what) {
    if (const RecipeId* id = what.recipe()) {
      out[static_cast<std::size_t>(*id)] = false;
    }
  };
  if (kitchen.plan) {
    for (const Meal& meal : kitchen.plan->meals) {
      std::for_each(meal.dishes.begin(), meal.dishes.end(),
                    [&](const Dish& dish) { wanted(dish.what); });
    }
  }
  for (const Recipe& recipe : kitchen.recipes) {
    std::for_each(recipe.ingredients.begin(), recipe.ingredients.end(), wanted);
  }
  return out;
}

} // namespace

void check_appliances(const Kitchen& kitchen, text::Diagnostics& diagnostics) {
  const std::vector<bool> only = only_given(kitchen);
  for (const Recipe& recipe : kitchen.recipes) {
    for (const MethodStep& step : recipe.method) {
      if (!only[static_cast<std::size_t>(recipe.id)]) {
        check_step(kitchen, recipe, step, diagnostics);
      }
    }
  }
}

void mark_hot_steps(Recipe& recipe, const Household& household) {
  for (MethodStep& step : recipe.method) {
    const Appliance* own = household.appliance(step.appliance);
    step.is_hot =
        own != nullptr && own->heats ? *own->heats : known_appliance(step.appliance).heats;
  }
}

bool is_heated(const Recipe& recipe) {
  return std::any_of(recipe.method.begin(), recipe.method.end(),
                     [](const MethodStep& step) { return step.is_hot; });
}

bool is_cooked(const Recipe& recipe, std::string_view food) {
  const std::string_view name = food.substr(0, food.find(" ("));  // "parsley (by volume)"
  const std::string_view word = name.substr(name.rfind(' ') + 1); // all of it if there is no space
  const auto named =
      std::find_if(recipe.method.begin(), recipe.method.end(),
                   [&](const MethodStep& step) { return text::names(step.what, word); });
  return std::any_of(named == recipe.method.end() ? recipe.method.begin() : named,
                     recipe.method.end(), [](const MethodStep& step) { return step.is_hot; });
}

} // namespace manciple::kitchen
