#pragma once

#include "prep/freezing.hpp"
#include "prep/prep.hpp"

#include <string>
#include <vector>

namespace manciple::prep {

/// What is written on every box and bag that is stored: parts of batches, what dishes leave over,
/// and what is bought and frozen. By the day on which it is made.
std::vector<BoxLabel> labels(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                             const std::vector<Freezing>& freezing);

/// How much a part of a batch is: in the recipe's own measure where it goes into something else.
std::string amount_made(const kitchen::Recipe& recipe, const Rational& times, bool as_dish);

} // namespace manciple::prep
