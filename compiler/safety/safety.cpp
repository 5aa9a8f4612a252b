#include "safety/safety.hpp"

#include "kitchen/contents.hpp"
#include "kitchen/known_appliances.hpp"
#include "resolve/eaters.hpp"
#include "safety/errors.hpp"
#include "safety/expecting.hpp"
#include "safety/hazard.hpp"
#include "safety/temperature.hpp"
#include "text/phrases.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

namespace manciple::safety {
namespace {

using kitchen::Ingredient;
using kitchen::Kitchen;
using kitchen::MethodStep;
using kitchen::Recipe;
using text::says;

// Hot, or heated by its own words: a method that names no appliance is judged, too. When work is
// planned, "pour boiling water over it" is no cooking; there only the appliance counts.
bool may_be_heated(const MethodStep& step) {
  return step.is_hot ||
         says(step.what,
              {"bake~",     "boil~",       "simmer~",     "fry",        "fried",  "frying",
               "roast~",    "cook~",       "grill~",      "broil~",     "steam~", "poach~",
               "scramble~", "sear~",       "brown the",   "saute~",     "sauté~", "toast~",
               "heat~",     "melt~",       "griddle~",    "microwave~", "stew~",  "braise~",
               "blanch~",   "caramelise~", "caramelize~", "soften~",    "sweat~", "barbecue~",
               "hot water", "boiling"});
}

bool is_boiled(const MethodStep& step) {
  return says(step.what, {"boil~", "simmer~", "pressure cook~"}) ||
         kitchen::known_appliance(step.appliance).boils == kitchen::Boils::always;
}

bool may_be_boiled(const MethodStep& step) {
  return is_boiled(step) ||
         kitchen::known_appliance(step.appliance).boils == kitchen::Boils::perhaps;
}

bool is_slow(const MethodStep& step) {
  return kitchen::known_appliance(step.appliance).is_slow || says(step.what, {"slow cook~"});
}

// Looks through one recipe.
class Look {
public:
  Look(const Kitchen& kitchen, const Recipe& recipe) : kitchen_(kitchen), recipe_(recipe) {}

  // The place that shows it, if the recipe is like the pattern.
  [[nodiscard]] std::optional<text::Span> place_of(const Pattern& pattern) const {
    text::Span at = recipe_.at;
    if (!pattern.food.empty()) {
      const Ingredient* found = some(pattern.food);
      if (found == nullptr) {
        return std::nullopt;
      }
      at = found->at;
    }
    if (!holds_each(pattern.with) || some(pattern.without) != nullptr ||
        (!pattern.only.empty() && !all(pattern.only)) || !is_kept(pattern) ||
        !fits(pattern.process) || says_anywhere(pattern.unless)) {
      return std::nullopt;
    }
    return pattern.says.empty() ? at : said(pattern.says);
  }

private:
  [[nodiscard]] bool is_one(const Ingredient& line, const std::vector<foods::Class>& of) const {
    return std::any_of(of.begin(), of.end(),
                       [&](foods::Class what) { return kitchen::is(kitchen_, line, what); });
  }
  [[nodiscard]] const Ingredient* some(const std::vector<foods::Class>& of) const {
    const auto found = std::find_if(recipe_.ingredients.begin(), recipe_.ingredients.end(),
                                    [&](const Ingredient& line) { return is_one(line, of); });
    return found == recipe_.ingredients.end() ? nullptr : &*found;
  }
  [[nodiscard]] bool all(const std::vector<foods::Class>& of) const {
    return std::all_of(recipe_.ingredients.begin(), recipe_.ingredients.end(),
                       [&](const Ingredient& line) { return is_one(line, of); });
  }
  [[nodiscard]] bool holds_each(const std::vector<foods::Class>& of) const {
    return std::all_of(of.begin(), of.end(),
                       [&](foods::Class what) { return kitchen::holds(kitchen_, recipe_, what); });
  }
  [[nodiscard]] bool is_kept(const Pattern& pattern) const {
    if (!pattern.kept) {
      return true;
    }
    const std::optional<int>& days = *pattern.kept == foods::Place::pantry ? recipe_.keeps_pantry
                                     : *pattern.kept == foods::Place::fridge
                                         ? recipe_.keeps_fridge
                                         : recipe_.keeps_freezer;
    return days && *days > pattern.days;
  }
  [[nodiscard]] bool fits(Process process) const {
    const auto any = [&](auto&& what) {
      return std::any_of(recipe_.method.begin(), recipe_.method.end(), what);
    };
    switch (process) {
    case Process::any:
      return true;
    case Process::cold:
      return !recipe_.method.empty() && !any(may_be_heated);
    case Process::hot:
      return any(may_be_heated);
    case Process::not_boiled:
      return !recipe_.method.empty() && !any(may_be_boiled);
    case Process::slow_cooker:
      return !any(is_boiled) && any(is_slow);
    }
    return false;
  }
  [[nodiscard]] std::optional<text::Span> said(const std::vector<std::string_view>& phrases) const {
    for (const MethodStep& step : recipe_.method) {
      if (says(step.what, phrases)) {
        return step.at;
      }
    }
    for (const Ingredient& line : recipe_.ingredients) {
      if (says(line.text, phrases)) {
        return line.at;
      }
    }
    return std::nullopt;
  }
  // What a food is called is no word of the cook's: "dried beans" are not kept dry.
  [[nodiscard]] bool says_anywhere(const std::vector<std::string_view>& phrases) const {
    const auto step = [&](const MethodStep& one) { return says(one.what, phrases); };
    const auto note = [&](const Ingredient& line) { return says(line.note, phrases); };
    return says(recipe_.name, phrases) ||
           std::any_of(recipe_.method.begin(), recipe_.method.end(), step) ||
           std::any_of(recipe_.ingredients.begin(), recipe_.ingredients.end(), note);
  }

  const Kitchen& kitchen_;
  const Recipe& recipe_;
};

void tell(const Hazard& hazard, const text::Span& at, const std::string& name,
          text::Diagnostics& diagnostics) {
  const std::string what = fmt::format("{}: {}", name, hazard.what);
  auto& said = hazard.forbidden
                   ? diagnostics.error(hazard.code, at, what, std::string(hazard.instead))
                   : diagnostics.warning(hazard.code, at, what, std::string(hazard.instead));
  said.note(std::nullopt, std::string(hazard.source));
}

// What a recipe leaves over is kept no longer than a dish of what is in it.
void check_kept(const Kitchen& kitchen, const Recipe& recipe, const kitchen::GivesLine& given,
                const std::set<std::string_view>& told, text::Diagnostics& diagnostics) {
  Recipe kept = recipe;
  kept.name = fmt::format("{}, of {}", given.what.text, recipe.name);
  (given.cool_place == foods::Place::pantry ? kept.keeps_pantry : kept.keeps_fridge) =
      given.keeps_unfrozen;
  (given.cool_place == foods::Place::pantry ? kept.keeps_fridge : kept.keeps_pantry).reset();
  kept.keeps_freezer = given.keeps_freezer;
  if (!given.of.empty()) {
    std::erase_if(kept.ingredients, [&](const Ingredient& line) {
      return std::find(given.of.begin(), given.of.end(), line.target) == given.of.end();
    });
  }
  const Look look(kitchen, kept);
  std::set<std::string_view> said = told;
  for (const Hazard& hazard : hazards()) {
    if (hazard.pattern.kept && look.place_of(hazard.pattern) &&
        said.insert(hazard.code.number).second) {
      tell(hazard, given.at, kept.name, diagnostics);
    }
  }
}

void check(const Kitchen& kitchen, const Recipe& recipe, text::Diagnostics& diagnostics) {
  const Look look(kitchen, recipe);
  std::set<std::string_view> told; // each danger once, the gravest first
  for (const Hazard& hazard : hazards()) {
    const auto at = look.place_of(hazard.pattern);
    if (at && told.insert(hazard.code.number).second) {
      tell(hazard, *at, recipe.name, diagnostics);
    }
  }
  check_temperatures(kitchen, recipe, diagnostics);
  for (const kitchen::GivesLine& given : recipe.gives) {
    check_kept(kitchen, recipe, given, told, diagnostics);
  }
}

// The recipes of a dish that have honey, or may have it, in their own lines; "the meal" where the
// dish is honey itself.
std::set<std::string_view> bring_honey(const Kitchen& kitchen, const kitchen::Dish& dish,
                                       const resolve::Inside& inside) {
  const auto has = [&](const kitchen::Target& what) {
    const auto* food = std::get_if<foods::FoodId>(&what);
    if (food == nullptr) {
      return false;
    }
    const auto any = kitchen.household.instead_of(*food);
    return std::any_of(any.begin(), any.end(), [&](foods::FoodId one) {
      return foods::is(kitchen.food(one), foods::Class::honey);
    });
  };
  std::set<std::string_view> out;
  for (const kitchen::RecipeId id : inside.recipes) {
    const Recipe& recipe = kitchen.recipe(id);
    if (std::any_of(recipe.ingredients.begin(), recipe.ingredients.end(),
                    [&](const Ingredient& line) { return has(line.target); })) {
      out.insert(recipe.name);
    }
  }
  if (has(dish.what.target)) {
    out.insert("the meal");
  }
  return out;
}

// Honey may carry spores of botulism, which heat does not kill and only infants cannot cope with.
void check_infants(const Kitchen& kitchen, const Dishes& dishes, text::Diagnostics& diagnostics) {
  constexpr int old_enough = 12; // months
  const auto is_infant = [](const kitchen::Person* person) {
    return person->months && *person->months < old_enough;
  };
  for (const auto& [ref, inside] : dishes) {
    const kitchen::Meal& meal = kitchen.plan->meals[ref.meal];
    const kitchen::Dish& dish = meal.dishes[ref.dish];
    std::vector<const kitchen::Person*> infants = resolve::eaters(kitchen, ref);
    std::erase_if(infants, [&](const kitchen::Person* person) { return !is_infant(person); });
    if (infants.empty()) {
      continue;
    }
    for (const std::string_view name : bring_honey(kitchen, dish, inside)) {
      for (const kitchen::Person* person : infants) {
        diagnostics
            .error(errors::honey_for_infant, dish.at,
                   fmt::format("{} is under one year and must not have honey: it is in {}, for {} "
                               "on {}",
                               person->name, name, meal.slot, text::print_day(meal.date)),
                   "leave it out, or say who else eats the dish: {dish: ..., eaten by: [...]}")
            .note(std::nullopt, "CDC, Botulism Prevention; FDA, Bad Bug Book");
      }
    }
  }
}

} // namespace

void check(const Kitchen& kitchen, const resolve::Resolved& resolved,
           text::Diagnostics& diagnostics) {
  std::set<kitchen::RecipeId> made;
  for (const resolve::Making& making : resolved.makings) {
    made.insert(making.recipe);
  }
  for (const kitchen::RecipeId id : made) {
    check(kitchen, kitchen.recipe(id), diagnostics);
  }
  const Dishes dishes = inside_dishes(kitchen, resolved);
  check_infants(kitchen, dishes, diagnostics);
  check_expecting(kitchen, dishes, diagnostics);
  for (const kitchen::StockLot& lot : kitchen.on_hand.lots) {
    if (lot.thawed && lot.place == foods::Place::freezer) {
      diagnostics
          .warning(errors::refrozen, lot.what.at,
                   fmt::format("{} was thawed and is in the freezer again",
                               kitchen.food(lot.food()).name),
                   "cook it first; only what has thawed in the fridge may be frozen again as it is")
          .note(std::nullopt, "FSIS, Freezing and Food Safety");
    }
  }
}

void check_recipes(const Kitchen& kitchen, const std::set<std::string>& told,
                   text::Diagnostics& diagnostics) {
  for (const Recipe& recipe : kitchen.recipes) {
    if (!told.contains(recipe.slug)) {
      check(kitchen, recipe, diagnostics);
    }
  }
}

} // namespace manciple::safety
