#include "scheduling/list_scheduling.hpp"

#include "scheduling/profile.hpp"

#include <algorithm>
#include <array>
#include <numeric>

namespace manciple::scheduling {
namespace {

using Priorities = std::vector<std::int64_t>; // by activity, the smallest first

enum class Generation { serial, parallel };

// Keeps which activities can be placed next.
class Waiting {
public:
  explicit Waiting(const ActivityNetwork& network)
      : network_(network), ready_(network.tasks.size(), 0) {
    for (std::size_t i = 0; i < network.tasks.size(); ++i) {
      waits_.push_back(network.tasks[i].before.size());
      if (waits_[i] == 0) {
        open_.push_back(i);
      }
    }
  }
  [[nodiscard]] const std::vector<std::size_t>& open() const { return open_; }
  [[nodiscard]] int ready(std::size_t i) const { return ready_[i]; }

  void placed(std::size_t i, int start) {
    std::erase(open_, i);
    for (const std::size_t next : network_.tasks[i].after) {
      ready_[next] = std::max(ready_[next], start + network_.tasks[i].minutes);
      if (--waits_[next] == 0) {
        open_.push_back(next);
      }
    }
  }

private:
  const ActivityNetwork& network_;
  std::vector<std::size_t> waits_;
  std::vector<int> ready_; // when all they wait for has ended
  std::vector<std::size_t> open_;
};

// Kelley 1963: the next of the list starts as early as it can.
std::vector<int> serial(const ActivityNetwork& network, const Priorities& priority) {
  std::vector<int> start(network.tasks.size(), 0);
  Waiting waiting(network);
  Profile profile(network.capacity);
  while (!waiting.open().empty()) {
    const std::size_t i = *std::min_element(
        waiting.open().begin(), waiting.open().end(), [&](std::size_t a, std::size_t b) {
          return std::pair(priority[a], a) < std::pair(priority[b], b);
        });
    start[i] = profile.earliest(network.tasks[i], waiting.ready(i));
    profile.place(network.tasks[i], start[i]);
    waiting.placed(i, start[i]);
  }
  return start;
}

// Brooks and White 1965: at each moment whatever can start does, in the order of the list. What
// has a later piece may fit only between two moments; it then waits for the next.
std::vector<int> parallel(const ActivityNetwork& network, const Priorities& priority) {
  std::vector<int> start(network.tasks.size(), 0);
  Waiting waiting(network);
  Profile profile(network.capacity);
  int now = 0;
  while (!waiting.open().empty()) {
    std::size_t best = network.tasks.size();
    int next = std::numeric_limits<int>::max();
    for (const std::size_t i : waiting.open()) {
      if (waiting.ready(i) > now) {
        next = std::min(next, waiting.ready(i));
      } else if ((best == network.tasks.size() ||
                  std::pair(priority[i], i) < std::pair(priority[best], best)) &&
                 profile.fits(network.tasks[i], now)) {
        best = i;
      }
    }
    if (best < network.tasks.size()) {
      start[best] = now;
      profile.place(network.tasks[best], now);
      waiting.placed(best, now);
      continue;
    }
    const int change = profile.next_change(now);
    now = change > now ? std::min(change, next) : next;
  }
  return start;
}

Priorities by_end_backwards(const ActivityNetwork& network, const std::vector<int>& start) {
  Priorities out;
  for (std::size_t i = 0; i < start.size(); ++i) {
    out.push_back(-static_cast<std::int64_t>(start[i] + network.tasks[i].minutes));
  }
  return out;
}

// Everything as late as it can be, then as early as it can be (Valls, Ballestín and Quintanilla
// 2005), while that helps. Never longer than before.
void justify(const ActivityNetwork& network, const ActivityNetwork& mirror,
             std::vector<int>& start) {
  while (true) {
    const std::vector<int> late = serial(mirror, by_end_backwards(network, start));
    const std::vector<int> early = serial(network, by_end_backwards(mirror, late));
    if (length(network, early) >= length(network, start)) {
      return;
    }
    start = early;
  }
}

// The usual rules (Kolisch 1996): least time left after it, most work waiting for it, longest
// first; and two between.
std::vector<Priorities> rules(const ActivityNetwork& network) {
  const std::size_t n = network.tasks.size();
  std::vector<Priorities> out(4, Priorities(n, 0));
  std::vector<std::int64_t> work(n, 0); // times what it takes, as a share of the capacity
  for (std::size_t i = 0; i < n; ++i) {
    for (const Part& part : network.tasks[i].parts) {
      for (const Requirement& requirement : part.takes) {
        work[i] += std::int64_t{1000} * part.minutes * requirement.amount /
                   std::max(1, network.capacity[requirement.resource]);
      }
    }
  }
  for (std::size_t i = 0; i < n; ++i) {
    const Interval& task = network.tasks[i];
    std::int64_t weight = work[i];
    for (const std::size_t next : task.after) {
      weight += work[next];
    }
    out[0][i] = -task.tail;                // latest start
    out[1][i] = task.minutes - task.tail;  // latest end
    out[2][i] = -weight;                   // work of it and of what it lets go
    out[3][i] = -task.tail - task.minutes; // long ones a little earlier
  }
  return out;
}

} // namespace

int length(const ActivityNetwork& network, const std::vector<int>& start) {
  int out = 0;
  for (std::size_t i = 0; i < start.size(); ++i) {
    out = std::max(out, start[i] + network.tasks[i].minutes);
  }
  return out;
}

std::vector<int> heuristic_schedule(const ActivityNetwork& network, int bound) {
  const ActivityNetwork mirror = mirrored(network);
  std::vector<int> best;
  int shortest_yet = std::numeric_limits<int>::max();
  const auto take = [&](std::vector<int> start) {
    justify(network, mirror, start);
    if (const int minutes = length(network, start); minutes < shortest_yet) {
      shortest_yet = minutes;
      best = std::move(start);
    }
  };
  const std::array<std::vector<Priorities>, 2> priorities{rules(network), rules(mirror)};
  for (std::size_t rule = 0; rule < priorities[0].size(); ++rule) {
    for (const Generation generation : {Generation::serial, Generation::parallel}) {
      for (const bool backwards : {false, true}) {
        const ActivityNetwork& way = backwards ? mirror : network;
        const Priorities& priority = priorities[backwards ? 1 : 0][rule];
        std::vector<int> start =
            generation == Generation::serial ? serial(way, priority) : parallel(way, priority);
        if (backwards) { // a schedule of the mirror, placed forwards in its order
          start = serial(network, by_end_backwards(mirror, start));
        }
        take(std::move(start));
        if (shortest_yet <= bound) {
          return best;
        }
      }
    }
  }
  return best;
}

} // namespace manciple::scheduling
