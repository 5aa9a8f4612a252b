#pragma once

#include "prep/placing.hpp"
#include "prep/prep.hpp"
#include "resolve/resolve.hpp"

#include <string>
#include <vector>

/// The work of a recipe's method when it is made so many times.
namespace manciple::prep {

/// Of a making's ingredients, what tasks of a session have cut before.
struct CutBefore {
  int minutes = 0;  ///< that took
  bool all = false; ///< nothing is left to cut
};

/// A step as it is done.
struct StepWork {
  std::size_t step = 0;
  std::string what;
  int hands_on = 0;
  int then = 0;
  std::string_view appliance;
  int places = 1;          ///< of the appliance: two pots on two burners
  std::string_view vessel; ///< what it is done in; empty when it is not said
  int vessels = 0;
  std::optional<int> fahrenheit;
  int change = 0; ///< minutes to bring the oven from the temperature of the step before to its own
  int wash = 0; ///< minutes to wash board, knife and hands after raw meat, right after the hands-on
  std::optional<int> wait; ///< how long the next one may wait
};

/// The steps that are left to do. What only prepares what is cut already is left out, and where a
/// step does more than that, its time is shorter. More than a pot, a tray, a mixer or a processor
/// holds is done in several at once, as far as the house has them and room for them, and in loads
/// after that; a load of a step that says what fits is a piece of work of its own.
std::vector<StepWork> work_of(const kitchen::Kitchen& kitchen, const resolve::Making& making,
                              const CutBefore& cut);

/// What a step is done in: what it says, a pot for what simmers, or the machine itself. Refers to
/// the step.
std::string_view vessel_of(const kitchen::MethodStep& step);

/// The stretches of a step, without what stands before and after it.
Job job_of(const StepWork& work);

/// The same for whoever reads it: without the heating before it and the washing after it.
Effort effort_of(const StepWork& work);

/// Where in it the hands-on part begins.
inline int hands_begin(const StepWork& work) {
  return work.change;
}

} // namespace manciple::prep
