#pragma once

#include "scheduling/learnt_clauses.hpp"

namespace manciple::scheduling {

/// Traces contradictions to a clause that would have prevented them: the first unique implication
/// point (Marques-Silva and Sakallah 1999), without what follows from the rest of the clause
/// (Sörensson and Biere 2009).
class Teacher {
public:
  /// The trail must be in contradiction, above level 0; goes back to the level where the
  /// contradiction first stood. An empty lesson: there is no schedule.
  Lesson teach(Trail& trail, Clauses& clauses);

  /// The bounds met on the way of the last lesson: what to branch on next.
  [[nodiscard]] const std::vector<Bound>& met() const { return met_; }

private:
  struct Mark {
    int least = 0;
    bool marked = false;
    enum class Known : std::uint8_t { no, follows, needed } known = Known::no;
  };
  void mark(const Trail& trail, Bound bound);
  bool follows(const Trail& trail, std::size_t entry);
  void drop_weaker(const Trail& trail, std::size_t peak);
  void drop_implied(const Trail& trail);
  [[nodiscard]] Lesson lesson(const Trail& trail, std::size_t peak) const;

  std::vector<Mark> marks_;            // by entry
  std::vector<std::size_t> lower_;     // marked entries below the current level
  std::vector<std::size_t> strongest_; // by side, the last marked entry
  int open_ = 0;                       // marked entries of the current level not yet traced
  std::vector<Bound> met_;
};

} // namespace manciple::scheduling
