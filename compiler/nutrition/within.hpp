#pragma once

#include "kitchen/kitchen.hpp"

#include <functional>

namespace manciple::nutrition {

/// Visits a recipe, made once, and each recipe that it needs, once, with the times that it is made
/// for that in all. What is optional is left out.
void each_recipe(const kitchen::Kitchen& kitchen, const kitchen::Recipe& recipe,
                 const std::function<void(const kitchen::Recipe&, double times)>& visit);

/// A food of a recipe.
struct FoodOf {
  const kitchen::Ingredient& line;
  foods::FoodId food{};
  measure::Rational bought; ///< as purchased, of one making
};

/// The foods that a recipe itself takes an amount of; no water from the tap, nothing optional and
/// nothing that is not eaten.
std::vector<FoodOf> foods_of(const kitchen::Kitchen& kitchen, const kitchen::Recipe& recipe);

} // namespace manciple::nutrition
