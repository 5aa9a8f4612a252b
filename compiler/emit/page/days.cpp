#include "emit/day_words.hpp"
#include "emit/page/html.hpp"
#include "emit/page/parts.hpp"
#include "emit/words.hpp"
#include "text/words.hpp"

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

// A list of them under a heading, or nothing. With a box to tick where hands do it.
std::string group(std::string_view kind, std::string_view head, std::vector<Entry> entries) {
  if (entries.empty()) {
    return {};
  }
  std::stable_sort(entries.begin(), entries.end(),
                   [](const Entry& a, const Entry& b) { return a.clock < b.clock; });
  const bool boxes = kind != "eat";
  std::string out = fmt::format("<div class={}><h4>{}</h4><ul>\n", kind, head);
  for (const Entry& entry : entries) {
    const std::string time =
        entry.clock < 0
            ? "<time></time>"
            : fmt::format("<time>{}</time>", text::print_clock(entry.clock % text::minutes_a_day));
    out += boxes ? fmt::format("<li><label><input type=checkbox>{}<span>{}</span></label></li>\n",
                               time, entry.what)
                 : fmt::format("<li>{}<span>{}</span></li>\n", time, entry.what);
  }
  return out + "</ul></div>\n";
}

std::string mark_of(prep::Reminder::Kind kind) {
  using Kind = prep::Reminder::Kind;
  switch (kind) {
  case Kind::thaw:
  case Kind::freeze:
    return place_mark(foods::Place::freezer) + " ";
  case Kind::leftovers:
  case Kind::marinate:
  case Kind::use_up:
    return place_mark(foods::Place::fridge) + " ";
  case Kind::soak:
  case Kind::ripen:
    return place_mark(foods::Place::pantry) + " ";
  case Kind::pack:
    return {};
  }
  return {};
}

std::vector<Entry> to_take(const Compiled& compiled, Date day) {
  std::vector<Entry> out;
  for (const prep::Reminder& reminder : compiled.prep.reminders) {
    if (reminder.date == day) {
      // What begins with its own verb ("Soak 3 lb of beans") needs no other one.
      const bool use_up = reminder.kind == prep::Reminder::Kind::use_up;
      out.push_back({reminder.clock.value_or(-1),
                     fmt::format("{}{}{}", mark_of(reminder.kind), use_up ? "Use up: " : "",
                                 escape(reminder.what))});
    }
  }
  return out;
}

std::vector<Entry> to_cook(const Compiled& compiled, Date day) {
  std::vector<Entry> out;
  for (const prep::SessionPlan& session : compiled.prep.sessions) {
    const kitchen::Session& window = compiled.plan().sessions[session.session];
    if (window.date == day) {
      out.push_back(
          {window.from,
           fmt::format(
               "<a href=#session{}>Prep session</a><small>{} tasks for {} {}, done by {}</small>",
               session.session, session.tasks.size(), window.cooks,
               window.cooks == 1 ? "cook" : "cooks", clock_in(window, session.length))});
    }
  }
  for (const prep::Cooking& cook : compiled.prep.cooking) {
    if (cook.date != day || !is_work(compiled, cook)) {
      continue;
    }
    const resolve::Making& making = compiled.resolved.making(cook.making);
    const std::string safe = safe_temperature(compiled, compiled.kitchen.recipe(making.recipe));
    out.push_back(
        {cook.start,
         fmt::format(
             "{}{}<small>{}{}{}, {} at {}{}{}</small>", cook.ahead ? "Begin " : "",
             dish_link(compiled, making), cook.cooks.empty() ? "" : name(cooks_of(cook)) + ": ",
             how_much(compiled, making),
             cook.hands_on > 0 ? ", " + text::print_minutes(cook.hands_on) + " of work" : "",
             cook.ahead ? "done" : "ready", text::print_clock(cook.done % text::minutes_a_day),
             safe.empty() || cook.ahead ? "" : ". " + heat_mark() + " " + escape(safe),
             escape(goes_first(cook)))});
    for (const auto& [clock, oven] : ovens_turned_on(compiled, cook)) {
      out.push_back({clock, fmt::format("{} Heat {}", heat_mark(), escape(oven))});
    }
  }
  return out;
}

std::vector<Entry> to_eat(const Compiled& compiled, Date day) {
  std::vector<Entry> out;
  const auto& plan = compiled.plan();
  for (std::size_t m = 0; m < plan.meals.size(); ++m) {
    const kitchen::Meal& meal = plan.meals[m];
    if (meal.date != day) {
      continue;
    }
    std::string what =
        fmt::format("<b>{}</b> {}", escape(meal.slot), escape(emit::dishes_of(compiled, m)));
    for (std::size_t d = 0; d < meal.dishes.size(); ++d) {
      if (const auto how = how_to_reheat(compiled, {m, d})) {
        what += fmt::format("<small>{} {}: {}</small>", heat_mark(),
                            name(dish_name(compiled, meal.dishes[d])), name(*how));
      }
    }
    out.push_back({compiled.kitchen.household.slot(meal.slot)->hour(meal.date), std::move(what)});
  }
  return out;
}

// "Signe is here; Joost is away."
std::string who(const Compiled& compiled, Date day) {
  const auto& plan = compiled.plan();
  std::vector<std::string> parts;
  const auto add = [&](const std::string& person, const std::vector<std::string>& slots,
                       bool here) {
    const std::string for_some = slots.empty() ? "" : " for " + escape(text::join(slots, " and "));
    parts.push_back(fmt::format("{} is {}{}", name(person), here ? "with you" : "away", for_some));
  };
  for (const kitchen::Guest& guest : plan.guests) {
    if (guest.from <= day && day <= guest.until) {
      add(guest.person.name, guest.slots, true);
    }
  }
  for (const kitchen::Absence& absence : plan.away) {
    if (absence.from <= day && day <= absence.until) {
      add(absence.who, absence.slots, false);
    }
  }
  return parts.empty() ? "" : "<p class=who>" + text::join(parts, "; ") + ".</p>";
}

// Where to shop, as a way to the stops.
std::string to_shop(const Compiled& compiled, Date day) {
  std::string out;
  const auto& visits = compiled.shopping.visits;
  for (std::size_t v = 0; v < visits.size(); ++v) {
    if (visits[v].date == day) {
      out += fmt::format("{}<a href=#stop{}>{}</a>", out.empty() ? "" : ", ", v,
                         name(compiled.kitchen.shop(visits[v].shop).name));
    }
  }
  return out.empty() ? "" : "<p class=to-shop>Shop at " + out + ".</p>\n";
}

} // namespace

std::string days_section(const Compiled& compiled) {
  const auto& plan = compiled.plan();
  std::string out = "<section id=days aria-labelledby=days-h><h2 id=days-h>Day by day</h2>\n<div "
                    "class=days>\n";
  const Date first = first_day_to_do(compiled);
  for (Date day = first; day <= plan.until; day += std::chrono::days(1)) {
    const std::string content =
        to_shop(compiled, day) + group("take", "Take out and put away", to_take(compiled, day)) +
        group("cook", "Cook", to_cook(compiled, day)) + group("eat", "Eat", to_eat(compiled, day));
    if (content.empty()) {
      continue;
    }
    out += fmt::format("<article class=day id=d{}>{}</article>\n", text::print_date(day),
                       folded("<h3>" + day_head(day) + "</h3>" + who(compiled, day) + content));
  }
  return out + "</div></section>\n";
}

namespace {

std::string menu_day(Date day) {
  return fmt::format("<b class=num>{}</b> {}",
                     static_cast<unsigned>(std::chrono::year_month_day(day).day()),
                     text::short_weekday(day));
}

} // namespace

std::string menu_section(const Compiled& compiled) {
  const auto& plan = compiled.plan();
  std::string out = "<ol class=month>\n";
  std::size_t m = 0;
  for (Date day = plan.from; day <= plan.until; day += std::chrono::days(1)) {
    // The first day stands in its column.
    const std::string column =
        day == plan.from
            ? fmt::format(" style=--col:{}", compiled.kitchen.household.day_of_week(day))
            : "";
    const bool any = m < plan.meals.size() && plan.meals[m].date == day;
    if (any) {
      out += fmt::format("<li{} data-date={d}><h3><a href=#{d}>{}</a></h3><dl>", column,
                         menu_day(day), fmt::arg("d", text::print_date(day)));
    } else {
      out += fmt::format("<li{}><h3>{}</h3>", column, menu_day(day));
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
  return "<section id=menu aria-labelledby=menu-h><h2 id=menu-h>Menu</h2>\n" +
         folded(out + "</ol>") + "</section>\n";
}

} // namespace manciple::emit::page
