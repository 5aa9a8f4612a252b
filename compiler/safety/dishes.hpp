#pragma once

#include "resolve/limits.hpp"

#include <map>

namespace manciple::safety {

using Dishes = std::map<resolve::DishRef, resolve::Inside>;

/// What may be in each dish of a plan: every ingredient at any depth, without an amount or optional
/// as it may be, whatever may be bought instead, and what other dishes left over and went into it.
/// It makes no difference whether the dish is cooked now or was before.
Dishes inside_dishes(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved);

} // namespace manciple::safety
