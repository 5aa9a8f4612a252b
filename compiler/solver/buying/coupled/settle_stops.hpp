#pragma once

#include "buying/coupled/target_pattern.hpp"

#include <optional>

namespace manciple::buying {

/// What a set of stops really costs when items are coupled.
struct Settled {
  /// `impossible` if nothing below the given cost was found.
  Cost cost = impossible;
  /// Nothing costs less than this.
  Cost bound = impossible;
  Table<ItemId, ItemPlan> plans;
};

/// Finds the best plans for fixed stops. Multipliers give a bound; networks hold the plans that
/// cost little more than the cheapest at the pool's multipliers, and on them other multipliers are
/// found quickly: the search branches on which reductions are reached, until a pattern of them is
/// decided. That plans which the networks do not have cannot do better is shown afterwards; if that
/// fails, they are laid out anew with all that could matter.
class Settler {
public:
  /// Looks for what costs less than `below`; gives up after work in proportion to `size`.
  Settler(const Model& model, const Table<ItemId, Prepared>& items, const OpenStops& open,
          NetworkPool& pool, Cost below, WorkBudget& budget, std::size_t size);

  /// With `raise`, first gives the pool multipliers that suit these stops.
  Settled settle(bool raise);

private:
  /// On what can be made of the networks' plans, and on what can be made of others.
  struct Bounds {
    Cost inside;
    Cost beyond;
  };
  /// A choice of targets.
  struct BranchNode {
    DualSearch::Found found;
    Bounds bounds;
  };

  Cost search(bool raise);
  Bounds branch(const DualSearch::Found& root);
  /// A bound on what is made of any plans, for the node's targets.
  Cost bound_of_all(const BranchNode& node);
  std::optional<StopId> undecided(const DualSearch::Found& found) const;
  Cost best() const { return with_.best(); }

  NetworkPool& pool_;
  Settling with_;
};

} // namespace manciple::buying
