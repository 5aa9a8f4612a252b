#pragma once

#include "kitchen/kitchen.hpp"
#include "resolve/resolve.hpp"

#include <vector>

namespace manciple::resolve {

/// Those who eat a dish: people of the household who are not away, and guests who are there; only
/// the people named where the plan says who eats it.
std::vector<const kitchen::Person*> eaters(const kitchen::Kitchen& kitchen, const DishRef& dish);

/// How many servings each dish of each meal takes. A dish that nobody eats is an error.
std::vector<std::vector<Rational>> servings(const kitchen::Kitchen& kitchen,
                                            text::Diagnostics& diagnostics);

} // namespace manciple::resolve
