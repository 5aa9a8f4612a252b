// The menu, the prep sheets, the days and the labels.
#include "emit/day_words.hpp"
#include "emit/emit.hpp"
#include "emit/lanes.hpp"
#include "emit/words.hpp"
#include "measure/print.hpp"
#include "prep/purpose.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace manciple::emit {

const std::string_view caution = "Keeping times and temperatures are guidance from published "
                                 "sources. The label on the package and your local food "
                                 "authority come first; when in doubt, throw it out. Medical diets "
                                 "and allergies belong in the hands of a professional.";

namespace {

// "; 2 servings left over, good until Thu 4 Mar". Less than a serving is in left.md only.
std::string what_is_left(const Compiled& compiled, const resolve::Making& making) {
  if (making.left() * compiled.kitchen.recipe(making.recipe).serves < 1) {
    return "";
  }
  return fmt::format("; {} left over{}", left_of(compiled, making), good_until(making));
}

// Something of a day and when it is due, in minutes from midnight; what has no time comes first.
struct DayLine {
  int clock = -1;
  std::string what;
};

// What there is to do on a day, in the order of the clock.
std::vector<DayLine> day_lines(const Compiled& compiled, text::Date day) {
  std::vector<DayLine> out;
  for (const purchase::StopMade& visit : compiled.shopping.visits) {
    if (visit.date == day) {
      out.push_back({-1, fmt::format("shop at {}", compiled.kitchen.shop(visit.shop).name)});
    }
  }
  for (const prep::SessionPlan& session : compiled.prep.sessions) {
    const kitchen::Session& window = compiled.plan().sessions[session.session];
    if (window.date == day) {
      out.push_back(
          {window.from, fmt::format("prep session from {}, {} tasks",
                                    text::print_clock(window.from), session.tasks.size())});
    }
  }
  for (const prep::Reminder& reminder : compiled.prep.reminders) {
    if (reminder.date == day) {
      const std::string at = reminder.clock ? " at " + text::print_clock(*reminder.clock) : "";
      out.push_back({reminder.clock.value_or(-1),
                     fmt::format("{}{}: {}", word(reminder.kind), at, reminder.what)});
    }
  }
  for (const prep::Cooking& cook : compiled.prep.cooking) {
    if (cook.date == day && is_work(compiled, cook)) {
      const resolve::Making& making = compiled.resolved.making(cook.making);
      const kitchen::Recipe& recipe = compiled.kitchen.recipe(making.recipe);
      const std::string safe = safe_temperature(compiled, recipe);
      out.push_back(
          {cook.start,
           fmt::format("{}{} {} {}, {}{}{}{}", cook.cooks.empty() ? "" : cooks_of(cook) + ": ",
                       cook.ahead ? "begin" : "cook", recipe.name, cooking_time(compiled, cook),
                       how_much(compiled, making), safe.empty() || cook.ahead ? "" : "; " + safe,
                       goes_first(cook), cook.ahead ? "" : what_is_left(compiled, making))});
      for (const auto& [clock, oven] : ovens_turned_on(compiled, cook)) {
        out.push_back({clock, fmt::format("heat at {}: {}", text::print_clock(clock), oven)});
      }
    }
  }
  const auto& meals = compiled.plan().meals;
  for (std::size_t m = 0; m < meals.size(); ++m) {
    for (std::size_t d = 0; meals[m].date == day && d < meals[m].dishes.size(); ++d) {
      if (const auto how = how_to_reheat(compiled, {m, d})) {
        out.push_back({compiled.kitchen.household.slot(meals[m].slot)->hour(day),
                       fmt::format("reheat {} for {}: {}", dish_name(compiled, meals[m].dishes[d]),
                                   meals[m].slot, *how)});
      }
    }
  }
  std::stable_sort(out.begin(), out.end(), [](const DayLine& one, const DayLine& other) {
    return one.clock < other.clock;
  });
  return out;
}

// A letter for each task, in the order of their start.
char mark_of(std::size_t task) {
  return static_cast<char>(task < 26 ? 'A' + static_cast<int>(task)
                                     : 'a' + static_cast<int>((task - 26) % 26));
}

// What one cook does, in order, and when the hands are free. What starts by itself stands with the
// first cook, who looks after it.
std::string cook_table(const prep::SessionPlan& session, const kitchen::Session& window,
                       std::size_t cook) {
  constexpr int worth_saying = 5; // minutes of free hands
  const auto clock = [&](int minutes) { return clock_in(window, minutes); };
  std::string out = fmt::format("\n### {}\n\n| start | hands | then alone | on | what | for |\n"
                                "|---|---|---|---|---|---|\n",
                                escape_markdown(cook_heading(window, cook)));
  int free_at = 0;
  for (const prep::Task& task : session.tasks) {
    if (task.cook.value_or(0) != cook) {
      continue;
    }
    if (task.cook && task.start - free_at >= worth_saying) {
      out += fmt::format("| {} | | | | hands free for {} | |\n", clock(free_at),
                         text::print_minutes(task.start - free_at));
    }
    free_at = task.cook ? task.start + task.hands_on : free_at;
    out += fmt::format(
        "| {} | {} | {} | {} | {} | {} |\n", clock(task.start),
        task.hands_on > 0 ? text::print_minutes(task.hands_on) : "",
        task.then > 0 ? fmt::format("until {}", clock(task.start + task.hands_on + task.then)) : "",
        escape_markdown(task.appliance), escape_markdown(task.what), escape_markdown(task.purpose));
  }
  return out;
}

// A row of the drawing: the letter of the task that keeps it busy, a dot when it is free.
std::string bar(const prep::SessionPlan& session, int minutes_a_mark, const Lane& lane) {
  std::string row(static_cast<std::size_t>((session.length + minutes_a_mark - 1) / minutes_a_mark),
                  '.');
  for (const Block& block : lane.blocks) {
    for (int t = block.start; t < block.end; ++t) {
      row[static_cast<std::size_t>(t / minutes_a_mark)] = mark_of(block.task);
    }
  }
  return row;
}

} // namespace

std::string sessions_text(const Compiled& compiled) {
  std::string out;
  for (const prep::SessionPlan& session : compiled.prep.sessions) {
    const kitchen::Session& window = compiled.plan().sessions[session.session];
    out += fmt::format("{}, {} to {}: done by {}{}\n", text::print_day(window.date),
                       text::print_clock(window.from), text::print_clock(window.until),
                       clock_in(window, session.length),
                       session.length == session.bound ? " (no order of work is faster)" : "");
    for (std::size_t i = 0; i < session.tasks.size(); ++i) {
      const prep::Task& task = session.tasks[i];
      out += fmt::format(
          "  {} {} {:<7} {}{}\n", mark_of(i), clock_in(window, task.start),
          task.cook ? cook_name(window, *task.cook) : "alone", task.what,
          task.then > 0 ? fmt::format(" (then {} alone)", text::print_minutes(task.then)) : "");
    }
    constexpr int minutes_a_mark = 5;
    out += fmt::format("  one mark is {} minutes\n", minutes_a_mark);
    for (const Lane& lane : lanes(compiled, session)) {
      out += fmt::format("  {:<16} {}\n", lane.name, bar(session, minutes_a_mark, lane));
    }
    out += "\n";
  }
  return out + fmt::format("{}\n", caution);
}

namespace {

// By person: what the plan serves them of which the maker decides what is in it.
std::string labels_to_read(const Compiled& compiled) {
  std::map<std::string, std::map<std::string, std::vector<std::string>>> by_person;
  for (const resolve::LabelCheck& label : compiled.resolved.labels) {
    by_person[label.person][compiled.kitchen.food(label.food).name].push_back(label.what);
  }
  std::string out = by_person.empty() ? "" : "\n## Labels to read\n\n";
  for (const auto& [person, foods] : by_person) {
    std::vector<std::string> words;
    for (const auto& [food, what] : foods) {
      words.push_back(fmt::format("{} ({})", food, text::join(what, ", ")));
    }
    out += fmt::format("- for {}: {}\n", escape_markdown(person),
                       escape_markdown(text::join(words, "; ")));
  }
  return out;
}

} // namespace

std::string menu_markdown(const Compiled& compiled) {
  const auto& plan = compiled.plan();
  std::string out = fmt::format("# Menu: {}\n", escape_markdown(plan.name));
  std::optional<text::Date> day;
  for (std::size_t m = 0; m < plan.meals.size(); ++m) {
    const kitchen::Meal& meal = plan.meals[m];
    if (day != meal.date) {
      day = meal.date;
      out += fmt::format("\n## {}\n\n", text::print_day(meal.date));
    }
    out += fmt::format("- {}: {}\n", escape_markdown(meal.slot),
                       escape_markdown(dishes_of(compiled, m)));
  }
  return out + labels_to_read(compiled);
}

std::string prep_markdown(const Compiled& compiled) {
  const auto& plan = compiled.plan();
  std::string out = fmt::format("# Prep sessions: {}\n", escape_markdown(plan.name));
  for (const prep::SessionPlan& session : compiled.prep.sessions) {
    const kitchen::Session& window = plan.sessions[session.session];
    out += fmt::format("\n## {}, {} to {}\n\nDone by {}, {} {}; {} of hands-on work.\n\n",
                       text::print_day(window.date), text::print_clock(window.from),
                       text::print_clock(window.until), clock_in(window, session.length),
                       window.cooks, window.cooks == 1 ? "cook" : "cooks", [&] {
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
        out += fmt::format(
            "- Make **{}**, {}, for {}{}\n", escape_markdown(recipe.name),
            how_much(compiled, making),
            escape_markdown(prep::purposes(compiled.kitchen, compiled.resolved, making.id)),
            escape_markdown((safe.empty() ? "" : "; " + safe) + boxes_of(compiled, making.id) +
                            what_is_left(compiled, making)));
      }
    }
    for (std::size_t cook = 0; cook < static_cast<std::size_t>(window.cooks); ++cook) {
      out += cook_table(session, window, cook);
    }
    out += fmt::format("\n{}\n", cooling(compiled));
  }
  return out + fmt::format("\n{}\n", caution);
}

std::string days_markdown(const Compiled& compiled) {
  const auto& plan = compiled.plan();
  std::string out = fmt::format("# Day by day: {}\n", escape_markdown(plan.name));
  const text::Date first = first_day_to_do(compiled);
  for (text::Date day = first; day <= plan.until; day += std::chrono::days(1)) {
    const std::vector<DayLine> lines = day_lines(compiled, day);
    if (!lines.empty()) {
      out += fmt::format("\n## {}\n\n", text::print_day(day));
    }
    for (const DayLine& line : lines) {
      out += fmt::format("- {}\n", escape_markdown(line.what));
    }
  }
  return out + fmt::format("\n{}\n", caution);
}

std::string day_text(const Compiled& compiled, text::Date day) {
  const auto& plan = compiled.plan();
  std::string out = fmt::format("{} {}\n", text::weekday_name(day), text::print_date(day));
  std::vector<DayLine> lines = day_lines(compiled, day);
  for (std::size_t m = 0; m < plan.meals.size(); ++m) {
    const kitchen::Meal& meal = plan.meals[m];
    if (meal.date == day) {
      const int at = compiled.kitchen.household.slot(meal.slot)->hour(meal.date);
      lines.push_back(
          {at, fmt::format("{} {}: {}", text::print_clock(at), meal.slot, dishes_of(compiled, m))});
    }
  }
  std::stable_sort(lines.begin(), lines.end(), [](const DayLine& one, const DayLine& other) {
    return one.clock < other.clock;
  });
  for (const DayLine& line : lines) {
    out += fmt::format("  {}\n", line.what);
  }
  return out + fmt::format("{}\n", caution);
}

std::string labels_markdown(const Compiled& compiled) {
  std::string out =
      fmt::format("# Labels: {}\n\n| what | for | how much | made or bought | use by | "
                  "where | then |\n|---|---|---|---|---|---|---|\n",
                  escape_markdown(compiled.plan().name));
  for (const prep::BoxLabel& label : compiled.prep.labels) {
    out += fmt::format("| {} | {} | {} | {} | {} | {} | {} |\n", escape_markdown(label.name),
                       escape_markdown(label.purpose), escape_markdown(label.amount),
                       text::print_day(label.made), text::print_date(label.use_by),
                       foods::name(label.place), escape_markdown(label.reheat));
  }
  return out;
}

} // namespace manciple::emit
