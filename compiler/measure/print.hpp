#pragma once

#include "measure/quantity.hpp"

#include <string>

namespace manciple::measure {

/// Exactly, so that a US cook who reads it back has the same quantity: "1 1/2 cups", "2/3 oz".
std::string print(const Quantity& quantity);

/// As a cook can measure it: cups in quarters and thirds, tablespoons and teaspoons in halves and
/// quarters, grams and ounces whole or to a quarter; the nearest such amount, never nothing when
/// there is something. US measures for a `us` cook, metric otherwise.
std::string print_for_kitchen(const Quantity& quantity, System system);

/// As a shop's scale shows it: pounds to a hundredth, small weights in ounces, litres, counts up.
std::string print_for_shop(const Quantity& quantity, System system);

} // namespace manciple::measure
