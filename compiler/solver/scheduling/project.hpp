#pragma once

#include <cstddef>
#include <cstdint>
#include <limits>
#include <vector>

/// Scheduling without names: activities that follow each other and share resources, finished as
/// early as possible (the resource-constrained project scheduling problem).
namespace manciple::scheduling {

/// A stretch of an activity with what it takes of each resource.
struct Piece {
  int minutes = 0;
  std::vector<int> takes; ///< by resource
};

/// Something to be done without a break: its pieces follow each other at once. A step of a recipe
/// is a piece with hands and a burner and then a piece with the burner alone.
struct Activity {
  std::vector<Piece> pieces;
  std::vector<std::size_t> after; ///< activities that must have ended before it starts
  [[nodiscard]] int minutes() const;
};

struct Project {
  std::vector<int> capacity; ///< by resource
  std::vector<Activity> activities;
};

struct Limits {
  double seconds = 1.0;
  std::int64_t nodes = std::numeric_limits<std::int64_t>::max();
};

/// Starts by activity. `bound` is a length that no schedule can beat; equal to `length` when the
/// schedule is proven to be the shortest.
struct Schedule {
  std::vector<int> start;
  int length = 0;
  int bound = 0;
  std::int64_t nodes = 0;
  [[nodiscard]] bool proven() const { return length == bound; }
};

/// The shortest schedule that the search finds within its limits. The same project gives the same
/// schedule, unless the time runs out. An activity that takes more than there is, or a circle,
/// throws std::invalid_argument.
Schedule shortest(const Project& project, const Limits& limits = {});

} // namespace manciple::scheduling
