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

int simple_bound(const Network& network) {
  int best = 0;
  std::vector<std::vector<Work>> works(network.capacity.size());
  for (const Step& step : network.steps) {
    best = std::max(best, step.head + step.tail);
    for (const Part& part : step.parts) {
      for (const Taking& taking : part.takes) {
        works[taking.resource].push_back({step.head + part.offset,
                                          step.tail - part.offset - part.minutes,
                                          std::int64_t{part.minutes} * taking.amount});
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
