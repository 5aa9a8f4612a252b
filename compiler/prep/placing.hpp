#pragma once

#include "prep/workplace.hpp"

#include <functional>
#include <optional>
#include <vector>

/// When each piece of work is done, so that no hand and no place on an appliance is taken twice, an
/// oven is hot when something goes in, and nothing waits longer than it may.
namespace manciple::prep {

/// Work without a break.
struct Job {
  std::vector<Stretch> stretches; ///< one after the other
  std::vector<std::size_t> after; ///< jobs that must have ended before it begins
  /// What goes on with the same food, and how long it may wait for that at most.
  std::optional<std::size_t> next = {};
  std::optional<int> wait = {};
  std::optional<int> due = {}; ///< must have ended then, in minutes from midnight

  [[nodiscard]] int minutes() const;
};

/// What is taken already, such as by a session on the same day.
struct Taken {
  int from = 0;
  int until = 0;
  Stretch by;
};

struct Placed {
  std::vector<int> start; ///< by job
  /// By job: so many minutes before its first stretch in an oven the oven is turned on, or to
  /// another temperature; 0 where it is hot already.
  std::vector<int> heat_up;
  int length = 0;
  int bound = 0; ///< no order of the work is shorter
};

/// From minute 0, so that all is done as early as possible; then each job as early as what stands
/// before it allows, so that no hands are idle while there is something that they could do.
/// Where something is taken already, what is marked `first` (by job; nothing, if it is empty) goes
/// before the rest.
Placed place_early(std::vector<Job> jobs, const Workplace& workplace,
                   const std::vector<Taken>& taken = {}, std::vector<bool> first = {});

/// Each job as near to when it is due as possible. Of several orders the one that `cost` likes
/// best; it is given starts by job. `rank` is by job: the lower is placed first where both could
/// be.
Placed place_late(std::vector<Job> jobs, const Workplace& workplace,
                  const std::vector<Taken>& taken, const std::vector<int>& rank,
                  const std::function<int(const std::vector<int>&)>& cost);

} // namespace manciple::prep
