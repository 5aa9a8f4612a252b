#pragma once

#include "scheduling/trail.hpp"

#include <algorithm>
#include <vector>

namespace manciple::scheduling {

/// Minutes of a step on one resource. `side` is the start of the step, or what stands for it when
/// time runs backwards.
struct Stretch {
  Side side = 0;
  int offset = 0; ///< from the start of the step
  int minutes = 0;
  int take = 0;

  [[nodiscard]] int earliest_start(const Trail& trail) const { return trail.at(side) + offset; }
  [[nodiscard]] int latest_start(const Trail& trail) const {
    return offset - trail.at(other(side));
  }
  /// It starts at `time` or later; at `time` or before.
  [[nodiscard]] Bound from(int time) const { return {side, time - offset}; }
  [[nodiscard]] Bound until(int time) const { return {other(side), offset - time}; }
};

inline Stretch backwards(const Stretch& stretch) {
  return {other(stretch.side), -stretch.offset - stretch.minutes, stretch.minutes, stretch.take};
}

/// A resource with all that takes it, in one direction of time.
struct Demand {
  int capacity = 0;
  std::vector<Stretch> stretches;
};

/// The part of a resource's use that is certain: each stretch covers the minutes from its latest
/// start to its earliest end.
class CertainUse {
public:
  struct Level {
    int begin = 0;
    int end = 0;
    int taken = 0;
    std::int64_t energy_before = 0; ///< minutes times what is taken, before `begin`
  };

  void measure(const Trail& trail, const Demand& demand);
  [[nodiscard]] const std::vector<Level>& levels() const { return levels_; }
  /// What is taken at the busiest minute.
  [[nodiscard]] int most() const { return most_; }
  /// Minutes times what is taken, before that minute.
  [[nodiscard]] std::int64_t energy_before(int time) const;

private:
  std::vector<std::pair<int, int>> changes_;
  std::vector<Level> levels_; // with no gaps between them
  int most_ = 0;
};

} // namespace manciple::scheduling
