#include "kitchen/table.hpp"

#include <algorithm>

namespace manciple::kitchen {
namespace {

// Absences and visits alike: from a day to a day, at some meals or at all.
template <typename Stay>
bool covers_meal(const Stay& stay, const Meal& meal) {
  return stay.from <= meal.date && meal.date <= stay.until &&
         (stay.slots.empty() ||
          std::find(stay.slots.begin(), stay.slots.end(), meal.slot) != stay.slots.end());
}

bool holds(const std::vector<std::string>& names, const std::string& name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

} // namespace

bool Absence::covers(const Meal& meal) const {
  return covers_meal(*this, meal);
}

bool Guest::covers(const Meal& meal) const {
  return covers_meal(*this, meal);
}

text::Date Plan::first_day() const {
  text::Date first = from;
  for (const Trip& trip : trips) {
    first = std::min(first, trip.date);
  }
  return first;
}

bool Plan::is_away(std::string_view who, const Meal& meal) const {
  return std::any_of(away.begin(), away.end(), [&](const Absence& absence) {
    return absence.who == who && absence.covers(meal);
  });
}

std::vector<const Person*> eaters(const Household& household, const Plan& plan, const Meal& meal,
                                  const Dish& dish) {
  std::vector<const Person*> out;
  const auto has = [&](const Person& person) {
    return (dish.eaten_by.empty() || holds(dish.eaten_by, person.name)) &&
           !holds(dish.not_by, person.name);
  };
  for (const Person& person : household.people) {
    if (has(person) && !plan.is_away(person.name, meal)) {
      out.push_back(&person);
    }
  }
  for (const Guest& guest : plan.guests) {
    if (has(guest.person) && guest.covers(meal)) {
      out.push_back(&guest.person);
    }
  }
  return out;
}

Rational portion(const Person& person, const Meal& meal, const Dish& dish) {
  if (const auto said = dish.portions.find(person.name); said != dish.portions.end()) {
    return said->second * person.heads;
  }
  const auto appetite = person.appetite.find(meal.slot);
  return appetite == person.appetite.end() ? person.portion
                                           : Rational(person.portion * appetite->second);
}

} // namespace manciple::kitchen
