#pragma once

#include <array>
#include <vector>

#include "purchase/cost.hpp"
#include "purchase/good.hpp"
#include "purchase/subproblem.hpp"

namespace manciple::purchase {

/// Room taken, by place and night, in 1e-6 microlitres. Empty for places without limit.
using RoomSums = std::array<std::vector<std::int64_t>, place_count>;

/// A plan for each good, and what they take together of what is limited.
struct Bundle {
  /// Of the goods, before reductions.
  Cost cost;
  /// By stop.
  std::vector<Money> spent;
  RoomSums room;
  /// By good; none if it is not known or does not matter.
  std::vector<std::vector<Buy>> buys;
};

/// One that buys nothing.
Bundle empty_bundle(const Model& model);
/// Adds what one good costs and takes, so many times (-1 takes it away).
void add_good(const Prepared& good, const GoodSolution& solution, Bundle& bundle, int times = 1);
/// The same if it buys this.
void add_good(const Prepared& good, const std::vector<Buy>& buys, Bundle& bundle);
Bundle bundle_of(const Model& model, const std::vector<Prepared>& goods,
                 std::vector<std::vector<Buy>> buys);

/// Room that all goods of a solution take together.
RoomSums all_room_taken(const Model& model, const std::vector<Prepared>& goods,
                        const Solution& solution);

/// What it costs with the stops made, reductions taken off.
Cost total_cost(const Model& model, const std::vector<bool>& made, const Bundle& bundle);
/// There is room for it.
bool fits(const Model& model, const Bundle& bundle);

} // namespace manciple::purchase
