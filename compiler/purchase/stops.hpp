#pragma once

#include <chrono>
#include <cstdint>
#include <functional>
#include <utility>
#include <vector>

#include "purchase/ledger.hpp"

namespace manciple::purchase {

/// When a search has to end.
class Limits {
public:
  explicit Limits(const Options& options);
  /// Counts a node; true once a limit is reached.
  bool reached();
  std::int64_t nodes() const { return nodes_; }
  double seconds_left() const;

private:
  std::chrono::steady_clock::time_point end_;
  std::int64_t most_nodes_;
  std::int64_t nodes_ = 0;
  bool over_ = false;
};

/// What a stop costs to make.
Cost stop_cost(const Stop& stop);

enum class StopChoice : std::uint8_t { no, maybe, must };

/// What a set of stops costs besides the goods.
struct StopTerms {
  /// By stop; negative if a reduction there outweighs it.
  std::vector<Cost> cost;
  /// By shop: gained once if any stop there is made.
  std::vector<Fine> shop_gain;
  /// Added to every set.
  Fine constant = 0;
  /// If set, the goods' costs are only bounds (they are coupled), and this says what a set of stops
  /// really costs, as far as it is below the second argument (else `impossible`), and a bound.
  std::function<std::pair<Cost, Cost>(const std::vector<bool>& made, Cost below)> exact;
};
/// Each stop's own cost and nothing else.
StopTerms plain_terms(const Model& model);

struct StopsResult {
  /// Cost of the best set of stops, `impossible` if none was found; and a proven bound on it.
  Cost cost = impossible;
  Cost bound = impossible;
  /// By stop of the model: it is made.
  std::vector<bool> made;
};

/// A set of stops that is likely to cost little, found by dropping and adding stops, and what it
/// costs (as a bound if goods are coupled).
StopsResult likely_stops(Ledger& ledger, const StopTerms& terms,
                         const std::vector<StopChoice>& choices, Limits& limits);

/// The stops to make such that goods and stops cost least, for the ledger's prices: branch and
/// bound. The bound shares each undecided stop's cost among the goods that use it, a facility
/// location bound by dual ascent (Erlenkotter 1978), here over shortest paths instead of single
/// assignments. Sets that cost `cutoff` or more are not looked for.
StopsResult choose_stops(Ledger& ledger, const StopTerms& terms,
                         const std::vector<StopChoice>& choices, Limits& limits,
                         Cost cutoff = impossible);

} // namespace manciple::purchase
