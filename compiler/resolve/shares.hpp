#pragma once

#include "resolve/resolve.hpp"

namespace manciple::resolve {

/// For every making, the dishes that it ends up in, through makings of makings: each dish once, by
/// meal, with its share of the making. Looks at each making once, so that neither long chains of
/// recipes nor recipes that are used twice in each of many levels take more than their number.
std::vector<std::vector<DishShare>> shares(const std::vector<Making>& makings);

} // namespace manciple::resolve
