#include "resolve/errors.hpp"
#include "resolve/makings.hpp"

#include <fmt/format.h>

namespace manciple::resolve {

using kitchen::Ingredient;
using kitchen::Kitchen;
using kitchen::Recipe;

std::optional<Rational> times_of(const Kitchen& kitchen, const Ingredient& ingredient,
                                 text::Diagnostics& diagnostics) {
  const Recipe& recipe = kitchen.recipe(*ingredient.recipe());
  const foods::Amount& amount = *ingredient.amount;
  const auto& unit = measure::facts(amount.measure.unit);
  const bool counted = amount.measure.is_counted();
  if (amount.measure.piece == "serving") {
    return Rational(amount.number / recipe.serves);
  }
  for (const kitchen::Makes& makes : recipe.makes) {
    const auto& made = measure::facts(makes.measure.unit);
    const bool alike = counted || unit.dimension == made.dimension;
    if (counted == makes.measure.is_counted() && alike) {
      return Rational(amount.number * unit.factor / (makes.number * made.factor));
    }
  }
  diagnostics.error(
      errors::cannot_scale, ingredient.at,
      fmt::format(
          "it is not clear how much of {} this is: the recipe does not say what it makes in {}",
          recipe.name, counted ? "pieces" : std::string(measure::name(unit.dimension))),
      fmt::format("add 'makes: {}' to recipes/{}.yaml", counted ? "12 pieces" : "8 cups",
                  recipe.slug));
  return std::nullopt;
}

} // namespace manciple::resolve
