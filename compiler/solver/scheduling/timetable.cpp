#include "scheduling/timetable.hpp"

namespace manciple::scheduling {

// Why more than `room` is taken at that minute, by as few as it needs.
void Timetable::explain(const Trail& trail, const Cumulative& constraint, int time, int room,
                        const TaskInterval* but) {
  there_.clear();
  int sum = 0;
  for (const TaskInterval& interval : constraint.intervals) {
    if (&interval != but && interval.latest_start(trail) <= time &&
        time < interval.earliest_start(trail) + interval.minutes) {
      there_.push_back(&interval);
      sum += interval.take;
    }
  }
  for (const TaskInterval* interval : there_) {
    if (sum - interval->take > room) {
      sum -= interval->take;
    } else {
      reasons_.push_back(interval->from(time - interval->minutes + 1));
      reasons_.push_back(interval->until(time));
    }
  }
}

bool Timetable::push(Trail& trail, const Cumulative& constraint, const TaskInterval& interval) {
  if (compulsory_.most() <= constraint.capacity - interval.take || trail.fixed(interval.side)) {
    return true;
  }
  const int own_begin = interval.latest_start(trail);
  const int own_end = interval.earliest_start(trail) + interval.minutes;
  const auto first = std::upper_bound(
      compulsory_.levels().begin(), compulsory_.levels().end(), interval.earliest_start(trail),
      [](int time, const CompulsoryProfile::Level& level) { return time < level.end; });
  for (auto level = first; level != compulsory_.levels().end(); ++level) {
    if (level->begin >= interval.earliest_start(trail) + interval.minutes) {
      break;
    }
    if (level->taken <= constraint.capacity - interval.take ||
        (own_begin <= level->begin && level->end <= own_end)) {
      continue;
    }
    while (interval.earliest_start(trail) < level->end) {
      // It cannot run at this minute, and it does unless it starts after it.
      const int minute =
          std::min(level->end, interval.earliest_start(trail) + interval.minutes) - 1;
      reasons_.assign(1, interval.from(minute - interval.minutes + 1));
      explain(trail, constraint, minute, constraint.capacity - interval.take, &interval);
      if (!trail.set(interval.from(minute + 1), reasons_)) {
        return false;
      }
    }
  }
  return true;
}

bool Timetable::propagate(Trail& trail, const Cumulative& constraint) {
  compulsory_.measure(trail, constraint);
  for (const CompulsoryProfile::Level& level : compulsory_.levels()) {
    if (level.taken > constraint.capacity) {
      reasons_.clear();
      explain(trail, constraint, level.begin, constraint.capacity, nullptr);
      return trail.raise_conflict(reasons_);
    }
  }
  return std::all_of(
      constraint.intervals.begin(), constraint.intervals.end(),
      [&](const TaskInterval& interval) { return push(trail, constraint, interval); });
}

} // namespace manciple::scheduling
