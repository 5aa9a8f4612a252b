#pragma once

#include "scheduling/cumulative.hpp"

namespace manciple::scheduling {

/// What follows from the compulsory parts on a resource: nothing may start where it would overdraw
/// it (time-tabling, with reasons for single minutes: Schutt, Feydy, Stuckey and Wallace 2011).
/// Starts are moved later; earlier by calling it with time running backwards.
class Timetable {
public:
  /// False on conflict.
  bool propagate(Trail& trail, const Cumulative& constraint);

private:
  bool push(Trail& trail, const Cumulative& constraint, const TaskInterval& interval);
  void explain(const Trail& trail, const Cumulative& constraint, int time, int room,
               const TaskInterval* but);

  CompulsoryProfile compulsory_;
  std::vector<Bound> reasons_;
  std::vector<const TaskInterval*> there_;
};

} // namespace manciple::scheduling
