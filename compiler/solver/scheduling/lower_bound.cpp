#include "scheduling/lower_bound.hpp"

#include <algorithm>
#include <tuple>

namespace manciple::scheduling {
namespace {

struct Work {
  int head = 0; // minutes before it at least
  int rest = 0; // minutes after it at least
  std::int64_t energy = 0;
};

int energy_bound(std::vector<Work> works, int capacity) {
  std::sort(works.begin(), works.end(), [](const Work& a, const Work& b) {
    return std::tie(a.rest, a.head) > std::tie(b.rest, b.head);
  });
  int best = 0;
  for (const Work& first : works) {
    std::int64_t sum = 0;
    for (const Work& work : works) {
      if (work.head >= first.head) {
        sum += work.energy;
        const std::int64_t minutes = (sum + capacity - 1) / capacity;
        best = std::max(best, first.head + static_cast<int>(minutes) + work.rest);
      }
    }
  }
  return best;
}

} // namespace

int lower_bound(const ActivityNetwork& network) {
  int best = 0;
  std::vector<std::vector<Work>> works(network.capacity.size());
  for (const Interval& task : network.tasks) {
    best = std::max(best, task.head + task.tail);
    for (const Part& part : task.parts) {
      for (const Requirement& requirement : part.takes) {
        works[requirement.resource].push_back({task.head + part.offset,
                                               task.tail - part.offset - part.minutes,
                                               std::int64_t{part.minutes} * requirement.amount});
      }
    }
  }
  for (std::size_t r = 0; r < works.size(); ++r) {
    if (!works[r].empty()) {
      best = std::max(best, energy_bound(std::move(works[r]), network.capacity[r]));
    }
  }
  return best;
}

} // namespace manciple::scheduling
