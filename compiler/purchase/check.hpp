#pragma once

#include <string>
#include <vector>

#include "purchase/model.hpp"

namespace manciple::purchase {

/// What is wrong with a solution, in words; empty if it is possible, follows the rules of model.hpp
/// and adds up. Looks at nothing but the two arguments and shares no code with the search. That
/// nothing cheaper is possible it cannot see.
std::vector<std::string> check(const Model& model, const Solution& solution);

} // namespace manciple::purchase
