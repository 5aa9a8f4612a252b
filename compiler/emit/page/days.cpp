#include "emit/day_words.hpp"
#include "emit/page/html.hpp"
#include "emit/page/parts.hpp"
#include "emit/words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace manciple::emit::page {
namespace {

using text::Date;

// Something of a day, in the order of the clock; what has no time comes first.
struct Entry {
  int clock = -1; // minutes from midnight
  std::string what;
};

std::vector<Entry> entries(const Compiled& compiled, Date day) {
  std::vector<Entry> out;
  const auto& plan = compiled.plan();
  for (std::size_t v = 0; v < compiled.shopping.visits.size(); ++v) {
    const purchase::StopMade& visit = compiled.shopping.visits[v];
    if (visit.date == day) {
      out.push_back({-1, fmt::format("Shop at <a href=#stop{}>{}</a>, home by {}", v,
                                     name(compiled.kitchen.shop(visit.shop).name),
                                     text::print_clock(plan.trips[visit.trip].home))});
    }
  }
  for (const prep::SessionPlan& session : compiled.prep.sessions) {
    const kitchen::Session& window = plan.sessions[session.session];
    if (window.date == day) {
      out.push_back(
          {window.from,
           fmt::format("<a href=#session{}>Prep session</a>, {} tasks, done by {}", session.session,
                       session.tasks.size(), clock_in(window, session.length))});
    }
  }
  for (const prep::Reminder& reminder : compiled.prep.reminders) {
    if (reminder.date == day) {
      out.push_back(
          {reminder.clock.value_or(-1), fmt::format("<b class=do>{}</b> <span>{}</span>",
                                                    word(reminder.kind), escape(reminder.what))});
    }
  }
  for (const prep::Cooking& cook : compiled.prep.cooking) {
    if (cook.date == day && is_work(compiled, cook)) {
      const resolve::Making& making = compiled.resolved.making(cook.making);
      const kitchen::Recipe& recipe = compiled.kitchen.recipe(making.recipe);
      const std::string safe = safe_temperature(compiled, recipe);
      out.push_back(
          {cook.start,
           fmt::format(
               "<b class=do>{}</b> {}, {}{}, {} at {}{}{}", cook.ahead ? "begin" : "cook",
               name(recipe.name), how_much(compiled, making),
               cook.hands_on > 0 ? ", " + text::print_minutes(cook.hands_on) + " hands-on" : "",
               cook.ahead ? "done" : "ready", text::print_clock(cook.done),
               safe.empty() || cook.ahead ? "" : "; " + escape(safe), escape(goes_first(cook)))});
      for (const auto& [clock, oven] : ovens_turned_on(compiled, cook)) {
        out.push_back({clock, fmt::format("<b class=do>heat</b> {}", escape(oven))});
      }
    }
  }
  for (std::size_t m = 0; m < plan.meals.size(); ++m) {
    const kitchen::Meal& meal = plan.meals[m];
    if (meal.date == day) {
      const int at = compiled.kitchen.household.slot(meal.slot)->hour(meal.date);
      for (std::size_t d = 0; d < meal.dishes.size(); ++d) {
        if (const auto how = how_to_reheat(compiled, {m, d})) {
          out.push_back({at, fmt::format("<b class=do>reheat</b> {}: {}",
                                         name(dish_name(compiled, meal.dishes[d])), name(*how))});
        }
      }
      out.push_back({at, fmt::format("<b>{}</b> {}", escape(meal.slot),
                                     escape(emit::dishes_of(compiled, m)))});
    }
  }
  std::stable_sort(out.begin(), out.end(),
                   [](const Entry& a, const Entry& b) { return a.clock < b.clock; });
  return out;
}

} // namespace

std::string days_section(const Compiled& compiled) {
  const auto& plan = compiled.plan();
  std::string out = "<section id=days aria-labelledby=days-h><h2 id=days-h>Day by day</h2>\n<div "
                    "class=days>\n";
  const Date first = first_day_to_do(compiled);
  for (Date day = first; day <= plan.until; day += std::chrono::days(1)) {
    const std::vector<Entry> all = entries(compiled, day);
    if (all.empty()) {
      continue;
    }
    out += fmt::format("<article id=d{}><h3>{}</h3><ul>\n", text::print_date(day),
                       text::print_day(day));
    for (const Entry& entry : all) {
      out += fmt::format("<li>{}<span>{}</span></li>\n",
                         entry.clock < 0 ? "<span class=when></span>"
                                         : "<time>" + text::print_clock(entry.clock) + "</time>",
                         entry.what);
    }
    out += "</ul></article>\n";
  }
  return out + "</div></section>\n";
}

std::string menu_section(const Compiled& compiled) {
  const auto& plan = compiled.plan();
  std::string out =
      "<section id=menu aria-labelledby=menu-h><h2 id=menu-h>Menu</h2>\n<ol class=month>\n";
  std::size_t m = 0;
  for (Date day = plan.from; day <= plan.until; day += std::chrono::days(1)) {
    // The first day stands in its column.
    const std::string column =
        day == plan.from
            ? fmt::format(" style=--col:{}", compiled.kitchen.household.day_of_week(day))
            : "";
    const bool any = m < plan.meals.size() && plan.meals[m].date == day;
    if (any) {
      out += fmt::format("<li{}><h3><a href=#d{}>{}</a></h3><dl>", column, text::print_date(day),
                         text::print_day(day));
    } else {
      out += fmt::format("<li{}><h3>{}</h3>", column, text::print_day(day));
    }
    for (; m < plan.meals.size() && plan.meals[m].date == day; ++m) {
      out += fmt::format("<dt>{}</dt>", escape(plan.meals[m].slot));
      for (const kitchen::Dish& dish : plan.meals[m].dishes) {
        out += fmt::format("<dd>{}{}</dd>",
                           dish.kind == kitchen::Dish::Kind::leftovers ? "leftovers of " : "",
                           name(dish_name(compiled, dish)));
      }
    }
    out += any ? "</dl></li>\n" : "</li>\n";
  }
  return out + "</ol></section>\n";
}

} // namespace manciple::emit::page
