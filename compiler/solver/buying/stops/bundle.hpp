#pragma once

#include "buying/item/play.hpp"
#include "buying/stops/multipliers.hpp"

#include <array>
#include <vector>

namespace manciple::buying {

/// Room taken, by place and night, in thousandths of a microlitre (Amount times microlitres for a
/// unit). Empty for places without limit.
using RoomSums = std::array<std::vector<std::int64_t>, place_count>;

/// Adds what a stay takes, so many times (-1 takes it away).
void add_stay(const Item& item, const Stay& stay, RoomSums& sums, std::int64_t times = 1);

/// A plan for each item, and what they take together of what is limited.
struct Bundle {
  /// Of the items, before reductions.
  Cost cost;
  Table<StopId, Money> spent;
  RoomSums room;
  /// By item; none if it is not known or does not matter.
  Table<ItemId, ItemPlan> plans;
};

/// One that buys nothing and holds nothing.
Bundle empty_bundle(const Model& model);
/// Adds what one item costs and takes, so many times.
void add_item(const Prepared& item, const Played& played, Bundle& bundle, int times = 1);
Bundle bundle_of(const Model& model, const Table<ItemId, Prepared>& items,
                 Table<ItemId, ItemPlan> plans);

/// What a played plan costs, ties included.
Cost cost_of(const Prepared& item, const ItemSolution& solution);

/// What is taken off at the tills for what is bought, by stop and by shop.
struct TillReductions {
  Table<StopId, Money> off;
  Table<ShopId, Money> credit;
  Fine worth = 0; ///< of both
};
TillReductions till_reductions(const Model& model, const Table<StopId, Money>& spent);

Cost stop_cost(const Stop& stop);
/// What it costs with the stops made, reductions taken off.
Cost total_cost(const Model& model, const OpenStops& open, const Bundle& bundle);
/// There is room for it.
bool fits(const Model& model, const Bundle& bundle);

/// The solution in which these stops are made and each item follows its plan: everything but what
/// is proven of it (status, bound, counts).
Solution assemble(const Model& model, const Table<ItemId, Prepared>& items, const OpenStops& open,
                  const Table<ItemId, ItemPlan>& plans);

} // namespace manciple::buying
