#include "scheduling/conflict_analysis.hpp"

#include <algorithm>

namespace manciple::scheduling {

void ConflictAnalysis::mark(const Trail& trail, Bound bound) {
  const int source = trail.source(bound);
  if (source < 0) {
    return;
  }
  const auto i = static_cast<std::size_t>(source);
  Mark& mark = marks_[i];
  if (mark.marked) {
    mark.least = std::max(mark.least, bound.least);
    return;
  }
  mark.marked = true;
  mark.least = bound.least;
  met_.push_back(bound);
  if (trail.entry(i).level == trail.level()) {
    ++open_;
  } else {
    lower_.push_back(i);
  }
}

LearntClause ConflictAnalysis::analyse(Trail& trail, LearntClauses& clauses) {
  met_.clear();
  lower_.clear();
  open_ = 0;
  int top = 0;
  for (const Bound bound : trail.conflict()) {
    if (const int source = trail.source(bound); source >= 0) {
      top = std::max(top, trail.entry(static_cast<std::size_t>(source)).level);
    }
  }
  trail.back(top);
  if (top == 0) {
    return {};
  }
  marks_.assign(trail.size(), {});
  if (trail.conflict_clause() >= 0) {
    clauses.bump(trail.conflict_clause());
  }
  for (const Bound bound : trail.conflict()) {
    mark(trail, bound);
  }
  std::size_t uip = trail.size() - 1;
  for (;; --uip) {
    if (!marks_[uip].marked) {
      continue;
    }
    if (open_ == 1) {
      break;
    }
    --open_;
    const Trail::Entry& entry = trail.entry(uip);
    if (entry.clause >= 0) {
      clauses.bump(entry.clause);
    }
    marks_[uip].marked = false;
    for (const Bound reason : trail.reasons(entry)) {
      mark(trail, reason);
    }
  }
  drop_weaker(trail, uip);
  drop_implied(trail);
  return learnt(trail, uip);
}

// Of two bounds on one side the stronger says it all, also if it came later.
void ConflictAnalysis::drop_weaker(const Trail& trail, std::size_t uip) {
  strongest_.assign(trail.sides(), 0);
  strongest_[trail.entry(uip).side] = uip;
  for (const std::size_t i : lower_) {
    std::size_t& strongest = strongest_[trail.entry(i).side];
    strongest = std::max(strongest, i);
  }
  std::erase_if(lower_, [&](std::size_t i) {
    marks_[i].marked = strongest_[trail.entry(i).side] == i;
    return !marks_[i].marked;
  });
}

// Whether an entry follows from marked ones before it. (A later one on the same side would imply it
// too, but two entries could then vouch for each other.)
bool ConflictAnalysis::implied(const Trail& trail, std::size_t entry) {
  using Known = Mark::Known;
  Known& known = marks_[entry].known;
  if (known == Known::no) {
    const auto reasons = trail.reasons(trail.entry(entry));
    const bool all =
        !reasons.empty() && std::all_of(reasons.begin(), reasons.end(), [&](Bound reason) {
          const int source = trail.source(reason);
          if (source < 0) {
            return true;
          }
          const auto i = static_cast<std::size_t>(source);
          return (marks_[i].marked && marks_[i].least >= reason.least) || implied(trail, i);
        });
    marks_[entry].known = all ? Known::follows : Known::needed;
  }
  return marks_[entry].known == Known::follows;
}

void ConflictAnalysis::drop_implied(const Trail& trail) {
  // The marks stay: what follows from a dropped bound follows from what that one follows from.
  std::erase_if(lower_, [&](std::size_t i) { return implied(trail, i); });
}

LearntClause ConflictAnalysis::learnt(const Trail& trail, std::size_t uip) const {
  LearntClause out;
  out.bounds.push_back(opposite({trail.entry(uip).side, marks_[uip].least}));
  std::vector<int> levels;
  for (const std::size_t i : lower_) {
    out.bounds.push_back(opposite({trail.entry(i).side, marks_[i].least}));
    levels.push_back(trail.entry(i).level);
  }
  if (!levels.empty()) {
    const auto highest = std::max_element(levels.begin(), levels.end());
    out.level = *highest;
    std::swap(out.bounds[1], out.bounds[static_cast<std::size_t>(highest - levels.begin()) + 1]);
  }
  std::sort(levels.begin(), levels.end());
  const auto distinct = std::unique(levels.begin(), levels.end()) - levels.begin();
  out.level_count = static_cast<int>(distinct) + 1;
  return out;
}

} // namespace manciple::scheduling
