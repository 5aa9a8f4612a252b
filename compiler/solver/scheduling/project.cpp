#include "scheduling/project.hpp"

#include "scheduling/list_scheduling.hpp"
#include "scheduling/lower_bound.hpp"
#include "scheduling/search.hpp"

#include <algorithm>

namespace manciple::scheduling {

int Activity::minutes() const {
  int sum = 0;
  for (const Piece& piece : pieces) {
    sum += piece.minutes;
  }
  return sum;
}

Schedule shortest(const Project& project, const Limits& limits) {
  using Clock = std::chrono::steady_clock;
  const auto seconds = std::chrono::duration<double>(std::clamp(limits.seconds, 0.0, 1e6));
  const Budget budget{Clock::now() + std::chrono::duration_cast<Clock::duration>(seconds),
                      limits.nodes};
  const ActivityNetwork network = activity_network(project);
  Schedule out;
  out.bound = lower_bound(network);
  out.start = heuristic_schedule(network, out.bound);
  out.length = length(network, out.start);
  if (!out.proven()) {
    improve(network, budget, out);
  }
  return out;
}

} // namespace manciple::scheduling
