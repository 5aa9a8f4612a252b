#pragma once

#include "buying/item/plan.hpp"
#include "buying/item/prepared.hpp"
#include "buying/item/room_rates.hpp"
#include "buying/model/solution.hpp"

#include <vector>

namespace manciple::buying {

/// What becomes of an item by a plan, and the room that it takes.
struct Played {
  ItemSolution solution;
  std::vector<Stay> stays;
};

/// Carries out a plan by the rules of use (model.hpp).
Played play(const Prepared& item, const ItemPlan& plan);

} // namespace manciple::buying
