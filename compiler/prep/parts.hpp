#pragma once

#include "prep/freezing.hpp"
#include "prep/placing.hpp"

#include <map>
#include <optional>
#include <string>

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

/// Nobody starts before the one for what is eaten the same day; what stands overnight is begun at
/// the other, at the latest. Minutes from midnight. Common practice, no source.
inline constexpr int getting_up = 7 * 60;
inline constexpr int evening = 20 * 60;

/// When something is begun that has to stand, soak or marinate.
struct Begun {
  int days_before = 0;
  int clock = 0;
};
/// By day: at the moment itself (minutes from midnight of the day; before it if negative), or else
/// in the evening before that.
Begun begun_by_day(int moment);

/// What a use is for: the dish or the meal; nothing of what is eaten when anybody likes.
std::optional<std::string> purpose(const kitchen::Kitchen& kitchen,
                                   const resolve::Resolved& resolved, const resolve::Use& use);

/// How much a part of a batch is: in the recipe's own measure where it goes into something else.
std::string amount_made(const kitchen::Recipe& recipe, const Rational& times, bool as_dish);

/// What has to be remembered: thawing, soaking, marinating, ripening, freezing, using up.
std::vector<Reminder> reminders(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                                const purchase::Shopping& shopping,
                                const std::vector<Cooking>& cooking,
                                const std::vector<Freezing>& freezing);

/// What is cooked on each day for its meals, by one pair of hands on what the household has: as
/// late as that allows. A dish that is ready long before its meal is told.
std::vector<Cooking> cooking(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                             const std::vector<SessionPlan>& sessions,
                             text::Diagnostics& diagnostics);

std::vector<BoxLabel> labels(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                             const std::vector<Freezing>& freezing);

} // namespace manciple::prep
