#pragma once

#include "kitchen/kitchen.hpp"

#include <vector>

namespace manciple::resolve {

/// The recipes so that each stands before those that it needs. Circles are errors, each reported
/// as its path with the line of every edge; then the order is empty. As far as that makes no
/// circle, what asks for something that another leaves over stands before that, and that before a
/// recipe which it leaves over.
std::vector<kitchen::RecipeId> order_of_need(const kitchen::Kitchen& kitchen,
                                             text::Diagnostics& diagnostics);

} // namespace manciple::resolve
