#pragma once

#include "emit/compiled.hpp"

#include <map>
#include <vector>

/// The room that boxes of what is cooked take.
namespace manciple::emit {

/// Litres on each night of the plan, by place: from the day on which something is made until the
/// day on which it is eaten or goes into something else. What a recipe makes in volume counts as
/// that, else its ingredients as a litre a kilogram; what is left over and for nothing yet is left
/// out. *Common practice, no source.*
std::map<foods::Place, std::vector<double>> litres_of_boxes(const Compiled& compiled);

} // namespace manciple::emit
