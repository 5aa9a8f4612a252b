#pragma once

#include "buying/solve.hpp"
#include "kitchen/kitchen.hpp"
#include "resolve/resolve.hpp"

#include <cstddef>
#include <vector>

namespace manciple::purchase {

/// Of a serving, so much is for a use, of which it covers so much.
struct Portion {
  buying::Serving of;
  std::size_t use = 0;
  measure::Rational taken;  ///< in terms of the item
  measure::Rational covers; ///< in terms of the use's food
};

/// Leaves out what is a sliver of a piece of produce. Pieces of one food differ by a fifth (common
/// practice, no source), and what they weigh is a mean: nobody cuts another onion because the last
/// one of the bag is smaller than most. What would be less than that stays where it is, and the lot
/// of which a use has most counts for it. But what is bought for slivers alone is used for them.
/// `portions` are those of a demand, `item` all servings of its item.
void leave_slivers(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                   const buying::ItemSolution& item, std::vector<Portion>& portions);

} // namespace manciple::purchase
