#include "scheduling/timetable.hpp"

namespace manciple::scheduling {

// Why more than `room` is taken at that minute, by as few as it needs.
void Timetable::explain(const Trail& trail, const Demand& demand, int time, int room,
                        const Stretch* but) {
  there_.clear();
  int sum = 0;
  for (const Stretch& stretch : demand.stretches) {
    if (&stretch != but && stretch.latest_start(trail) <= time &&
        time < stretch.earliest_start(trail) + stretch.minutes) {
      there_.push_back(&stretch);
      sum += stretch.take;
    }
  }
  for (const Stretch* stretch : there_) {
    if (sum - stretch->take > room) {
      sum -= stretch->take;
    } else {
      reasons_.push_back(stretch->from(time - stretch->minutes + 1));
      reasons_.push_back(stretch->until(time));
    }
  }
}

bool Timetable::push(Trail& trail, const Demand& demand, const Stretch& stretch) {
  if (certain_.most() <= demand.capacity - stretch.take || trail.fixed(stretch.side)) {
    return true;
  }
  const int own_begin = stretch.latest_start(trail);
  const int own_end = stretch.earliest_start(trail) + stretch.minutes;
  const auto first = std::upper_bound(
      certain_.levels().begin(), certain_.levels().end(), stretch.earliest_start(trail),
      [](int time, const CertainUse::Level& level) { return time < level.end; });
  for (auto level = first; level != certain_.levels().end(); ++level) {
    if (level->begin >= stretch.earliest_start(trail) + stretch.minutes) {
      break;
    }
    if (level->taken <= demand.capacity - stretch.take ||
        (own_begin <= level->begin && level->end <= own_end)) {
      continue;
    }
    while (stretch.earliest_start(trail) < level->end) {
      // It cannot run at this minute, and it does unless it starts after it.
      const int minute = std::min(level->end, stretch.earliest_start(trail) + stretch.minutes) - 1;
      reasons_.assign(1, stretch.from(minute - stretch.minutes + 1));
      explain(trail, demand, minute, demand.capacity - stretch.take, &stretch);
      if (!trail.set(stretch.from(minute + 1), reasons_)) {
        return false;
      }
    }
  }
  return true;
}

bool Timetable::follow(Trail& trail, const Demand& demand) {
  certain_.measure(trail, demand);
  for (const CertainUse::Level& level : certain_.levels()) {
    if (level.taken > demand.capacity) {
      reasons_.clear();
      explain(trail, demand, level.begin, demand.capacity, nullptr);
      return trail.contradict(reasons_);
    }
  }
  return std::all_of(demand.stretches.begin(), demand.stretches.end(),
                     [&](const Stretch& stretch) { return push(trail, demand, stretch); });
}

} // namespace manciple::scheduling
