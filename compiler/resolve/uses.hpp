#pragma once

#include "resolve/resolve.hpp"

namespace manciple::resolve {

/// Every use of every food: by makings, by dishes eaten as they are, by staples and by what is to
/// be bought besides; of what makings leave over to each other, nothing. Sorted by the food's name,
/// then by date.
std::vector<Use> uses(const kitchen::Kitchen& kitchen, const std::vector<Making>& makings,
                      const std::vector<ByProduct>& by_products);

/// What one making of a recipe as written takes of the food of each ingredient, as purchased; 0 for
/// another recipe and for a line without an amount. Juice and zest of the same fruit, and white and
/// yolk of the same egg, are taken from the same pieces: the smaller part is already there.
std::vector<Rational> purchased_per_making(const kitchen::Kitchen& kitchen,
                                           const kitchen::Recipe& recipe);

} // namespace manciple::resolve
