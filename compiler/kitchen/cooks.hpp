#pragma once

#include "text/date.hpp"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace manciple::kitchen {

struct Kitchen;

/// Who cooks, on which days and for which meals.
struct CookRule {
  std::vector<std::string> who;
  std::array<bool, 7> on = {true, true, true, true, true, true, true}; ///< Sunday first
  std::vector<text::Date> dates;  ///< of a plan: these days, whatever weekday they are
  std::vector<std::string> slots; ///< empty: all meals
  std::optional<int> from;        ///< minutes from midnight from which they have time
  std::optional<int> until;

  [[nodiscard]] bool holds(text::Date date, std::string_view slot) const;
};

/// Somebody who cooks, and when they have time, in minutes from midnight.
struct Cook {
  std::string name;
  int from = 0;
  int until = text::minutes_a_day;
};

/// Those who cook while a meal is being made: from the meal before it on that day until it is on
/// the table; after the last one, its cooks.
struct Shift {
  int from = 0; ///< minutes from midnight
  int until = text::minutes_a_day;
  std::vector<Cook> cooks; ///< none: nobody says who

  /// How many have time at a minute of it; one where nobody says.
  [[nodiscard]] int hands(int minute) const;
};

/// The shifts of a day, one after the other. What the plan says of a meal goes before what the
/// household says; who is away from it does not cook it. Where all are, nobody is said.
std::vector<Shift> shifts(const Kitchen& kitchen, text::Date date);

} // namespace manciple::kitchen
