#pragma once

#include "prep/freezing.hpp"
#include "prep/placing.hpp"

#include <map>
#include <vector>

namespace manciple::prep {

/// By session: what the meals of its day take of hands and appliances, in minutes from its start.
using Meals = std::map<std::size_t, std::vector<Taken>>;

/// The work of the sessions, scheduled around meals. Ready-to-eat food is cut before raw meat is
/// portioned, raw poultry comes last.
std::vector<SessionPlan> sessions(const kitchen::Kitchen& kitchen,
                                  const resolve::Resolved& resolved,
                                  const std::vector<Freezing>& freezing, const Meals& meals,
                                  text::Diagnostics& diagnostics);

/// What is cooked for meals while sessions run that take longer than they last: it goes before
/// them. None where all sessions end in time.
Meals meals_in_the_way(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                       const std::vector<SessionPlan>& sessions);

/// What is cooked on each day for its meals, by one pair of hands on what the household has: as
/// late as that allows. A dish that is ready long before its meal is told.
std::vector<Cooking> cooking(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                             const std::vector<SessionPlan>& sessions,
                             text::Diagnostics& diagnostics);

} // namespace manciple::prep
