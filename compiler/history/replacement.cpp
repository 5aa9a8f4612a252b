#include "history/replacement.hpp"

#include "purchase/usual_price.hpp"
#include "resolve/makings.hpp"

namespace manciple::history {
namespace {

using kitchen::Kitchen;

std::optional<Rational> of_food(const Kitchen& kitchen, foods::FoodId food,
                                const Rational& amount) {
  const auto price = purchase::replacement_price(kitchen, food);
  return price ? std::optional(Rational(*price * amount)) : std::nullopt;
}

// Made once as written. A recipe is in no recipe that it is made of: `resolve` has refused such.
std::optional<Rational> of_recipe(const Kitchen& kitchen, kitchen::RecipeId id) {
  std::optional<Rational> sum;
  for (const kitchen::Ingredient& one : kitchen.recipe(id).ingredients) {
    std::optional<Rational> cost;
    if (const foods::FoodId* food = one.food(); food != nullptr && one.amount) {
      const auto amount = foods::as_purchased(kitchen.food(*food), *one.amount);
      cost = amount ? of_food(kitchen, *food, amount->amount) : std::nullopt;
    } else if (const kitchen::RecipeId* recipe = one.recipe(); recipe != nullptr && one.amount) {
      text::Diagnostics said; // by `resolve`
      const auto times = resolve::times_of(kitchen, one, said);
      const auto once = times ? of_recipe(kitchen, *recipe) : std::nullopt;
      cost = once ? std::optional(Rational(*once * *times)) : std::nullopt;
    }
    sum = cost ? std::optional(Rational(sum.value_or(0) + *cost)) : sum;
  }
  return sum;
}

} // namespace

std::optional<Rational> replacement_cost(const Kitchen& kitchen, const Holding& holding) {
  return of_food(kitchen, holding.food, holding.amount);
}

std::optional<Rational> replacement_cost(const Kitchen& kitchen, const kitchen::MadeLot& lot) {
  const auto once = of_recipe(kitchen, *lot.what.recipe());
  return once && lot.times ? std::optional(Rational(*once * *lot.times)) : std::nullopt;
}

} // namespace manciple::history
