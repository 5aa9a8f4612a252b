#include "prep/prep.hpp"

#include "prep/eaten_hot.hpp"
#include "prep/errors.hpp"
#include "prep/freezing.hpp"
#include "prep/labels.hpp"
#include "prep/parts.hpp"
#include "prep/reminders.hpp"
#include "prep/who_cooks.hpp"

#include <fmt/format.h>

namespace manciple::prep {
namespace {

void check_packed(const kitchen::Kitchen& kitchen, text::Diagnostics& diagnostics) {
  for (const kitchen::Meal& meal : kitchen.plan->meals) {
    for (const kitchen::Dish& dish : meal.dishes) {
      const kitchen::RecipeId* id = dish.what.recipe();
      if (id == nullptr || !resolve::is_packed(kitchen, meal) ||
          !goes_hot_to_the_table(kitchen, kitchen.recipe(*id))) {
        continue;
      }
      diagnostics.warning(
          errors::hot_and_packed, dish.at,
          fmt::format("{} is eaten hot, but {} on {} is packed and eaten cold",
                      kitchen.recipe(*id).name, meal.slot, text::print_day(meal.date)),
          "choose a dish that is eaten cold, or say in the household's file on which days the meal "
          "is packed");
    }
  }
}

} // namespace

Prep prepare(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
             const purchase::Shopping& shopping, text::Diagnostics& diagnostics) {
  Prep out;
  check_packed(kitchen, diagnostics);
  const std::vector<Freezing> frozen = freezing(kitchen, resolved, shopping);
  text::Diagnostics said;
  out.sessions = sessions(kitchen, resolved, frozen, {}, said);
  if (const Meals meals = meals_in_the_way(kitchen, resolved, out.sessions); !meals.empty()) {
    said = {};
    out.sessions = sessions(kitchen, resolved, frozen, meals, said);
  }
  for (const text::Diagnostic& one : said.all()) {
    diagnostics.warning(one.code, one.at, one.what, one.fix);
  }
  out.cooking = cooking(kitchen, resolved, out.sessions, diagnostics);
  name_cooks(kitchen, resolved, out.sessions, out.cooking, diagnostics);
  out.reminders = reminders(kitchen, resolved, shopping, out.cooking, frozen);
  out.labels = labels(kitchen, resolved, frozen);
  return out;
}

} // namespace manciple::prep
