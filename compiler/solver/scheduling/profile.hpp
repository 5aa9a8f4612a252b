#pragma once

#include "scheduling/network.hpp"

namespace manciple::scheduling {

/// How much of each resource is free over time, while activities are placed one after another.
class Profile {
public:
  explicit Profile(const std::vector<int>& capacity) : begin_{0}, free_{capacity} {}

  /// The first minute from `from` on at which all of the task fits.
  [[nodiscard]] int earliest(const Interval& task, int from) const;
  [[nodiscard]] bool fits(const Interval& task, int start) const {
    return earliest(task, start) == start;
  }
  void place(const Interval& task, int start);

  /// The first minute after `time` at which what is free changes; `time` if it never does.
  [[nodiscard]] int next_change(int time) const;

private:
  // The stretch of equal freedom with that minute in it.
  [[nodiscard]] std::size_t at(int time) const;
  std::size_t split(int time);

  std::vector<int> begin_;             // of each stretch; the last one never ends
  std::vector<std::vector<int>> free_; // by stretch and resource
};

} // namespace manciple::scheduling
