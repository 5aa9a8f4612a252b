#pragma once

#include "scheduling/project.hpp"

namespace manciple::scheduling {

/// What a task takes of a resource.
struct Requirement {
  std::size_t resource = 0;
  int amount = 0;
};

/// A piece with its place in its activity. Pieces of no minutes are gone, neighbours that take the
/// same are one.
struct Part {
  int offset = 0; ///< minutes from the start of the activity
  int minutes = 0;
  std::vector<Requirement> takes; ///< by resource, none of nothing
};

/// An activity that was checked, with its place among the others.
struct Interval {
  int minutes = 0;
  std::vector<Part> parts;
  std::vector<std::size_t> before; ///< must have ended, each once
  std::vector<std::size_t> after;  ///< wait for this one
  int head = 0; ///< minutes of the longest chain before it: it cannot start earlier
  int tail = 0; ///< minutes from its start to the end of the longest chain after it
};

/// A project that was checked, as an activity-on-node network.
struct ActivityNetwork {
  std::vector<int> capacity; ///< by resource
  std::vector<Interval> tasks;
  std::vector<std::size_t> order; ///< each after those it waits for
};

/// std::invalid_argument: negative minutes, takings or capacities; an unknown resource or activity;
/// an activity that takes more than there is; a circle; more than 2^26 minutes altogether.
ActivityNetwork activity_network(const Project& project);

/// The same, with time running backwards.
ActivityNetwork mirrored(const ActivityNetwork& network);

} // namespace manciple::scheduling
