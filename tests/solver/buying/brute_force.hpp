#pragma once

#include <optional>

#include "buying/model/model.hpp"
#include "buying/model/money.hpp"

namespace manciple::buying {

/// The least total of a small model, by trying every set of purchases, every way to use them and
/// every combination of items: no bound, no dominance but the obvious (the same in everything that
/// counts), no multipliers. None if there are more than it can try.
std::optional<Fine> least_total(const Model& model, std::size_t most_ways = 400'000);

} // namespace manciple::buying
