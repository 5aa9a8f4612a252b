#pragma once

#include "prep/freezing.hpp"

namespace manciple::prep {

/// The work of the sessions, scheduled. Ready-to-eat food is cut before raw meat is portioned, raw
/// poultry comes last.
std::vector<SessionPlan> sessions(const kitchen::Kitchen& kitchen,
                                  const resolve::Resolved& resolved,
                                  const std::vector<Freezing>& freezing,
                                  text::Diagnostics& diagnostics);

/// What a use is for: the dish, the meal, or just "use".
std::string purpose(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                    const resolve::Use& use);

/// What has to be remembered: thawing, soaking, marinating, ripening, freezing, using up.
std::vector<Reminder> reminders(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                                const purchase::Shopping& shopping,
                                const std::vector<Cooking>& cooking,
                                const std::vector<Freezing>& freezing);

/// What is cooked on each day for its meals, by one pair of hands on what the household has: as
/// late as that allows. A dish that is ready long before its meal is told.
std::vector<Cooking> cooking(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                             text::Diagnostics& diagnostics);

std::vector<Label> labels(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                          const std::vector<Freezing>& freezing);

/// Hands-on minutes of a step when the recipe is made `times` times: more food takes longer, less
/// does not take less than once. Common practice, no source.
int hands_on(const kitchen::MethodStep& step, const Rational& times);

} // namespace manciple::prep
