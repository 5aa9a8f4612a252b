#pragma once

#include <optional>
#include <vector>

#include "purchase/pattern.hpp"

namespace manciple::purchase {

/// What a set of stops really costs when goods are coupled.
struct Settled {
  /// `impossible` if nothing below the given cost was found.
  Cost cost = impossible;
  /// Nothing costs less than this.
  Cost bound = impossible;
  std::vector<std::vector<Buy>> buys;
};

/// Finds the best plans for fixed stops. Prices give a bound; networks hold the plans that cost
/// little more than the cheapest at the shelf's prices, and on them other prices are found quickly:
/// the search branches on which reductions are reached, until a pattern of them is decided. That
/// plans which the networks do not have cannot do better is shown afterwards; if that fails, they
/// are laid out anew with all that could matter.
class Settler {
public:
  /// Looks for what costs less than `below`; gives up after work in proportion to `effort`.
  Settler(const Model& model, const std::vector<Prepared>& goods, const std::vector<bool>& made,
          Shelf& shelf, Cost below, Limits& limits, std::size_t effort);

  /// With `raise`, first gives the shelf prices that suit these stops.
  Settled settle(bool raise);

private:
  /// On what can be made of the networks' plans, and on what can be made of others.
  struct Bounds {
    Cost inside;
    Cost beyond;
  };
  /// A choice of targets.
  struct Node {
    PriceSearch::Found found;
    Bounds bounds;
  };

  Cost search(bool raise);
  Bounds branch(const PriceSearch::Found& root);
  /// A bound on what is made of any plans, for the node's targets.
  Cost bound_of_all(const Node& node);
  std::optional<StopId> undecided(const PriceSearch::Found& found) const;
  Cost best() const { return with_.best(); }

  Shelf& shelf_;
  Settling with_;
};

} // namespace manciple::purchase
