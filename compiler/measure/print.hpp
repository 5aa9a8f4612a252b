#pragma once

#include "measure/quantity.hpp"

#include <string>

namespace manciple::measure {

/// Exactly, so that a US cook who reads it back has the same quantity: "1 1/2 cups", "2/3 oz".
std::string print(const Quantity& quantity);

/// As a cook can measure it (`at_hand.hpp`): by the cup and the spoon, on a scale whole grams,
/// ounces to a quarter or a half, pounds to a quarter, on a jug 5 ml. US measures for a `us` cook,
/// metric otherwise, in which what is measured by the spoon stays so: never nothing when there is
/// something.
std::string print_for_kitchen(const Quantity& quantity, Writing writing);

/// As a shop's scale shows it: pounds to a hundredth, small weights in ounces, litres, counts up.
std::string print_for_shop(const Quantity& quantity, Writing writing);

/// "165 F" for a `us` cook, else "74 °C": the next whole degree that is not colder, for what has to
/// get that hot.
std::string print_at_least(int fahrenheit, System system);
/// As the dial of an oven has it, the nearest five degrees: "400 F", "200 °C".
std::string print_on_dial(int fahrenheit, System system);
/// The next whole degree that is not warmer, for what has to get that cold: "41 F", "5 °C".
std::string print_at_most(int fahrenheit, System system);

} // namespace manciple::measure
