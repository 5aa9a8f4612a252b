#pragma once

#include "scheduling/cumulative.hpp"

namespace manciple::scheduling {

/// What follows from how much work has to be done on a resource within a window of time: an
/// overdrawn window is a conflict, and what would overdraw it by starting in it must start
/// later (time-table edge-finding, Vilím 2011; reasons after Schutt, Feydy and Stuckey 2013).
/// Starts are moved later; earlier by calling it with time running backwards.
class EdgeFinding {
public:
  /// False on conflict.
  bool propagate(Trail& trail, const Cumulative& constraint);

private:
  struct Item {
    const TaskInterval* interval = nullptr;
    int earliest_start = 0;
    int earliest_end = 0;
    int latest_start = 0;
    int latest_end = 0;
    std::int64_t before_start = 0;    // certain energy before the earliest start
    [[nodiscard]] int loose() const { // minutes beyond the certain ones
      return interval->minutes - std::max(0, earliest_end - latest_start);
    }
  };
  struct Window {
    int begin = 0;
    int end = 0;
  };
  bool propagate(Trail& trail, const Cumulative& constraint, int end);
  void explain(const Trail& trail, const Cumulative& constraint, Window window, std::int64_t needed,
               const TaskInterval* but);

  CompulsoryProfile compulsory_;
  std::vector<Item> items_; // latest earliest start first
  std::vector<int> ends_;
  std::vector<Bound> reasons_;
  std::vector<std::pair<const TaskInterval*, int>> inside_; // with minutes inside the window
};

} // namespace manciple::scheduling
