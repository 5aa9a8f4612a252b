#pragma once

#include "scheduling/network.hpp"
#include "scheduling/trail.hpp"

#include <optional>

namespace manciple::scheduling {

/// Generalised precedence relations, "A starts `minutes` or more after B starts": always, or while
/// a condition holds.
class Precedences {
public:
  /// `to` is at least `from` + `minutes` (lower sides of two variables).
  void always(Side from, Side to, int minutes);
  void when(Bound condition, Side from, Side to, int minutes);
  /// Once all are known. `sides` of the trail.
  void close(std::size_t sides);

  /// Draws the conclusions from a side that went up. False on conflict.
  bool propagate(Trail& trail, Side side) const;

private:
  struct Arc {
    Side from = 0;
    Side to = 0;
    int minutes = 0;
    std::optional<Bound> condition;
  };
  static bool propagate(Trail& trail, const Arc& arc);

  std::vector<Arc> arcs_;
  std::vector<std::vector<std::size_t>> from_; // by side: arcs that start there
  std::vector<std::vector<std::size_t>> on_;   // by side: arcs that depend on it
};

/// How two tasks must not lie: the second's start less the first's is none of the minutes strictly
/// between `low` and `high`, as some of their parts would together take too much of a
/// resource.
struct Disjunction {
  int low = 0;
  int high = 0;
};

/// All disjunctions of two tasks, apart from each other, ascending.
std::vector<Disjunction> disjunctions(const Interval& first, const Interval& second,
                                      const std::vector<int>& capacity);

} // namespace manciple::scheduling
