#pragma once

#include "scheduling/project.hpp"

#include <algorithm>
#include <limits>
#include <numeric>

/// Slow and obvious answers to compare with.
namespace manciple::scheduling::brute_force {

/// Minute by minute, what is taken of each resource.
class Minutes {
public:
  Minutes(const Project& project, int minutes)
      : project_(project),
        taken_(static_cast<std::size_t>(minutes), std::vector<int>(project.capacity.size(), 0)) {}

  [[nodiscard]] bool fits(const Activity& activity, int start) const {
    auto minute = static_cast<std::size_t>(start);
    for (const Piece& piece : activity.pieces) {
      for (int m = 0; m < piece.minutes; ++m, ++minute) {
        for (std::size_t r = 0; r < piece.takes.size(); ++r) {
          if (taken_[minute][r] + piece.takes[r] > project_.capacity[r]) {
            return false;
          }
        }
      }
    }
    return true;
  }

  void add(const Activity& activity, int start, int sign) {
    auto minute = static_cast<std::size_t>(start);
    for (const Piece& piece : activity.pieces) {
      for (int m = 0; m < piece.minutes; ++m, ++minute) {
        for (std::size_t r = 0; r < piece.takes.size(); ++r) {
          taken_[minute][r] += sign * piece.takes[r];
        }
      }
    }
  }

private:
  const Project& project_;
  std::vector<std::vector<int>> taken_;
};

inline int all_minutes(const Project& project) {
  return std::accumulate(project.activities.begin(), project.activities.end(), 0,
                         [](int sum, const Activity& a) { return sum + a.minutes(); });
}

/// The shortest length, by trying every start of every activity. Those that an activity waits for
/// have smaller indices.
class EveryStart {
public:
  explicit EveryStart(const Project& project)
      : project_(project),
        minutes_(project, all_minutes(project) + 1),
        best_(all_minutes(project)),
        end_(project.activities.size(), 0) {}

  int shortest() {
    place(0, 0);
    return best_;
  }

private:
  void place(std::size_t i, int length) {
    if (i == project_.activities.size()) {
      best_ = std::min(best_, length);
      return;
    }
    const Activity& activity = project_.activities[i];
    int ready = 0;
    for (const std::size_t before : activity.after) {
      ready = std::max(ready, end_[before]);
    }
    for (int start = ready; start + activity.minutes() < best_; ++start) {
      if (minutes_.fits(activity, start)) {
        end_[i] = start + activity.minutes();
        minutes_.add(activity, start, 1);
        place(i + 1, std::max(length, end_[i]));
        minutes_.add(activity, start, -1);
      }
    }
  }

  const Project& project_;
  Minutes minutes_;
  int best_;
  std::vector<int> end_;
};

/// The shortest length of those schedules in which, in some order, each activity starts as early as
/// it can.
inline int shortest_from_lists(const Project& project) {
  std::vector<std::size_t> order(project.activities.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  int best = std::numeric_limits<int>::max();
  do {
    Minutes minutes(project, all_minutes(project) + 1);
    std::vector<int> end(order.size(), -1);
    int length = 0;
    bool possible = true;
    for (const std::size_t i : order) {
      int start = 0;
      for (const std::size_t before : project.activities[i].after) {
        possible = possible && end[before] >= 0;
        start = std::max(start, end[before]);
      }
      if (!possible) {
        break;
      }
      while (!minutes.fits(project.activities[i], start)) {
        ++start;
      }
      minutes.add(project.activities[i], start, 1);
      end[i] = start + project.activities[i].minutes();
      length = std::max(length, end[i]);
    }
    if (possible) {
      best = std::min(best, length);
    }
  } while (std::next_permutation(order.begin(), order.end()));
  return best;
}

} // namespace manciple::scheduling::brute_force
