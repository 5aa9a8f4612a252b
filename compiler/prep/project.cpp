#include "prep/project.hpp"

#include "prep/project_bounds.hpp"
#include "prep/project_lists.hpp"
#include "prep/project_search.hpp"

#include <algorithm>

namespace manciple::prep {

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
  const engine::Budget budget{Clock::now() + std::chrono::duration_cast<Clock::duration>(seconds),
                              limits.nodes};
  const engine::Network network = engine::network(project);
  Schedule out;
  out.bound = engine::simple_bound(network);
  out.start = engine::quick_schedule(network, out.bound);
  out.length = engine::length(network, out.start);
  if (!out.proven()) {
    engine::improve(network, budget, out);
  }
  return out;
}

} // namespace manciple::prep
