#pragma once

#include "history/past.hpp"

#include <string>

/// What is in the house as lines of a file that reads back as the same: whole pieces and measures
/// where it comes to them, else to the milligram, never less.
namespace manciple::history {

/// "4 1/2 lb", "3", to the milligram, never less; without the food's name.
std::string exactly(const kitchen::Kitchen& kitchen, foods::FoodId food, const Rational& amount);
/// "2 (15 oz) packs chickpeas", "1/2 gal whole milk": how much there is of what.
std::string amount_written(const kitchen::Kitchen& kitchen, const Holding& holding);
/// The same, and where it is and until when it is good, after commas.
std::string line_written(const kitchen::Kitchen& kitchen, const Holding& holding);
/// "3 servings beef-chili, freezer, made 2027-03-16, until 2027-06-14".
std::string line_written(const kitchen::Kitchen& kitchen, const kitchen::MadeLot& lot);
/// A file of what is on hand, by place.
std::string file_written(const kitchen::Kitchen& kitchen, const Past& past);

} // namespace manciple::history
