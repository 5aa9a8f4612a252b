#pragma once

#include "foods/classes.hpp"
#include "kitchen/kitchen.hpp"

/// What is in a recipe by its own lines; the recipes among them are not looked into.
namespace manciple::kitchen {

/// Null unless the line is of a food.
const foods::Food* food_of(const Kitchen& kitchen, const Ingredient& line);

bool is(const Kitchen& kitchen, const Ingredient& line, foods::Class what);
bool holds(const Kitchen& kitchen, const Recipe& recipe, foods::Class what);

/// Whether it goes into an oven with flour in it, or with a mix that is mostly flour.
bool is_baked_from_flour(const Kitchen& kitchen, const Recipe& recipe);

/// The food that has to be hottest in the middle to be safe; null if none has to.
const foods::Food* least_safe(const Kitchen& kitchen, const Recipe& recipe);

} // namespace manciple::kitchen
