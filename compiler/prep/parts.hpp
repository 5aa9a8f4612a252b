#pragma once

#include "prep/prep.hpp"
#include "scheduling/project.hpp"

namespace manciple::prep {

/// The work of the sessions, scheduled. Ready-to-eat food is cut before raw meat is portioned, raw
/// poultry comes last.
std::vector<SessionPlan> sessions(const kitchen::Kitchen& kitchen,
                                  const resolve::Resolved& resolved,
                                  const purchase::Shopping& shopping,
                                  text::Diagnostics& diagnostics);

/// What a use is for: the dish, the meal, or just "use".
std::string purpose(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                    const resolve::Use& use);

/// What has to be remembered: thawing, soaking, marinating, ripening, freezing, using up.
std::vector<Reminder> reminders(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                                const purchase::Shopping& shopping,
                                const std::vector<Cooking>& cooking);

/// What is cooked on each day for its meals, by one pair of hands on what the household has: as
/// late as that allows. A dish that is ready long before its meal is told.
std::vector<Cooking> cooking(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                             text::Diagnostics& diagnostics);

/// Work on an appliance at a temperature.
struct Heat {
  std::string_view appliance;
  std::optional<int> fahrenheit;
};

/// An appliance that takes several things at once (an oven with two shelves) has one temperature:
/// each pair of a project's activities that needs two of them, more than 20 F apart, gets a
/// resource that only one can have. `heat` is by activity.
void keep_temperatures_apart(scheduling::Project& project, const std::vector<Heat>& heat,
                             const std::vector<kitchen::Appliance>& appliances);

std::vector<Label> labels(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                          const purchase::Shopping& shopping);

/// Hands-on minutes of a step when the recipe is made `times` times: more food takes longer, less
/// does not take less than once. Common practice, no source.
int hands_on(const kitchen::MethodStep& step, const Rational& times);

/// A bag of what is frozen.
struct Bag {
  Rational amount;                ///< as purchased, in the food's basis
  std::optional<std::size_t> use; ///< the first that it comes out for; none for what is left over
  Date frozen_on;                 ///< it goes into the freezer then
};

/// What goes into the freezer at home of a line or of a lot on hand, in meal-size bags: one for
/// each use, a week's for a staple, one for what is left over.
struct Freezing {
  foods::FoodId food{};
  std::optional<Date> bought; ///< none: it was on hand
  std::vector<Bag> bags;

  [[nodiscard]] std::vector<Bag> on(Date day) const;
};

/// The lines in their order, then the lots.
std::vector<Freezing> freezing(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                               const purchase::Shopping& shopping);

/// Of all of them together.
Rational amount_of(const std::vector<Bag>& bags);

/// What is done with what goes into the freezer in these bags: meat is portioned, citrus juiced.
std::string into_freezer(const kitchen::Kitchen& kitchen, const foods::Food& food,
                         const std::vector<Bag>& bags);

} // namespace manciple::prep
