#include "scheduling/profile.hpp"

#include <algorithm>

namespace manciple::scheduling {

std::size_t Profile::at(int time) const {
  const auto after = std::upper_bound(begin_.begin(), begin_.end(), time);
  return static_cast<std::size_t>(after - begin_.begin()) - 1;
}

int Profile::earliest(const Interval& task, int from) const {
  int start = from;
  for (std::size_t p = 0; p < task.parts.size();) {
    const Part& part = task.parts[p++];
    const int end = start + part.offset + part.minutes;
    for (std::size_t s = at(start + part.offset); s < begin_.size() && begin_[s] < end; ++s) {
      const bool enough =
          std::all_of(part.takes.begin(), part.takes.end(),
                      [&](const Requirement& t) { return t.amount <= free_[s][t.resource]; });
      if (!enough) { // The part cannot start before this stretch is over.
        start = begin_[s + 1] - part.offset;
        p = 0;
        break;
      }
    }
  }
  return start;
}

std::size_t Profile::split(int time) {
  const std::size_t s = at(time);
  if (begin_[s] == time) {
    return s;
  }
  const auto place = static_cast<std::ptrdiff_t>(s) + 1;
  begin_.insert(begin_.begin() + place, time);
  free_.insert(free_.begin() + place, std::vector<int>(free_[s]));
  return s + 1;
}

void Profile::place(const Interval& task, int start) {
  for (const Part& part : task.parts) {
    const std::size_t first = split(start + part.offset);
    const std::size_t last = split(start + part.offset + part.minutes);
    for (std::size_t s = first; s < last; ++s) {
      for (const Requirement& requirement : part.takes) {
        free_[s][requirement.resource] -= requirement.amount;
      }
    }
  }
}

int Profile::next_change(int time) const {
  const std::size_t next = at(time) + 1;
  return next < begin_.size() ? begin_[next] : time;
}

} // namespace manciple::scheduling
