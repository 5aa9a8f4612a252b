// The menu, the prep sheets, the days and the labels.
#include "emit/emit.hpp"
#include "emit/words.hpp"
#include "foods/convert.hpp"
#include "measure/print.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <map>

namespace manciple::emit {

const std::string_view caution = "Keeping times and temperatures are guidance from published "
                                 "sources. The label on the package and your local food "
                                 "authority come first; when in doubt, throw it out. Diets for "
                                 "medical reasons and allergies belong in the hands of a "
                                 "professional.";

namespace {

using measure::Rational;

// "4.5" servings; a whole number stays whole.
std::string servings_of(const Rational& servings) {
  return measure::print_decimal(servings, 1);
}

std::string_view word(prep::Reminder::Kind kind) {
  using Kind = prep::Reminder::Kind;
  switch (kind) {
  case Kind::thaw:
    return "thaw";
  case Kind::soak:
    return "soak";
  case Kind::marinate:
    return "marinate";
  case Kind::ripen:
    return "ripen";
  case Kind::freeze:
    return "freeze";
  case Kind::use_up:
    return "use up";
  case Kind::leftovers:
    return "keep";
  }
  return {};
}

// The lowest safe temperature of what a recipe cooks, if any of it has one.
std::string safe_temperature(const Compiled& compiled, const kitchen::Recipe& recipe) {
  const foods::Food* hottest = nullptr;
  for (const auto& ingredient : recipe.ingredients) {
    const foods::FoodId* id = ingredient.food();
    if (id != nullptr && compiled.kitchen.food(*id).safe_at) {
      const foods::Food& food = compiled.kitchen.food(*id);
      if (hottest == nullptr ||
          food.safe_at->value.fahrenheit > hottest->safe_at->value.fahrenheit) {
        hottest = &food;
      }
    }
  }
  if (hottest == nullptr) {
    return {};
  }
  const auto& safe = hottest->safe_at->value;
  return fmt::format("{} F in the middle{} for {}", safe.fahrenheit,
                     safe.rest_minutes > 0 ? fmt::format(", then {} min rest,", safe.rest_minutes)
                                           : "",
                     hottest->name);
}

// What there is to do on a day, a line each, in the order of kinds.
std::vector<std::string> day_lines(const Compiled& compiled, text::Date day) {
  std::vector<std::string> out;
  for (const purchase::StopMade& visit : compiled.shopping.visits) {
    if (visit.date == day) {
      out.push_back(fmt::format("shop at {}", compiled.kitchen.shop(visit.shop).name));
    }
  }
  for (const prep::SessionPlan& session : compiled.prep.sessions) {
    const kitchen::Session& window = compiled.plan().sessions[session.session];
    if (window.date == day) {
      out.push_back(fmt::format("prep session from {}, {} tasks", text::print_clock(window.from),
                                session.tasks.size()));
    }
  }
  for (const prep::Reminder& reminder : compiled.prep.reminders) {
    if (reminder.date == day) {
      out.push_back(fmt::format("{}{}: {}", word(reminder.kind),
                                reminder.clock ? " at " + text::print_clock(*reminder.clock) : "",
                                reminder.what));
    }
  }
  for (std::size_t m = 0; m < compiled.plan().meals.size(); ++m) {
    const kitchen::Meal& meal = compiled.plan().meals[m];
    for (const kitchen::Dish& dish : meal.dishes) {
      if (meal.date == day && dish.kind == kitchen::Dish::Kind::leftovers) {
        const kitchen::Recipe* recipe =
            dish.what.recipe() ? &compiled.kitchen.recipe(*dish.what.recipe()) : nullptr;
        // USDA FSIS, "Leftovers and Food Safety": reheat to 165 F.
        out.push_back(fmt::format("reheat {} for {}: {}", dish_name(compiled, dish), meal.slot,
                                  recipe == nullptr || recipe->reheat.empty()
                                      ? "what is eaten hot, to 165 F in the middle"
                                      : recipe->reheat));
      }
    }
  }
  for (const prep::Cooking& cook : compiled.prep.cooking) {
    if (cook.date == day && cook.ready > cook.start) {
      const resolve::Making& making = compiled.resolved.making(cook.making);
      const kitchen::Recipe& recipe = compiled.kitchen.recipe(making.recipe);
      const std::string safe = safe_temperature(compiled, recipe);
      out.push_back(fmt::format("cook {} from {} ({} hands-on), {} servings{}", recipe.name,
                                text::print_clock(cook.start), text::print_minutes(cook.hands_on),
                                servings_of(making.times * recipe.serves),
                                safe.empty() ? "" : "; " + safe));
    }
  }
  return out;
}

// The dishes of a meal with their servings: "Minestrone for 3.5; leftovers of Chili for 1".
std::string dishes_of(const Compiled& compiled, std::size_t m) {
  const kitchen::Meal& meal = compiled.plan().meals[m];
  std::vector<std::string> dishes;
  for (std::size_t d = 0; d < meal.dishes.size(); ++d) {
    const kitchen::Dish& dish = meal.dishes[d];
    std::string name = dish_name(compiled, dish);
    if (dish.kind == kitchen::Dish::Kind::leftovers) {
      name = "leftovers of " + name;
    }
    if (dish.kind != kitchen::Dish::Kind::plain) {
      name += fmt::format(" for {}", servings_of(compiled.resolved.servings[m][d]));
    }
    dishes.push_back(std::move(name));
  }
  return text::join(dishes, "; ");
}

// What a batch is stored as: "; store 3 boxes: 4 cups (freezer), 4 cups (freezer), 2 cups
// (fridge)".
std::string boxes_of(const Compiled& compiled, resolve::MakingId making) {
  std::map<std::pair<foods::Place, std::string>, int> boxes;
  int all = 0;
  for (const prep::Label& label : compiled.prep.labels) {
    if (label.making == making) {
      ++boxes[{label.place, label.amount}];
      ++all;
    }
  }
  std::vector<std::string> words;
  for (const auto& [box, count] : boxes) {
    words.push_back(fmt::format("{}{} ({})", count == 1 ? "" : fmt::format("{} x ", count),
                                box.second, foods::name(box.first)));
  }
  return words.empty() ? ""
                       : fmt::format("; store {} {}: {}", all, all == 1 ? "box" : "boxes",
                                     text::join(words, ", "));
}

// What one cook does, in order, and when the hands are free. What starts by itself stands with the
// first cook, who looks after it.
std::string cook_table(const prep::SessionPlan& session, const kitchen::Session& window,
                       std::size_t cook) {
  constexpr int worth_saying = 5; // minutes of free hands
  const auto clock = [&](int minutes) {
    return text::print_clock((window.from + minutes) % (24 * 60));
  };
  std::string out =
      fmt::format("\n### Cook {}\n\n| start | hands | then alone | on | what | for |\n"
                  "|---|---|---|---|---|---|\n",
                  cook + 1);
  const auto print = std::back_inserter(out);
  int free_at = 0;
  for (const prep::Task& task : session.tasks) {
    if (task.cook.value_or(0) != cook) {
      continue;
    }
    if (task.cook && task.start - free_at >= worth_saying) {
      fmt::format_to(print, "| {} | | | | hands free for {} | |\n", clock(free_at),
                     text::print_minutes(task.start - free_at));
    }
    free_at = task.cook ? task.start + task.hands_on : free_at;
    fmt::format_to(
        print, "| {} | {} | {} | {} | {} | {} |\n", clock(task.start),
        task.hands_on > 0 ? text::print_minutes(task.hands_on) : "",
        task.then > 0 ? fmt::format("until {}", clock(task.start + task.hands_on + task.then)) : "",
        task.appliance, escape_markdown(task.what), escape_markdown(task.purpose));
  }
  return out;
}

// A row of the drawing: a letter for the task that keeps it busy, a dot when it is free.
std::string bar(const prep::SessionPlan& session, int minutes_a_mark, std::size_t lane,
                const std::string& appliance) {
  std::string row(static_cast<std::size_t>((session.length + minutes_a_mark - 1) / minutes_a_mark),
                  '.');
  std::vector<int> free_at;
  for (std::size_t i = 0; i < session.tasks.size(); ++i) {
    const prep::Task& task = session.tasks[i];
    const bool hands = appliance.empty();
    if (hands ? task.cook != lane : task.appliance != appliance) {
      continue;
    }
    const int end = task.start + task.hands_on + (hands ? 0 : task.then);
    if (!hands) {
      // The first of several equal appliances that is free takes it.
      std::size_t at = 0;
      while (at < free_at.size() && free_at[at] > task.start) {
        ++at;
      }
      free_at.resize(std::max(free_at.size(), at + 1), 0);
      free_at[at] = end;
      if (at != lane) {
        continue;
      }
    }
    const char mark = static_cast<char>(i < 26 ? 'A' + static_cast<int>(i)
                                               : 'a' + static_cast<int>((i - 26) % 26));
    for (int t = task.start; t < end; t += 1) {
      row[static_cast<std::size_t>(t / minutes_a_mark)] = mark;
    }
  }
  return row;
}

} // namespace

std::string sessions_text(const Compiled& compiled) {
  std::string out;
  const auto print = std::back_inserter(out);
  for (const prep::SessionPlan& session : compiled.prep.sessions) {
    const kitchen::Session& window = compiled.plan().sessions[session.session];
    fmt::format_to(print, "{}, {} to {}: done by {}{}\n", text::print_day(window.date),
                   text::print_clock(window.from), text::print_clock(window.until),
                   text::print_clock((window.from + session.length) % (24 * 60)),
                   session.length == session.bound ? " (no order of work is faster)" : "");
    for (std::size_t i = 0; i < session.tasks.size(); ++i) {
      const prep::Task& task = session.tasks[i];
      const char mark = static_cast<char>(i < 26 ? 'A' + static_cast<int>(i)
                                                 : 'a' + static_cast<int>((i - 26) % 26));
      fmt::format_to(print, "  {} {} {:<7} {}{}\n", mark,
                     text::print_clock((window.from + task.start) % (24 * 60)),
                     task.cook ? fmt::format("cook {}", *task.cook + 1) : "alone", task.what,
                     task.then > 0 ? fmt::format(" (then {} alone)", text::print_minutes(task.then))
                                   : "");
    }
    constexpr int minutes_a_mark = 5;
    fmt::format_to(print, "  one mark is {} minutes\n", minutes_a_mark);
    for (std::size_t c = 0; c < static_cast<std::size_t>(window.cooks); ++c) {
      fmt::format_to(print, "  {:<16} {}\n", fmt::format("cook {}", c + 1),
                     bar(session, minutes_a_mark, c, ""));
    }
    for (const kitchen::Appliance& appliance : compiled.kitchen.household.appliances) {
      for (std::size_t n = 0; n < static_cast<std::size_t>(appliance.count); ++n) {
        const std::string row = bar(session, minutes_a_mark, n, appliance.name);
        if (row.find_first_not_of('.') != std::string::npos) {
          fmt::format_to(print, "  {:<16} {}\n",
                         appliance.count > 1 ? fmt::format("{} {}", appliance.name, n + 1)
                                             : appliance.name,
                         row);
        }
      }
    }
    out += "\n";
  }
  return out + fmt::format("{}\n", caution);
}

std::string menu_markdown(const Compiled& compiled) {
  const auto& plan = compiled.plan();
  std::string out = fmt::format("# Menu: {}\n", escape_markdown(plan.name));
  const auto print = std::back_inserter(out);
  std::optional<text::Date> day;
  for (std::size_t m = 0; m < plan.meals.size(); ++m) {
    const kitchen::Meal& meal = plan.meals[m];
    if (day != meal.date) {
      day = meal.date;
      fmt::format_to(print, "\n## {}\n\n", text::print_day(meal.date));
    }
    fmt::format_to(print, "- {}: {}\n", meal.slot, escape_markdown(dishes_of(compiled, m)));
  }
  return out;
}

std::string prep_markdown(const Compiled& compiled) {
  const auto& plan = compiled.plan();
  std::string out = fmt::format("# Prep sessions: {}\n", escape_markdown(plan.name));
  const auto print = std::back_inserter(out);
  for (const prep::SessionPlan& session : compiled.prep.sessions) {
    const kitchen::Session& window = plan.sessions[session.session];
    fmt::format_to(print, "\n## {}, {} to {}\n\nDone by {}, {} {}; {} of hands-on work.\n\n",
                   text::print_day(window.date), text::print_clock(window.from),
                   text::print_clock(window.until),
                   text::print_clock((window.from + session.length) % (24 * 60)), window.cooks,
                   window.cooks == 1 ? "cook" : "cooks", [&] {
                     int sum = 0;
                     for (const prep::Task& task : session.tasks) {
                       sum += task.hands_on;
                     }
                     return text::print_minutes(sum);
                   }());
    for (const resolve::Making& making : compiled.resolved.makings) {
      if (making.session == session.session) {
        const kitchen::Recipe& recipe = compiled.kitchen.recipe(making.recipe);
        const std::string safe = safe_temperature(compiled, recipe);
        fmt::format_to(
            print, "- Make **{}**, {} times the recipe ({} servings), for {}{}\n",
            escape_markdown(recipe.name), measure::print_decimal(making.times, 2),
            servings_of(making.times * recipe.serves),
            escape_markdown(prep::purposes(compiled.kitchen, compiled.resolved, making.id)),
            (safe.empty() ? "" : "; " + safe) + boxes_of(compiled, making.id));
      }
    }
    for (std::size_t cook = 0; cook < static_cast<std::size_t>(window.cooks); ++cook) {
      out += cook_table(session, window, cook);
    }
    out += "\nCool what is hot in shallow boxes: from 135 F to 70 F within 2 hours, to 41 F within "
           "4 hours more (FDA Food Code 3-501.14). "
           "Wash boards, knives and hands after raw meat.\n";
  }
  return out + fmt::format("\n{}\n", caution);
}

std::string days_markdown(const Compiled& compiled) {
  const auto& plan = compiled.plan();
  std::string out = fmt::format("# Day by day: {}\n", escape_markdown(plan.name));
  // What has to thaw or soak for the first day begins before the plan does.
  const auto& reminders = compiled.prep.reminders;
  const text::Date first =
      reminders.empty() ? plan.from : std::min(plan.from, reminders.front().date);
  for (text::Date day = first; day <= plan.until; day += std::chrono::days(1)) {
    const std::vector<std::string> lines = day_lines(compiled, day);
    if (!lines.empty()) {
      fmt::format_to(std::back_inserter(out), "\n## {}\n\n", text::print_day(day));
    }
    for (const std::string& line : lines) {
      fmt::format_to(std::back_inserter(out), "- {}\n", escape_markdown(line));
    }
  }
  return out + fmt::format("\n{}\n", caution);
}

std::string day_text(const Compiled& compiled, text::Date day) {
  const auto& plan = compiled.plan();
  std::string out = fmt::format("{} {}\n", text::weekday_name(day), text::print_date(day));
  const auto print = std::back_inserter(out);
  for (const std::string& line : day_lines(compiled, day)) {
    fmt::format_to(print, "  {}\n", line);
  }
  for (std::size_t m = 0; m < plan.meals.size(); ++m) {
    const kitchen::Meal& meal = plan.meals[m];
    if (meal.date == day) {
      fmt::format_to(print, "  {} {}: {}\n",
                     text::print_clock(compiled.kitchen.household.slot(meal.slot)->at), meal.slot,
                     dishes_of(compiled, m));
    }
  }
  return out + fmt::format("{}\n", caution);
}

std::string labels_markdown(const Compiled& compiled) {
  std::string out =
      fmt::format("# Labels: {}\n\n| what | for | how much | made or bought | use by | "
                  "where | then |\n|---|---|---|---|---|---|---|\n",
                  escape_markdown(compiled.plan().name));
  for (const prep::Label& label : compiled.prep.labels) {
    fmt::format_to(std::back_inserter(out), "| {} | {} | {} | {} | {} | {} | {} |\n",
                   escape_markdown(label.name), escape_markdown(label.purpose),
                   escape_markdown(label.amount), text::print_day(label.made),
                   text::print_date(label.use_by), foods::name(label.place),
                   escape_markdown(label.reheat));
  }
  return out;
}

} // namespace manciple::emit
