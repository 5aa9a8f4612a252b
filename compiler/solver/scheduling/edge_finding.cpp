#include "scheduling/edge_finding.hpp"

namespace manciple::scheduling {

// Why at least `needed` is done in the window, by as few as it needs. Wherever a stretch starts
// from window.begin + m - minutes to window.end - m, at least m of its minutes are inside.
void Energy::explain(const Trail& trail, const Demand& demand, Window window, std::int64_t needed,
                     const Stretch* but) {
  inside_.clear();
  std::int64_t spare = -needed;
  for (const Stretch& stretch : demand.stretches) {
    const int minutes = std::min({stretch.minutes, window.end - window.begin,
                                  stretch.earliest_start(trail) + stretch.minutes - window.begin,
                                  window.end - stretch.latest_start(trail)});
    if (&stretch != but && minutes > 0) {
      inside_.emplace_back(&stretch, minutes);
      spare += std::int64_t{minutes} * stretch.take;
    }
  }
  for (auto& [stretch, minutes] : inside_) {
    const std::int64_t energy = std::int64_t{minutes} * stretch->take;
    if (energy <= spare) {
      spare -= energy;
      minutes = 0;
    }
  }
  for (auto& [stretch, minutes] : inside_) {
    if (minutes > 0) {
      const auto less = static_cast<int>(spare / stretch->take); // fewer than `minutes`
      spare -= std::int64_t{less} * stretch->take;
      minutes -= less;
      reasons_.push_back(stretch->from(window.begin + minutes - stretch->minutes));
      reasons_.push_back(stretch->until(window.end - minutes));
    }
  }
}

bool Energy::follow(Trail& trail, const Demand& demand, int end) {
  const std::int64_t certain_before_end = certain_.energy_before(end);
  std::int64_t loose = 0; // energy that must be in the window beside what is certain
  const Item* greediest = nullptr;
  std::int64_t most = 0; // what that one would add by starting as early as it can
  for (std::size_t i = 0; i < items_.size(); ++i) {
    const Item& item = items_[i];
    if (item.earliest_start >= end) {
      continue;
    }
    const int take = item.stretch->take;
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
    const std::int64_t all = std::int64_t{demand.capacity} * (end - begin);
    const std::int64_t room = all - (certain_before_end - item.before_start) - loose;
    if (room < 0) {
      reasons_.clear();
      explain(trail, demand, {begin, end}, all + 1, nullptr);
      return trail.contradict(reasons_);
    }
    if (most > room) {
      const Stretch& stretch = *greediest->stretch;
      const std::int64_t own =
          std::int64_t{std::max(0, end - greediest->latest_start)} * stretch.take;
      const auto minutes = static_cast<int>((room + own) / stretch.take); // it can have inside
      reasons_.assign(1, stretch.from(begin + minutes + 1 - stretch.minutes));
      explain(trail, demand, {begin, end}, all - std::int64_t{minutes + 1} * stretch.take + 1,
              &stretch);
      if (!trail.set(stretch.from(end - minutes), reasons_)) {
        return false;
      }
    }
  }
  return true;
}

bool Energy::follow(Trail& trail, const Demand& demand) {
  certain_.measure(trail, demand);
  items_.clear();
  ends_.clear();
  for (const Stretch& stretch : demand.stretches) {
    Item item;
    item.stretch = &stretch;
    item.earliest_start = stretch.earliest_start(trail);
    item.earliest_end = item.earliest_start + stretch.minutes;
    item.latest_start = stretch.latest_start(trail);
    item.latest_end = item.latest_start + stretch.minutes;
    item.before_start = certain_.energy_before(item.earliest_start);
    items_.push_back(item);
    ends_.push_back(item.latest_end);
  }
  std::stable_sort(items_.begin(), items_.end(), [](const Item& a, const Item& b) {
    return a.earliest_start > b.earliest_start;
  });
  std::sort(ends_.begin(), ends_.end());
  ends_.erase(std::unique(ends_.begin(), ends_.end()), ends_.end());
  return std::all_of(ends_.begin(), ends_.end(),
                     [&](int end) { return follow(trail, demand, end); });
}

} // namespace manciple::scheduling
