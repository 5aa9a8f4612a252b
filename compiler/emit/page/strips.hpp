#pragma once

#include "emit/compiled.hpp"

#include <string>

namespace manciple::emit::page {

/// Which food is used when: a strip of days for each, by department, with the days on which it is
/// bought. What is used at a rate (a staple) has no day of its own and is left out.
std::string food_strips(const Compiled& compiled);

} // namespace manciple::emit::page
