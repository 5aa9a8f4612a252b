#pragma once

#include "foods/food.hpp"

namespace manciple::resolve {

/// For how many days a food keeps once it is cut, so that it can be cut in a session before; 0 for
/// what browns, wilts or goes soft and is cut when it is used. The food's own figure is the limit;
/// onions and garlic turn sharp and are cut at most two days ahead. Common practice, no source.
int keeps_cut(const foods::Food& food);

} // namespace manciple::resolve
