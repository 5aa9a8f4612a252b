#pragma once

#include "scheduling/learnt_clauses.hpp"

namespace manciple::scheduling {

/// Traces a conflict to a clause that would have prevented it: the first unique implication
/// point (Marques-Silva and Sakallah 1999), without what follows from the rest of the clause
/// (Sörensson and Biere 2009).
class ConflictAnalysis {
public:
  /// The trail must be in conflict, above level 0; it goes back to the level at which the conflict
  /// first stood. An empty clause: there is no schedule.
  LearntClause analyse(Trail& trail, LearntClauses& clauses);

  /// The bounds met on the way to the last clause: what to branch on next.
  [[nodiscard]] const std::vector<Bound>& bump_met() const { return met_; }

private:
  struct Mark {
    int least = 0;
    bool marked = false;
    enum class Known : std::uint8_t { no, follows, needed } known = Known::no;
  };
  void mark(const Trail& trail, Bound bound);
  bool implied(const Trail& trail, std::size_t entry);
  void drop_weaker(const Trail& trail, std::size_t uip);
  void drop_implied(const Trail& trail);
  [[nodiscard]] LearntClause learnt(const Trail& trail, std::size_t uip) const;

  std::vector<Mark> marks_;            // by entry
  std::vector<std::size_t> lower_;     // marked entries below the current level
  std::vector<std::size_t> strongest_; // by side, the last marked entry
  int open_ = 0;                       // marked entries of the current level not yet traced
  std::vector<Bound> met_;
};

} // namespace manciple::scheduling
