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

// A food inside a dish and the lines by which it gets there.
struct Found {
  FoodId food{};
  std::vector<const Ingredient*> path;
};

bool holds(const std::vector<Allergen>& list, Allergen allergen) {
  return std::find(list.begin(), list.end(), allergen) != list.end();
}

class Check {
public:
  Check(const Kitchen& kitchen, text::Diagnostics& diagnostics)
      : kitchen_(kitchen), diagnostics_(diagnostics) {}

  std::vector<LabelCheck> run();

private:
  const std::vector<Found>& inside(const Recipe& recipe);
  void dish(const DishRef& ref);
  void check(const kitchen::Meal& meal, const kitchen::Dish& dish, const Person& person,
             const Found& found);
  void check_food(const kitchen::Meal& meal, const kitchen::Dish& dish, const Person& person,
                  const Found& found);
  void refuse(const kitchen::Meal& meal, const kitchen::Dish& dish, const Person& person,
              const Found& found, std::string_view what);

  const Kitchen& kitchen_;
  text::Diagnostics& diagnostics_;
  std::map<kitchen::RecipeId, std::vector<Found>> known_;
  std::map<std::tuple<std::string, FoodId, Allergen>, bool> labels_;
};

const std::vector<Found>& Check::inside(const Recipe& recipe) {
  if (const auto known = known_.find(recipe.id); known != known_.end()) {
    return known->second;
  }
  std::vector<Found> out;
  for (const Ingredient& ingredient : recipe.ingredients) {
    if (const FoodId* food = ingredient.food()) {
      out.push_back({*food, {&ingredient}});
    } else {
      for (const Found& deeper : inside(kitchen_.recipe(*ingredient.recipe()))) {
        std::vector<const Ingredient*> path{&ingredient};
        path.insert(path.end(), deeper.path.begin(), deeper.path.end());
        out.push_back({deeper.food, std::move(path)});
      }
    }
  }
  return known_.emplace(recipe.id, std::move(out)).first->second;
}

void Check::refuse(const kitchen::Meal& meal, const kitchen::Dish& dish, const Person& person,
                   const Found& found, std::string_view what) {
  const std::string_view food = kitchen_.food(found.food).name;
  auto& said = diagnostics_.error(
      errors::allergen, dish.at,
      fmt::format("{} must not have {}: {} on {} has {}", person.name, what,
                  dish.what.recipe() != nullptr ? kitchen_.recipe(*dish.what.recipe()).name
                                                : std::string(food),
                  text::print_day(meal.date), food),
      fmt::format("change the dish, or say who eats it without {}: {{dish: ..., eaten by: [...]}}",
                  person.name));
  for (const Ingredient* line : found.path) {
    said.note(line->at, fmt::format("through '{}'", line->text));
  }
}

// What may be bought instead counts as being in it.
void Check::check(const kitchen::Meal& meal, const kitchen::Dish& dish, const Person& person,
                  const Found& found) {
  for (const FoodId one : kitchen_.household.instead_of(found.food)) {
    check_food(meal, dish, person, {one, found.path});
  }
}

void Check::check_food(const kitchen::Meal& meal, const kitchen::Dish& dish, const Person& person,
                       const Found& found) {
  const foods::Food& food = kitchen_.food(found.food);
  if (std::find(person.avoids_foods.begin(), person.avoids_foods.end(), found.food) !=
      person.avoids_foods.end()) {
    refuse(meal, dish, person, found, food.name);
  }
  if (food.is_household()) {
    return;
  }
  for (const Allergen allergen : person.avoids) {
    if (food.allergens && holds(food.allergens->contains, allergen)) {
      refuse(meal, dish, person, found, foods::name(allergen));
    } else if (!food.allergens || holds(food.allergens->check_label, allergen)) {
      labels_[{person.name, found.food, allergen}] = true;
    }
  }
}

void Check::dish(const DishRef& ref) {
  const kitchen::Meal& meal = kitchen_.plan->meals[ref.meal];
  const kitchen::Dish& dish = meal.dishes[ref.dish];
  for (const Person* person : eaters(kitchen_, ref)) {
    if (person->avoids.empty() && person->avoids_foods.empty()) {
      continue;
    }
    if (const kitchen::RecipeId* id = dish.what.recipe()) {
      for (const Found& found : inside(kitchen_.recipe(*id))) {
        check(meal, dish, *person, found);
      }
      for (const Allergen allergen : kitchen_.recipe(*id).may_contain) {
        if (holds(person->avoids, allergen)) {
          diagnostics_.error(errors::allergen, dish.at,
                             fmt::format("{} must not have {}: {} may contain it", person->name,
                                         foods::name(allergen), kitchen_.recipe(*id).name));
        }
      }
    } else {
      check(meal, dish, *person, {*dish.what.food(), {&dish.what}});
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
