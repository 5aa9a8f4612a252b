#pragma once

#include "scheduling/network.hpp"
#include "scheduling/trail.hpp"

#include <optional>

namespace manciple::scheduling {

/// "A goes `minutes` or more after B", always or while a condition holds.
class Distances {
public:
  /// `to` is at least `from` + `minutes` (lower sides of two variables).
  void always(Side from, Side to, int minutes);
  void when(Bound condition, Side from, Side to, int minutes);
  /// Once all are known. `sides` of the trail.
  void close(std::size_t sides);

  /// Draws the conclusions from a side that went up. False on contradiction.
  bool follow(Trail& trail, Side side) const;

private:
  struct Arc {
    Side from = 0;
    Side to = 0;
    int minutes = 0;
    std::optional<Bound> condition;
  };
  static bool follow(Trail& trail, const Arc& arc);

  std::vector<Arc> arcs_;
  std::vector<std::vector<std::size_t>> from_; // by side: arcs that start there
  std::vector<std::vector<std::size_t>> on_;   // by side: arcs that depend on it
};

/// How two steps must not lie: the second's start less the first's is neither of the minutes
/// strictly between `low` and `high`, as some of their parts would together take too much of a
/// resource.
struct Clash {
  int low = 0;
  int high = 0;
};

/// All clashes of two steps, apart from each other, ascending.
std::vector<Clash> clashes(const Step& first, const Step& second, const std::vector<int>& capacity);

} // namespace manciple::scheduling
