#include "scheduling/edge_finding.hpp"

namespace manciple::scheduling {

// Why at least `needed` is done in the window, by as few as it needs. Wherever an interval starts
// from window.begin + m - minutes to window.end - m, at least m of its minutes are inside.
void EdgeFinding::explain(const Trail& trail, const Cumulative& constraint, Window window,
                          std::int64_t needed, const TaskInterval* but) {
  inside_.clear();
  std::int64_t spare = -needed;
  for (const TaskInterval& interval : constraint.intervals) {
    const int minutes = std::min({interval.minutes, window.end - window.begin,
                                  interval.earliest_start(trail) + interval.minutes - window.begin,
                                  window.end - interval.latest_start(trail)});
    if (&interval != but && minutes > 0) {
      inside_.emplace_back(&interval, minutes);
      spare += std::int64_t{minutes} * interval.take;
    }
  }
  for (auto& [interval, minutes] : inside_) {
    const std::int64_t energy = std::int64_t{minutes} * interval->take;
    if (energy <= spare) {
      spare -= energy;
      minutes = 0;
    }
  }
  for (auto& [interval, minutes] : inside_) {
    if (minutes > 0) {
      const auto less = static_cast<int>(spare / interval->take); // fewer than `minutes`
      spare -= std::int64_t{less} * interval->take;
      minutes -= less;
      reasons_.push_back(interval->from(window.begin + minutes - interval->minutes));
      reasons_.push_back(interval->until(window.end - minutes));
    }
  }
}

bool EdgeFinding::propagate(Trail& trail, const Cumulative& constraint, int end) {
  const std::int64_t compulsory_before_end = compulsory_.energy_before(end);
  std::int64_t loose = 0; // energy that must be in the window beside what is certain
  const Item* greediest = nullptr;
  std::int64_t most = 0; // what that one would add by starting as early as it can
  for (std::size_t i = 0; i < items_.size(); ++i) {
    const Item& item = items_[i];
    if (item.earliest_start >= end) {
      continue;
    }
    const int take = item.interval->take;
    if (item.latest_end <= end) {
      loose += std::int64_t{item.loose()} * take;
    } else {
      loose +=
          std::int64_t{std::max(0, end - std::max(item.latest_start, item.earliest_end))} * take;
      const int if_early = std::min(item.earliest_end, end) - item.earliest_start;
      const int anyway = std::max(0, end - item.latest_start);
      if (const std::int64_t more = std::int64_t{if_early - anyway} * take; more > most) {
        most = more;
        greediest = &item;
      }
    }
    const int begin = item.earliest_start;
    if (i + 1 < items_.size() && items_[i + 1].earliest_start == begin) {
      continue;
    }
    const std::int64_t all = std::int64_t{constraint.capacity} * (end - begin);
    const std::int64_t room = all - (compulsory_before_end - item.before_start) - loose;
    if (room < 0) {
      reasons_.clear();
      explain(trail, constraint, {begin, end}, all + 1, nullptr);
      return trail.raise_conflict(reasons_);
    }
    if (most > room) {
      const TaskInterval& interval = *greediest->interval;
      const std::int64_t own =
          std::int64_t{std::max(0, end - greediest->latest_start)} * interval.take;
      const auto minutes = static_cast<int>((room + own) / interval.take); // it can have inside
      reasons_.assign(1, interval.from(begin + minutes + 1 - interval.minutes));
      explain(trail, constraint, {begin, end}, all - std::int64_t{minutes + 1} * interval.take + 1,
              &interval);
      if (!trail.set(interval.from(end - minutes), reasons_)) {
        return false;
      }
    }
  }
  return true;
}

bool EdgeFinding::propagate(Trail& trail, const Cumulative& constraint) {
  compulsory_.measure(trail, constraint);
  items_.clear();
  ends_.clear();
  for (const TaskInterval& interval : constraint.intervals) {
    Item item;
    item.interval = &interval;
    item.earliest_start = interval.earliest_start(trail);
    item.earliest_end = item.earliest_start + interval.minutes;
    item.latest_start = interval.latest_start(trail);
    item.latest_end = item.latest_start + interval.minutes;
    item.before_start = compulsory_.energy_before(item.earliest_start);
    items_.push_back(item);
    ends_.push_back(item.latest_end);
  }
  std::stable_sort(items_.begin(), items_.end(), [](const Item& a, const Item& b) {
    return a.earliest_start > b.earliest_start;
  });
  std::sort(ends_.begin(), ends_.end());
  ends_.erase(std::unique(ends_.begin(), ends_.end()), ends_.end());
  return std::all_of(ends_.begin(), ends_.end(),
                     [&](int end) { return propagate(trail, constraint, end); });
}

} // namespace manciple::scheduling
