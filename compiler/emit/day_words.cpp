#include "emit/day_words.hpp"

#include "emit/words.hpp"
#include "kitchen/contents.hpp"
#include "kitchen/food_code.hpp"
#include "measure/print.hpp"
#include "prep/cooling.hpp"
#include "prep/eaten_hot.hpp"
#include "prep/reheat.hpp"
#include "resolve/eaters.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>

namespace manciple::emit {

using measure::Rational;

std::string cooling(const Compiled& compiled) {
  const measure::System system = compiled.kitchen.household.system;
  return fmt::format(
      "Cool hot food in shallow boxes: from {} to {} within {} hours, and to {} within another {} "
      "hours (FDA Food Code 3-501.14). Wash boards, knives and hands after raw meat.",
      measure::print_at_most(kitchen::hot_enough.fahrenheit, system),
      measure::print_at_most(kitchen::cooled_first.fahrenheit, system),
      kitchen::first_stage / text::minutes_an_hour,
      measure::print_at_most(kitchen::cold_enough.fahrenheit, system),
      kitchen::second_stage / text::minutes_an_hour);
}

namespace {

std::string number_word(std::size_t number) {
  constexpr std::array<std::string_view, 9> words{"two",   "three", "four", "five", "six",
                                                  "seven", "eight", "nine", "ten"};
  return number >= 2 && number <= words.size() + 1 ? std::string(words[number - 2])
                                                   : std::to_string(number);
}

std::string and_list(const std::vector<std::string>& names) {
  if (names.size() < 2) {
    return text::join(names, "");
  }
  const std::vector<std::string> first(names.begin(), names.end() - 1);
  return text::join(first, ", ") + " and " + names.back();
}

} // namespace

std::string how_much(const Compiled& compiled, const resolve::Making& making) {
  if (making.times == 1) {
    return "the whole recipe";
  }
  // Only where a recipe says so is it made in parts that have no name.
  const bool named = denominator(making.times) <= 100;
  const std::string number =
      named ? measure::print_exact(making.times) : decimal(compiled, making.times, 2);
  return number + (making.times < 1 ? " of the recipe" : " times the recipe");
}

std::string eaters_of(const Compiled& compiled, const resolve::DishRef& ref) {
  const kitchen::Dish& dish = compiled.plan().meals[ref.meal].dishes[ref.dish];
  if (dish.servings) {
    return measure::print_exact(*dish.servings);
  }
  const auto& household = compiled.kitchen.household.people;
  if (household.empty()) {
    return measure::print_exact(compiled.resolved.servings[ref.meal][ref.dish]);
  }
  std::vector<std::string> names;
  std::vector<std::string> guests;
  for (const kitchen::Person* person : resolve::eaters(compiled.kitchen, ref)) {
    const bool at_home = std::any_of(household.begin(), household.end(),
                                     [&](const auto& one) { return &one == person; });
    (at_home ? names : guests).push_back(person->name);
  }
  if (names.size() == household.size() && names.size() > 1) {
    names = {names.size() == 2 ? "both" : "all " + number_word(names.size())};
  }
  names.insert(names.end(), guests.begin(), guests.end());
  return and_list(names);
}

std::string cooks_of(const prep::Cooking& cook) {
  return and_list(cook.cooks);
}

namespace {

bool has_times(const Compiled& compiled, const prep::Cooking& cook) {
  const auto& method = compiled.kitchen.recipe(compiled.resolved.making(cook.making).recipe).method;
  return std::any_of(method.begin(), method.end(), [](const kitchen::MethodStep& step) {
    return step.hands_on > 0 || step.then > 0;
  });
}

} // namespace

std::string cooking_time(const Compiled& compiled, const prep::Cooking& cook) {
  return has_times(compiled, cook)
             ? fmt::format("from {} ({} hands-on){}", text::print_clock(cook.start),
                           text::print_minutes(cook.hands_on),
                           cook.done == cook.ready ? ""
                                                   : ", done at " + text::print_clock(cook.done))
             : "for " + text::print_clock(cook.ready);
}

bool is_work(const Compiled& compiled, const prep::Cooking& cook) {
  return cook.ready > cook.start || !has_times(compiled, cook);
}

text::Date first_day_to_do(const Compiled& compiled) {
  text::Date first = compiled.plan().from;
  if (!compiled.prep.reminders.empty()) {
    first = std::min(first, compiled.prep.reminders.front().date);
  }
  for (const purchase::StopMade& visit : compiled.shopping.visits) {
    first = std::min(first, visit.date);
  }
  return first;
}

std::string left_of(const Compiled& compiled, const resolve::Making& making) {
  const kitchen::Recipe& recipe = compiled.kitchen.recipe(making.recipe);
  const Rational halves(measure::floor(making.left() * recipe.serves * 2));
  if (halves == 0) {
    return "";
  }
  return fmt::format("{} {}", measure::print_exact(halves / 2),
                     halves > 2 ? "servings" : "serving");
}

std::string cook_name(const kitchen::Session& session, std::size_t cook) {
  return cook < session.names.size() ? session.names[cook] : fmt::format("cook {}", cook + 1);
}

std::string cook_heading(const kitchen::Session& session, std::size_t cook) {
  return cook < session.names.size() ? session.names[cook] : fmt::format("Cook {}", cook + 1);
}

std::string clock_in(const kitchen::Session& session, int minutes) {
  return text::print_clock((session.from + minutes) % text::minutes_a_day);
}

std::string good_until(const resolve::Making& making) {
  const auto good = making.good_until;
  return good ? ", good until " + text::print_day(*good) : "";
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
  case Kind::pack:
    return "pack";
  }
  return {};
}

std::optional<std::string> how_to_reheat(const Compiled& compiled, const resolve::DishRef& ref) {
  const kitchen::Meal& meal = compiled.plan().meals[ref.meal];
  for (const resolve::Making& making : compiled.resolved.makings) {
    for (const resolve::Consumer& consumer : making.consumers) {
      const auto* dish = std::get_if<resolve::DishRef>(&consumer.who);
      if (dish == nullptr || *dish != ref || making.date == meal.date) {
        continue;
      }
      if (resolve::is_packed(compiled.kitchen, meal)) {
        return std::nullopt; // eaten cold
      }
      const kitchen::Recipe& recipe = compiled.kitchen.recipe(making.recipe);
      const std::string said = prep::reheat_words(recipe, consumer.from_freezer);
      if (!said.empty()) {
        return said;
      }
      if (!prep::is_eaten_hot(compiled.kitchen, recipe)) {
        return std::nullopt;
      }
      // USDA FSIS, "Leftovers and Food Safety": reheat to 165 F.
      constexpr int reheated = 165; // F
      return fmt::format("what is eaten hot must reach {} in the middle",
                         measure::print_at_least(reheated, compiled.kitchen.household.system));
    }
  }
  return std::nullopt;
}

std::string goes_first(const prep::Cooking& cook) {
  return cook.first_for.empty()
             ? ""
             : fmt::format("; made first, with clean boards and knives: {}", cook.first_for);
}

std::string on_the_dial(const Compiled& compiled, int fahrenheit) {
  return measure::print_on_dial(fahrenheit, compiled.kitchen.household.system);
}

std::vector<std::pair<int, std::string>> ovens_turned_on(const Compiled& compiled,
                                                         const prep::Cooking& cook) {
  std::vector<std::pair<int, std::string>> out;
  const resolve::Making& making = compiled.resolved.making(cook.making);
  for (const prep::Cooking::Step& step : cook.steps) {
    if (step.preheat > 0 && step.fahrenheit) {
      out.emplace_back(std::max(0, step.start - step.preheat),
                       fmt::format("the {} to {}, for {}", step.appliance,
                                   on_the_dial(compiled, *step.fahrenheit),
                                   compiled.kitchen.recipe(making.recipe).name));
    }
  }
  return out;
}

std::string boxes_of(const Compiled& compiled, resolve::MakingId making) {
  std::map<std::pair<foods::Place, std::string>, int> boxes;
  int all = 0;
  for (const prep::BoxLabel& label : compiled.prep.labels) {
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
  if (words.empty()) {
    return {};
  }
  const auto cooled = prep::cooling(compiled.kitchen, compiled.resolved.making(making));
  const std::optional<int> pans = cooled ? std::optional(cooled->pans) : std::nullopt;
  return fmt::format("{}; store {} {}: {}",
                     pans ? fmt::format("; cool in {} shallow {} {} deep", *pans,
                                        *pans == 1 ? "pan" : "pans",
                                        prep::depth_of_pans(compiled.kitchen.household.system))
                          : "",
                     all, all == 1 ? "box" : "boxes", text::join(words, ", "));
}

std::string safe_temperature(const Compiled& compiled, const kitchen::Recipe& recipe) {
  const foods::Food* hottest = kitchen::least_safe(compiled.kitchen, recipe);
  if (hottest == nullptr) {
    return {};
  }
  const auto& safe = hottest->safe_at->value;
  return fmt::format("{} in the middle{} for {}",
                     measure::print_at_least(safe.fahrenheit, compiled.kitchen.household.system),
                     safe.rest_minutes > 0 ? fmt::format(", then {} min rest,", safe.rest_minutes)
                                           : "",
                     hottest->name);
}

std::string dishes_of(const Compiled& compiled, std::size_t m) {
  const kitchen::Meal& meal = compiled.plan().meals[m];
  std::vector<std::string> parts;
  std::vector<std::string> dishes; // one after the other for the same eaters
  std::string eaters;
  const auto close = [&] {
    if (!dishes.empty()) {
      parts.push_back(fmt::format("{} for {}", and_list(dishes), eaters));
      dishes.clear();
    }
  };
  for (std::size_t d = 0; d < meal.dishes.size(); ++d) {
    const kitchen::Dish& dish = meal.dishes[d];
    const std::string name = dish_name(compiled, dish);
    if (dish.kind == kitchen::Dish::Kind::plain) {
      close();
      parts.push_back(name);
      continue;
    }
    const std::string who = eaters_of(compiled, {m, d});
    if (who != eaters) {
      close();
    }
    eaters = who;
    dishes.push_back(dish.kind == kitchen::Dish::Kind::leftovers ? "leftovers of " + name : name);
  }
  close();
  return text::join(parts, "; ");
}

} // namespace manciple::emit
