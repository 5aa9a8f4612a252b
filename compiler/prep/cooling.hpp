#pragma once

#include "kitchen/kitchen.hpp"
#include "resolve/resolve.hpp"

#include <optional>
#include <string>

namespace manciple::prep {

using measure::Rational;

/// What one making comes to: the larger of what the recipe says it makes and what goes in, a gram
/// for a millilitre. None for what has no weight.
std::optional<Rational> millilitres_of(const kitchen::Kitchen& kitchen,
                                       const kitchen::Recipe& recipe);

/// Shallow pans of 9 by 13 in over which hot food is spread to cool in time, 2 in deep. Shallow
/// pans and smaller portions: FDA Food Code 2022, 3-501.15; the depth: common practice, no source.
int cooling_pans(const Rational& millilitres);

/// How deep the food in them is at most, for a kitchen that measures so: "2 in", "5 cm".
std::string depth_of_pans(measure::System system);

/// How a hot batch that is stored is cooled.
struct Cooling {
  int pans = 0;
  int minutes = 0;     ///< until the first stage of cooling is over (`kitchen/food_code.hpp`)
  bool liquid = false; ///< it can be stirred in ice water
};

/// None if it is not hot (a cake cools by itself), not stored cold, or its volume is not known. The
/// time grows with the square of the depth, as heat is conducted; 2 in take 48 minutes, what is
/// liquid in ice water and stirred. Common practice, no source.
std::optional<Cooling> cooling(const kitchen::Kitchen& kitchen, const resolve::Making& making);

/// "in 2 shallow pans no deeper than 2 in, in ice water, to 70 F"; of what is in its boxes already:
/// "the open boxes in ice water, to 70 F".
std::string how_to_cool(const Cooling& cooled, bool in_boxes, const measure::Writing& writing);

} // namespace manciple::prep
