#include "scheduling/check.hpp"

#include <algorithm>
#include <map>

namespace manciple::scheduling {
namespace {

int last_end(const Project& project, const std::vector<int>& start) {
  int out = 0;
  for (std::size_t i = 0; i < start.size(); ++i) {
    out = std::max(out, start[i] + project.activities[i].minutes());
  }
  return out;
}

std::optional<std::string> overdrawn(const Project& project, const std::vector<int>& start,
                                     std::size_t resource) {
  std::map<int, std::int64_t> change; // by minute
  for (std::size_t i = 0; i < start.size(); ++i) {
    int minute = start[i];
    for (const Piece& piece : project.activities[i].pieces) {
      if (resource < piece.takes.size()) {
        change[minute] += piece.takes[resource];
        change[minute + piece.minutes] -= piece.takes[resource];
      }
      minute += piece.minutes;
    }
  }
  std::int64_t used = 0;
  for (const auto& [minute, by] : change) {
    used += by;
    if (used > project.capacity[resource]) {
      return "at minute " + std::to_string(minute) + " " + std::to_string(used) + " of resource " +
             std::to_string(resource) + " are in use, of " +
             std::to_string(project.capacity[resource]);
    }
  }
  return std::nullopt;
}

} // namespace

std::optional<std::string> fault(const Project& project, const std::vector<int>& start) {
  if (start.size() != project.activities.size()) {
    return "there are " + std::to_string(start.size()) + " starts for " +
           std::to_string(project.activities.size()) + " activities";
  }
  for (std::size_t i = 0; i < start.size(); ++i) {
    if (start[i] < 0) {
      return "activity " + std::to_string(i) + " starts before the beginning";
    }
    for (const std::size_t before : project.activities[i].after) {
      if (start[i] < start[before] + project.activities[before].minutes()) {
        return "activity " + std::to_string(i) + " starts before activity " +
               std::to_string(before) + " has ended";
      }
    }
  }
  for (std::size_t r = 0; r < project.capacity.size(); ++r) {
    if (auto wrong = overdrawn(project, start, r)) {
      return wrong;
    }
  }
  return std::nullopt;
}

std::optional<std::string> fault(const Project& project, const Schedule& schedule) {
  if (auto wrong = fault(project, schedule.start)) {
    return wrong;
  }
  if (const int end = last_end(project, schedule.start); schedule.length != end) {
    return "the length is said to be " + std::to_string(schedule.length) + " but is " +
           std::to_string(end);
  }
  if (schedule.bound > schedule.length) {
    return "the bound " + std::to_string(schedule.bound) + " is above the length " +
           std::to_string(schedule.length);
  }
  return std::nullopt;
}

} // namespace manciple::scheduling
