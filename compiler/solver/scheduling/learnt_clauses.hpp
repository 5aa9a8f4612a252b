#pragma once

#include "scheduling/trail.hpp"

namespace manciple::scheduling {

/// What a conflict taught: at least one of `bounds` holds in every schedule. The first is asserted
/// once the search has backjumped to `level`; the second was the last to fail there.
struct LearntClause {
  std::vector<Bound> bounds;
  int level = 0;
  int level_count =
      0; ///< its literal block distance: from how many levels its bounds come (fewer is better)
};

/// The clause database, with two watched bounds a clause (Moskewicz et al. 2001, for bounds instead
/// of propositions). A clause gains activity with each conflict it takes part in; older activity
/// decays against it.
class LearntClauses {
public:
  explicit LearntClauses(std::size_t sides) : watches_(sides) {}

  /// Keeps a clause and asserts its first bound. The trail must be at the clause's level.
  bool add(Trail& trail, const LearntClause& learnt);

  /// Draws the conclusions from a side that went up. False on conflict.
  bool propagate(Trail& trail, Side side);

  /// It took part in a conflict just now.
  void bump(int clause);
  void decay() { increment_ *= 1.001; }

  [[nodiscard]] std::size_t size() const { return clauses_.size(); }
  /// Forgets the less useful half, and what the first level makes true. At level 0 only, with all
  /// conclusions drawn; false if the clauses contradict each other there.
  bool reduce(Trail& trail);

private:
  struct Clause {
    std::size_t begin = 0;
    std::size_t size = 0;
    int level_count = 0;
    double activity = 0;
  };
  // Woken when the side of its list reaches `least`: then the watched bound fails.
  struct Watch {
    int least = 0;
    std::uint32_t clause = 0;
    Bound hint; // while this holds there is nothing to do
  };
  bool wake(Trail& trail, Side side, Watch& watch, bool& keep);
  bool insert(Trail& trail, std::span<const Bound> bounds, int level_count, double activity);

  std::vector<Bound> store_;
  std::vector<Clause> clauses_;
  std::vector<std::vector<Watch>> watches_; // by side
  std::vector<Bound> reasons_;
  double increment_ = 1;
};

} // namespace manciple::scheduling
