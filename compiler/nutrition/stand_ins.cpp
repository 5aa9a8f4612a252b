#include "nutrition/stand_ins.hpp"

#include "foods/kinds.hpp"
#include "nutrition/within.hpp"
#include "purchase/usual_price.hpp"
#include "resolve/eaters.hpp"

#include <algorithm>

namespace manciple::nutrition {
namespace {

using kitchen::Aim;
using kitchen::Kitchen;
using kitchen::Recipe;

bool suits(const Recipe& recipe, std::string_view meal) {
  return std::any_of(recipe.suits.begin(), recipe.suits.end(),
                     [&](const kitchen::Suited& one) { return one.meal == meal; });
}

} // namespace

bool is_counted(const Kitchen& kitchen, const foods::Food& food, const Aim& aim) {
  if (const auto* kind = std::get_if<std::string>(&aim.of)) {
    return foods::is_of_kind(food, *kind);
  }
  if (const auto* one = std::get_if<foods::FoodId>(&aim.of)) {
    return kitchen.food(*one).name == food.name;
  }
  const auto* classes = std::get_if<std::vector<foods::AnyClass>>(&aim.of);
  return classes != nullptr &&
         std::any_of(classes->begin(), classes->end(), [&](const foods::AnyClass& of) {
           return foods::holds(food, of) == foods::Holds::yes;
         });
}

LibraryDishes::LibraryDishes(kitchen::Library library, const Kitchen& kitchen)
    : library_(std::move(library)), kitchen_(kitchen) {
  // What things usually cost depends on where the plan's trips go.
  kitchen::Plan trips;
  trips.from = kitchen.plan->from;
  trips.until = kitchen.plan->until;
  trips.trips = kitchen.plan->trips;
  trips.trips_done = kitchen.plan->trips_done;
  library_.kitchen.plan = std::move(trips);
}

std::vector<StandIn> LibraryDishes::in_place_of(resolve::DishRef dish, bool main, const Aim& aim) {
  const kitchen::Meal& meal = kitchen_.plan->meals[dish.meal];
  const kitchen::RecipeId* now = meal.dishes[dish.dish].what.recipe();
  std::vector<kitchen::Person> eaters;
  for (const kitchen::Person* one : resolve::eaters(kitchen_, dish)) {
    eaters.push_back(known_here(*one));
  }
  const std::string_view place = main ? std::string_view(meal.slot) : kitchen::Suited::side;
  const Kitchen& library = library_.kitchen;
  std::vector<StandIn> out;
  for (std::size_t r = 0; r < library.recipes.size(); ++r) {
    const Recipe& recipe = library.recipes[r];
    if (!library_.readable[r] || !suits(recipe, place) ||
        (now != nullptr && kitchen_.recipe(*now).slug == recipe.slug)) {
      continue;
    }
    const resolve::Inside& inside = serving(recipe).inside;
    StandIn one{recipe.name, is_planned(recipe), false, 0, {}};
    const bool fit = std::all_of(eaters.begin(), eaters.end(), [&](const kitchen::Person& eater) {
      const resolve::Fit found = resolve::fit_for(library, inside, eater);
      one.labels = one.labels || !found.labels.empty();
      return !found.forbidden;
    });
    if (fit) {
      one.counts = counts(recipe, aim);
      one.cents = serving(recipe).cents;
      out.push_back(std::move(one));
    }
  }
  return out;
}

bool LibraryDishes::is_planned(const Recipe& recipe) const {
  const auto& known = kitchen_.recipes;
  return std::any_of(known.begin(), known.end(),
                     [&](const Recipe& one) { return one.slug == recipe.slug; });
}

const LibraryDishes::Serving& LibraryDishes::serving(const Recipe& recipe) {
  const auto found = servings_.find(recipe.id);
  if (found != servings_.end()) {
    return found->second;
  }
  Serving out{of_serving(library_.kitchen, recipe), cents_of(recipe), {}};
  out.inside.add(library_.kitchen, recipe.id);
  return servings_[recipe.id] = std::move(out);
}

std::optional<double> LibraryDishes::cents_of(const Recipe& recipe) {
  std::optional<double> out = 0;
  each_recipe(library_.kitchen, recipe, [&](const Recipe& part, double times) {
    for (const FoodOf& one : foods_of(library_.kitchen, part)) {
      auto price = prices_.find(one.food);
      if (price == prices_.end()) {
        const auto exact = purchase::replacement_price(library_.kitchen, one.food);
        price =
            prices_
                .emplace(one.food, exact ? std::optional<double>(to_double(*exact)) : std::nullopt)
                .first;
      }
      // A spice without a price is too little to matter.
      const bool spice = library_.kitchen.food(one.food).department == foods::Department::spices;
      if (!price->second && !spice) {
        out.reset();
      } else if (out) {
        *out += price->second.value_or(0) * to_double(one.bought) * times;
      }
    }
  });
  return out ? std::optional<double>(*out / to_double(recipe.serves)) : std::nullopt;
}

double LibraryDishes::counts(const Recipe& recipe, const Aim& aim) {
  if (const auto* nutrient = std::get_if<Nutrient>(&aim.of)) {
    return serving(recipe).holds[*nutrient];
  }
  if (std::holds_alternative<std::monostate>(aim.of)) {
    return serving(recipe).cents.value_or(0);
  }
  double grams = 0;
  each_recipe(library_.kitchen, recipe, [&](const Recipe& part, double times) {
    for (const FoodOf& one : foods_of(library_.kitchen, part)) {
      const foods::Food& food = library_.kitchen.food(one.food);
      if (is_counted(kitchen_, food, aim)) {
        grams += eaten_grams(food, eaten_form(one.line), one.bought).value_or(0) * times;
      }
    }
  });
  return grams / to_double(recipe.serves);
}

// The same person, whose limits speak of the library's foods.
kitchen::Person LibraryDishes::known_here(const kitchen::Person& person) {
  kitchen::Person out = person;
  for (kitchen::Limit& limit : out.limits) {
    if (const auto* food = std::get_if<foods::FoodId>(&limit.what)) {
      const std::string& name = kitchen_.food(*food).name;
      auto known = library_.kitchen.foods.find(name);
      if (!known) {
        known =
            library_.kitchen.foods.as_written(name, measure::Dimension::mass, {}, nullptr, false);
      }
      limit.what = *known;
    }
  }
  return out;
}

} // namespace manciple::nutrition
