#include "scheduling/trail.hpp"

namespace manciple::scheduling {

Side Trail::add(int least, int most) {
  const auto side = static_cast<Side>(now_.size());
  now_.insert(now_.end(), {least, -most});
  latest_.insert(latest_.end(), {-1, -1});
  return side;
}

void Trail::push(Bound bound, std::span<const Bound> reasons, int clause) {
  Entry entry;
  entry.side = bound.side;
  entry.value = bound.least;
  entry.replaced = now_[bound.side];
  entry.previous = latest_[bound.side];
  entry.level = level();
  entry.reasons = store_.size();
  if (level() > 0) { // What follows from the project alone needs no reasons.
    entry.count = reasons.size();
    entry.clause = clause;
    store_.insert(store_.end(), reasons.begin(), reasons.end());
  }
  now_[bound.side] = bound.least;
  latest_[bound.side] = static_cast<int>(entries_.size());
  entries_.push_back(entry);
}

bool Trail::set(Bound bound, std::span<const Bound> reasons, int clause) {
  if (holds(bound)) {
    return true;
  }
  if (fails(bound)) {
    raise_conflict(reasons, clause);
    conflict_.push_back(opposite(bound));
    return false;
  }
  push(bound, reasons, clause);
  return true;
}

bool Trail::raise_conflict(std::span<const Bound> reasons, int clause) {
  conflict_.assign(reasons.begin(), reasons.end());
  conflict_clause_ = clause;
  return false;
}

void Trail::decide(Bound bound) {
  levels_.push_back({entries_.size(), store_.size()});
  push(bound, {}, -1);
}

void Trail::back(int level) {
  if (level >= this->level()) {
    return;
  }
  const Level to = levels_[static_cast<std::size_t>(level)];
  while (entries_.size() > to.entries) {
    const Entry& entry = entries_.back();
    now_[entry.side] = entry.replaced;
    latest_[entry.side] = entry.previous;
    entries_.pop_back();
  }
  store_.resize(to.store);
  levels_.resize(static_cast<std::size_t>(level));
}

int Trail::source(Bound bound) const {
  int i = latest_[bound.side];
  while (i >= 0) {
    const Entry& entry = entries_[static_cast<std::size_t>(i)];
    if (entry.level == 0) {
      return -1;
    }
    if (entry.replaced < bound.least) {
      return i;
    }
    i = entry.previous;
  }
  return -1;
}

} // namespace manciple::scheduling
