#include "resolve/allergens.hpp"

#include "resolve/eaters.hpp"
#include "resolve/errors.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <tuple>

namespace manciple::resolve {
namespace {

using foods::Allergen;
using foods::FoodId;
using kitchen::Ingredient;
using kitchen::Kitchen;
using kitchen::Person;
using kitchen::Recipe;

// A line of a recipe that a dish needs, and the line by which that recipe gets into the dish: none
// for the dish's own.
struct Reached {
  const Ingredient* line = nullptr;
  std::optional<std::size_t> through;
};

// All that goes into a dish, nearest first. Every recipe is looked into once, however often and
// deep it is used.
struct Inside {
  std::vector<Reached> lines;
  std::vector<std::pair<const Recipe*, std::optional<std::size_t>>> recipes;

  // The lines from the dish to one of them.
  [[nodiscard]] std::vector<const Ingredient*> path(std::optional<std::size_t> line) const {
    std::vector<const Ingredient*> out;
    for (; line; line = lines[*line].through) {
      out.push_back(lines[*line].line);
    }
    std::reverse(out.begin(), out.end());
    return out;
  }
};

// Someone to whom a dish is served.
struct Plate {
  const kitchen::Meal& meal;
  const kitchen::Dish& dish;
  const Person& person;
  const Inside& inside;
};

// A way longer than this is shown by its two ends.
constexpr std::size_t most_notes = 12;

bool holds(const std::vector<Allergen>& list, Allergen allergen) {
  return std::find(list.begin(), list.end(), allergen) != list.end();
}

class Check {
public:
  Check(const Kitchen& kitchen, text::Diagnostics& diagnostics)
      : kitchen_(kitchen), diagnostics_(diagnostics) {}

  std::vector<LabelCheck> run();

private:
  const Inside& inside(const Recipe& recipe);
  void dish(const DishRef& ref);
  void check(const Plate& plate);
  void check_food(const Plate& plate, std::size_t line, FoodId food);
  void check_said(const Plate& plate, const Recipe& recipe, std::optional<std::size_t> through);
  void refuse(const Plate& plate, std::optional<std::size_t> line, std::string_view what,
              const std::string& why);

  const Kitchen& kitchen_;
  text::Diagnostics& diagnostics_;
  std::map<kitchen::RecipeId, Inside> known_;
  std::map<std::tuple<std::string, FoodId, Allergen>, bool> labels_;
};

const Inside& Check::inside(const Recipe& recipe) {
  const auto [place, fresh] = known_.try_emplace(recipe.id);
  Inside& out = place->second;
  if (!fresh) {
    return out;
  }
  std::vector<bool> seen(kitchen_.recipes.size(), false);
  seen[static_cast<std::size_t>(recipe.id)] = true;
  out.recipes.emplace_back(&recipe, std::nullopt);
  for (std::size_t next = 0; next < out.recipes.size(); ++next) {
    const auto [of, through] = out.recipes[next];
    for (const Ingredient& line : of->ingredients) {
      const std::size_t index = out.lines.size();
      out.lines.push_back({&line, through});
      if (const kitchen::RecipeId* id = line.recipe();
          id != nullptr && !seen[static_cast<std::size_t>(*id)]) {
        seen[static_cast<std::size_t>(*id)] = true;
        out.recipes.emplace_back(&kitchen_.recipe(*id), index);
      }
    }
  }
  return out;
}

void Check::refuse(const Plate& plate, std::optional<std::size_t> line, std::string_view what,
                   const std::string& why) {
  auto& said = diagnostics_.error(
      errors::allergen, plate.dish.at,
      fmt::format("{} must not have {}: {}", plate.person.name, what, why),
      fmt::format("change the dish, or say who eats it without {}: {{dish: ..., eaten by: [...]}}",
                  plate.person.name));
  const auto path = plate.inside.path(line);
  for (std::size_t i = 0; i < path.size(); ++i) {
    if (path.size() > most_notes && i == most_notes / 2) {
      said.note({}, fmt::format("through {} more recipes", path.size() - most_notes));
      i = path.size() - most_notes / 2;
    }
    said.note(path[i]->at, fmt::format("through '{}'", path[i]->text));
  }
}

void Check::check_food(const Plate& plate, std::size_t line, FoodId id) {
  const foods::Food& food = kitchen_.food(id);
  const Person& person = plate.person;
  const auto has = [&] {
    const kitchen::RecipeId* dish = plate.dish.what.recipe();
    return fmt::format("{} on {} has {}", dish != nullptr ? kitchen_.recipe(*dish).name : food.name,
                       text::print_day(plate.meal.date), food.name);
  };
  if (std::find(person.avoids_foods.begin(), person.avoids_foods.end(), id) !=
      person.avoids_foods.end()) {
    refuse(plate, line, food.name, has());
  }
  for (const FoodId avoided : person.avoids_foods) {
    const std::string within = fmt::format(" {} ", foods::normal_name(food.name));
    const std::string name = fmt::format(" {} ", kitchen_.food(avoided).name);
    if (food.as_written && id != avoided && within.find(name) != std::string::npos) {
      refuse(plate, line, kitchen_.food(avoided).name, has());
    }
  }
  if (food.is_household()) {
    return;
  }
  for (const Allergen allergen : person.avoids) {
    if (food.allergens && holds(food.allergens->contains, allergen)) {
      refuse(plate, line, foods::name(allergen), has());
    } else if (!food.allergens || holds(food.allergens->check_label, allergen)) {
      labels_[{person.name, id, allergen}] = true;
    }
  }
}

// What a recipe itself says that it may contain.
void Check::check_said(const Plate& plate, const Recipe& recipe,
                       std::optional<std::size_t> through) {
  for (const Allergen allergen : recipe.may_contain) {
    if (holds(plate.person.avoids, allergen)) {
      refuse(plate, through, foods::name(allergen), fmt::format("{} may contain it", recipe.name));
    }
  }
}

void Check::check(const Plate& plate) {
  for (std::size_t i = 0; i < plate.inside.lines.size(); ++i) {
    if (const FoodId* food = plate.inside.lines[i].line->food()) {
      // What may be bought instead counts as being in it.
      for (const FoodId one : kitchen_.household.instead_of(*food)) {
        check_food(plate, i, one);
      }
    }
  }
  for (const auto& [recipe, through] : plate.inside.recipes) {
    check_said(plate, *recipe, through);
  }
}

void Check::dish(const DishRef& ref) {
  const kitchen::Meal& meal = kitchen_.plan->meals[ref.meal];
  const kitchen::Dish& dish = meal.dishes[ref.dish];
  const kitchen::RecipeId* recipe = dish.what.recipe();
  const Inside plain{{{&dish.what, {}}}, {}};
  for (const Person* person : eaters(kitchen_, ref)) {
    if (!person->avoids.empty() || !person->avoids_foods.empty()) {
      check({meal, dish, *person, recipe != nullptr ? inside(kitchen_.recipe(*recipe)) : plain});
    }
  }
}

std::vector<LabelCheck> Check::run() {
  for (std::size_t m = 0; m < kitchen_.plan->meals.size(); ++m) {
    for (std::size_t d = 0; d < kitchen_.plan->meals[m].dishes.size(); ++d) {
      dish({m, d});
    }
  }
  std::vector<LabelCheck> out;
  for (const auto& [key, yes] : labels_) {
    out.push_back({std::get<1>(key), std::get<2>(key), std::get<0>(key)});
  }
  std::stable_sort(out.begin(), out.end(), [&](const LabelCheck& a, const LabelCheck& b) {
    return std::tuple(std::string_view(kitchen_.food(a.food).name), a.allergen) <
           std::tuple(std::string_view(kitchen_.food(b.food).name), b.allergen);
  });
  return out;
}

} // namespace

std::vector<LabelCheck> check_allergens(const Kitchen& kitchen, text::Diagnostics& diagnostics) {
  return Check(kitchen, diagnostics).run();
}

} // namespace manciple::resolve
