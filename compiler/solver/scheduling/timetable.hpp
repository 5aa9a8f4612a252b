#pragma once

#include "scheduling/cumulative.hpp"

namespace manciple::scheduling {

/// What follows from the certain use of a resource: nothing may start where it would overdraw it
/// (time-tabling, with reasons for single minutes: Schutt, Feydy, Stuckey and Wallace 2011).
/// Starts are moved later; earlier by calling it with time running backwards.
class Timetable {
public:
  /// False on contradiction.
  bool follow(Trail& trail, const Demand& demand);

private:
  bool push(Trail& trail, const Demand& demand, const Stretch& stretch);
  void explain(const Trail& trail, const Demand& demand, int time, int room, const Stretch* but);

  CertainUse certain_;
  std::vector<Bound> reasons_;
  std::vector<const Stretch*> there_;
};

} // namespace manciple::scheduling
