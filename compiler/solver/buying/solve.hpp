#pragma once

#include "buying/model/solution.hpp"
#include "buying/work_budget.hpp"

namespace manciple::buying {

/// Solves the model: always gives a list, with what is proven of it. A model out of range is the
/// caller's mistake (see validate).
Solution solve(const Model& model, const Options& options = {});

/// "Why this pack at this shop": what it would cost to do otherwise for one item, everything else
/// being decided anew.
struct Alternative {
  OfferId offer;
  /// None: the offer wherever its shop is visited.
  std::optional<StopId> stop;
  /// Least total if the stops stay as they are in the solution (plus this stop, at its cost), and
  /// if the stops may change; none if that is not possible. Exact if the solution is optimal and
  /// `proven` holds.
  std::optional<Money> fixed_stops;
  std::optional<Money> free_stops;
  /// Of the solution with free stops: what the item costs before reductions, what all stops made
  /// cost, and how much of the item is thrown away and missing.
  Money spent = 0;
  Money stop_cost = 0;
  Amount wasted = 0;
  Amount missing = 0;
  bool proven = true;
};

struct Alternatives {
  /// By offer: the item is bought with this offer and no other.
  std::vector<Alternative> only;
  /// By stop and offer not bought there: at least one pack is bought there.
  std::vector<Alternative> also;
  /// By purchase of the solution: this offer cannot be had at this stop.
  std::vector<Alternative> without;
};

Alternatives alternatives(const Model& model, const Solution& solution, ItemId item,
                          const Options& options = {});

} // namespace manciple::buying
