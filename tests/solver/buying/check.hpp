#pragma once

#include <string>
#include <vector>

#include "buying/model/solution.hpp"

namespace manciple::buying {

/// What is wrong with a solution, by the rules in model.hpp alone; empty if nothing is. Shares no
/// code with the solver: it looks at what is bought, and what becomes of every part of it.
std::vector<std::string> check(const Model& model, const Solution& solution);

} // namespace manciple::buying
