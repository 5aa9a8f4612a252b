#pragma once

#include "buying/stops/subproblem_cache.hpp"

#include <functional>
#include <utility>

namespace manciple::buying {

enum class StopChoice : std::uint8_t { no, maybe, must };
using StopChoices = Table<StopId, StopChoice>;

/// Those of the model: stops that are made always must be, others may.
StopChoices choices_of(const Model& model);
/// The stops that may be made.
OpenStops may_be_open(const StopChoices& choices);

/// What a set of stops costs besides the items.
struct StopTerms {
  /// By stop; negative if a reduction there outweighs it.
  Table<StopId, Cost> cost;
  /// By shop: gained once if any stop there is made.
  Table<ShopId, Fine> shop_gain;
  /// Added to every set.
  Fine constant = 0;
  /// If set, the items' costs are only bounds (they are coupled), and this says what a set of stops
  /// really costs, as far as it is below the second argument (else `impossible`), and a bound.
  std::function<std::pair<Cost, Cost>(const OpenStops& open, Cost below)> exact;
};
/// Each stop's own cost and nothing else.
StopTerms plain_terms(const Model& model);

struct StopsResult {
  /// Cost of the best set of stops, `impossible` if none was found; and a proven bound on it.
  Cost cost = impossible;
  Cost bound = impossible;
  OpenStops open;
};

/// A set of stops that is likely to cost little, found by dropping and adding stops, and what it
/// costs (as a bound if items are coupled).
StopsResult likely_stops(SubproblemCache& cache, const StopTerms& terms,
                         const StopChoices& choices);

/// The stops to make such that items and stops cost least, for the cache's multipliers: branch and
/// bound. The bound shares each undecided stop's cost among the items that use it, a facility
/// location bound by dual ascent (Erlenkotter 1978), here over shortest paths instead of single
/// assignments. Sets that cost `cutoff` or more are not looked for.
StopsResult choose_stops(SubproblemCache& cache, const StopTerms& terms, const StopChoices& choices,
                         Cost cutoff = impossible);

} // namespace manciple::buying
