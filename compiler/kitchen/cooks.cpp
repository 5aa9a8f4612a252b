#include "kitchen/cooks.hpp"

#include "kitchen/kitchen.hpp"

#include <algorithm>

namespace manciple::kitchen {
namespace {

// Those whom rules name for a meal, in their order, each once.
std::vector<Cook> named(const std::vector<CookRule>& rules, const Plan& plan, const Meal& meal) {
  std::vector<Cook> out;
  for (const CookRule& rule : rules) {
    if (!rule.holds(meal.date, meal.slot)) {
      continue;
    }
    for (const std::string& who : rule.who) {
      const bool twice =
          std::any_of(out.begin(), out.end(), [&](const Cook& other) { return other.name == who; });
      if (!twice && !plan.is_away(who, meal)) {
        out.push_back({who, rule.from.value_or(0), rule.until.value_or(text::minutes_a_day)});
      }
    }
  }
  return out;
}

bool says(const std::vector<CookRule>& rules, const Meal& meal) {
  return std::any_of(rules.begin(), rules.end(),
                     [&](const CookRule& rule) { return rule.holds(meal.date, meal.slot); });
}

} // namespace

bool CookRule::holds(text::Date date, std::string_view slot) const {
  const bool day = dates.empty() ? on.at(std::chrono::weekday(date).c_encoding())
                                 : std::find(dates.begin(), dates.end(), date) != dates.end();
  return day && (slots.empty() || std::find(slots.begin(), slots.end(), slot) != slots.end());
}

int Shift::hands(int minute) const {
  const auto there = std::count_if(cooks.begin(), cooks.end(), [&](const Cook& cook) {
    return cook.from <= minute && minute < cook.until;
  });
  return std::max(1, static_cast<int>(there));
}

std::vector<Shift> shifts(const Kitchen& kitchen, text::Date date) {
  const Plan& plan = *kitchen.plan;
  std::vector<std::pair<int, const Meal*>> meals;
  for (const Meal& meal : plan.meals) {
    if (meal.date == date && !meal.dishes.empty()) {
      meals.emplace_back(kitchen.household.slot(meal.slot)->hour(date), &meal);
    }
  }
  // A day without meals has work all the same, for the next one.
  const Meal none{date, {}, {}, {}};
  if (meals.empty()) {
    meals.emplace_back(text::minutes_a_day, &none);
  }
  std::stable_sort(meals.begin(), meals.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  std::vector<Shift> out;
  int from = 0;
  for (const auto& [hour, meal] : meals) {
    const bool by_plan = says(plan.cooks, *meal);
    std::vector<Cook> cooks = named(by_plan ? plan.cooks : kitchen.household.cooks, plan, *meal);
    if (hour > from || out.empty()) {
      out.push_back({from, hour, std::move(cooks)});
      from = hour;
    }
  }
  out.back().until = text::minutes_a_day;
  return out;
}

} // namespace manciple::kitchen
