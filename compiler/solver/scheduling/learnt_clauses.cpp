#include "scheduling/learnt_clauses.hpp"

#include <algorithm>
#include <numeric>
#include <tuple>
#include <utility>

namespace manciple::scheduling {

bool LearntClauses::add(Trail& trail, const LearntClause& learnt) {
  return insert(trail, learnt.bounds, learnt.level_count, increment_);
}

bool LearntClauses::insert(Trail& trail, std::span<const Bound> bounds, int level_count,
                           double activity) {
  int index = -1;
  if (bounds.size() > 1) {
    index = static_cast<int>(clauses_.size());
    clauses_.push_back({store_.size(), bounds.size(), level_count, activity});
    store_.insert(store_.end(), bounds.begin(), bounds.end());
    for (const std::size_t i : {0U, 1U}) {
      const Bound falling = opposite(bounds[i]);
      watches_[falling.side].push_back(
          {falling.least, static_cast<std::uint32_t>(index), bounds[1 - i]});
    }
  }
  const bool open = std::none_of(bounds.begin() + (bounds.empty() ? 0 : 1), bounds.end(),
                                 [&](Bound b) { return trail.fails(b); });
  if (open && bounds.size() > 1) {
    return true;
  }
  reasons_.clear();
  std::transform(bounds.begin() + 1, bounds.end(), std::back_inserter(reasons_), opposite);
  return trail.set(bounds[0], reasons_, index);
}

bool LearntClauses::wake(Trail& trail, Side side, Watch& watch, bool& keep) {
  const Clause& clause = clauses_[watch.clause];
  Bound* const bounds = store_.data() + clause.begin;
  const Bound fallen = opposite({side, watch.least});
  if (bounds[0].side == fallen.side && bounds[0].least == fallen.least) {
    std::swap(bounds[0], bounds[1]);
  }
  if (trail.holds(bounds[0])) {
    watch.hint = bounds[0];
    return true;
  }
  for (std::size_t i = 2; i < clause.size; ++i) {
    if (!trail.fails(bounds[i])) {
      std::swap(bounds[1], bounds[i]);
      const Bound falling = opposite(bounds[1]);
      watches_[falling.side].push_back({falling.least, watch.clause, bounds[0]});
      keep = false;
      return true;
    }
  }
  reasons_.clear();
  std::transform(bounds + 1, bounds + clause.size, std::back_inserter(reasons_), opposite);
  return trail.set(bounds[0], reasons_, static_cast<int>(watch.clause));
}

bool LearntClauses::propagate(Trail& trail, Side side) {
  // A clause has no two bounds on one side, so waking one never adds to the list being read.
  std::vector<Watch>& list = watches_[side];
  const int now = trail.at(side);
  bool fine = true;
  for (std::size_t i = 0; i < list.size() && fine;) {
    bool keep = true;
    if (list[i].least <= now && !trail.holds(list[i].hint)) {
      fine = wake(trail, side, list[i], keep);
    }
    if (keep) {
      ++i;
    } else {
      list[i] = list.back();
      list.pop_back();
    }
  }
  return fine;
}

void LearntClauses::bump(int clause) {
  double& activity = clauses_[static_cast<std::size_t>(clause)].activity;
  activity += increment_;
  if (activity > 1e100) {
    for (Clause& each : clauses_) {
      each.activity *= 1e-100;
    }
    increment_ *= 1e-100;
  }
}

bool LearntClauses::reduce(Trail& trail) {
  std::vector<std::size_t> order(clauses_.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    // Those from two levels or one are always kept.
    const Clause& x = clauses_[a];
    const Clause& y = clauses_[b];
    return std::tuple(x.level_count > 2, -x.activity, a) <
           std::tuple(y.level_count > 2, -y.activity, b);
  });
  const std::vector<Clause> clauses = std::exchange(clauses_, {});
  const std::vector<Bound> store = std::exchange(store_, {});
  for (std::vector<Watch>& list : watches_) {
    list.clear();
  }
  std::vector<Bound> bounds;
  for (std::size_t rank = 0; rank < order.size(); ++rank) {
    const Clause& clause = clauses[order[rank]];
    if (clause.level_count > 2 && rank >= order.size() / 2) {
      break;
    }
    const std::span<const Bound> all{store.data() + clause.begin, clause.size};
    if (std::any_of(all.begin(), all.end(), [&](Bound b) { return trail.holds(b); })) {
      continue;
    }
    bounds.clear();
    std::copy_if(all.begin(), all.end(), std::back_inserter(bounds),
                 [&](Bound b) { return !trail.fails(b); });
    if (bounds.empty() || !insert(trail, bounds, clause.level_count, clause.activity)) {
      return false;
    }
  }
  return true;
}

} // namespace manciple::scheduling
