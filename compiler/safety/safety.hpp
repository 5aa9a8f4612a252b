#pragma once

#include "resolve/resolve.hpp"

#include <set>
#include <string>

/// What could make someone ill, found in what the recipes say. It knows the usual dangers of a
/// kitchen and no more: that it is silent is no promise, and labels, local authorities and people
/// who are trained for it go before it.
namespace manciple::safety {

/// Looks through every recipe that the plan makes, and at what is on hand.
void check(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
           text::Diagnostics& diagnostics);

/// Looks through all recipes of a house, whether a plan makes them or not; those with a name in
/// `told` are left out.
void check_recipes(const kitchen::Kitchen& kitchen, const std::set<std::string>& told,
                   text::Diagnostics& diagnostics);

} // namespace manciple::safety
