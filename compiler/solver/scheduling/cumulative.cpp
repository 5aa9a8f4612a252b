#include "scheduling/cumulative.hpp"

namespace manciple::scheduling {

void CompulsoryProfile::measure(const Trail& trail, const Cumulative& constraint) {
  changes_.clear();
  levels_.clear();
  most_ = 0;
  for (const TaskInterval& interval : constraint.intervals) {
    const int begin = interval.latest_start(trail);
    const int end = interval.earliest_start(trail) + interval.minutes;
    if (begin < end) {
      changes_.emplace_back(begin, interval.take);
      changes_.emplace_back(end, -interval.take);
    }
  }
  std::sort(changes_.begin(), changes_.end());
  int taken = 0;
  std::int64_t energy = 0;
  for (std::size_t i = 0; i < changes_.size();) {
    const int time = changes_[i].first;
    for (; i < changes_.size() && changes_[i].first == time; ++i) {
      taken += changes_[i].second;
    }
    if (!levels_.empty()) {
      Level& last = levels_.back();
      last.end = time;
      energy += std::int64_t{last.taken} * (last.end - last.begin);
    }
    levels_.push_back({time, time, taken, energy});
    most_ = std::max(most_, taken);
  }
}

std::int64_t CompulsoryProfile::energy_before(int time) const {
  const auto after = std::upper_bound(levels_.begin(), levels_.end(), time,
                                      [](int t, const Level& level) { return t < level.begin; });
  if (after == levels_.begin()) {
    return 0;
  }
  const Level& level = *std::prev(after);
  return level.energy_before + std::int64_t{level.taken} * (time - level.begin);
}

} // namespace manciple::scheduling
