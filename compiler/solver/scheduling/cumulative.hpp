#pragma once

#include "scheduling/trail.hpp"

#include <algorithm>
#include <vector>

namespace manciple::scheduling {

/// An uninterrupted use of one resource by a task. `side` is the start of the task, or what stands
/// for it when time runs backwards.
struct TaskInterval {
  Side side = 0;
  int offset = 0; ///< from the start of the task
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

inline TaskInterval mirrored(const TaskInterval& interval) {
  return {other(interval.side), -interval.offset - interval.minutes, interval.minutes,
          interval.take};
}

/// The cumulative constraint of a resource, in one direction of time: at no minute is more taken
/// than its capacity.
struct Cumulative {
  int capacity = 0;
  std::vector<TaskInterval> intervals;
};

/// The compulsory part of a resource's use: each interval surely covers the minutes from its latest
/// start to its earliest end.
class CompulsoryProfile {
public:
  struct Level {
    int begin = 0;
    int end = 0;
    int taken = 0;
    std::int64_t energy_before = 0; ///< minutes times what is taken, before `begin`
  };

  void measure(const Trail& trail, const Cumulative& constraint);
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
