// What a plan leaves over, and what to make of it.
#include "cli/command_line.hpp"
#include "cli/commands.hpp"
#include "cli/exit.hpp"
#include "cli/report.hpp"
#include "cli/say.hpp"
#include "emit/use_up.hpp"
#include "foods/counted.hpp"
#include "kitchen/paths.hpp"
#include "text/nearest.hpp"

namespace manciple::cli {
namespace {

struct UseUpRequest {
  std::string plan;
  std::string date; ///< what is there on this day; empty: all that the plan leaves
  std::string food; ///< only this one; empty: all
};

// What of it is to be used up.
std::vector<std::size_t> wanted_of(const emit::Compiled& compiled, const emit::UseUp& asked) {
  std::vector<std::size_t> out;
  const text::Date day = asked.wanted.day;
  for (std::size_t i = 0; i < asked.left.size(); ++i) {
    const use_up::Left& left = asked.left[i];
    const bool there = !asked.on_day || (left.since <= day && day <= left.until.value_or(day));
    const foods::Food& food = compiled.kitchen.food(left.food);
    const bool meant =
        asked.only ? left.food == *asked.only && foods::is_seen(food, left.amount)
                   : use_up::is_urgent(left, day) && use_up::is_worth_a_word(food, left.amount);
    if (there && meant) {
      out.push_back(i);
    }
  }
  return out;
}

// The food that is asked for, among what is left.
std::optional<foods::FoodId> food_of(const std::string& name, const emit::Compiled& compiled,
                                     const std::vector<use_up::Left>& left) {
  kitchen::Kitchen kitchen = compiled.kitchen; // a food may be read when it is first asked for
  const auto food = kitchen.foods.find(name);
  std::vector<std::string_view> names;
  for (const use_up::Left& one : left) {
    if (food && kitchen.food(*food).name == compiled.kitchen.food(one.food).name) {
      return one.food;
    }
    names.push_back(compiled.kitchen.food(one.food).name);
  }
  complain_of_name("the plan leaves no", name,
                   food ? std::string() : text::did_you_mean(foods::normal_name(name), names));
  return std::nullopt;
}

int use_up(const UseUpRequest& request) {
  const auto compiled = compile_and_report(request.plan);
  if (!compiled) {
    return bad_input;
  }
  const kitchen::Plan& plan = compiled->plan();
  const text::Date first = compiled->shopping.first;
  const auto day = request.date.empty() ? plan.until : text::parse_day(request.date, plan.from);
  if (!day || *day < first || *day > plan.until) {
    complain("manciple: '{}' is not a day of the plan, which runs from {} to {}\n", request.date,
             text::print_date(first), text::print_date(plan.until));
    return bad_input;
  }
  kitchen::Library library =
      kitchen::read_library(kitchen::root_of(request.plan), kitchen::Recipes::all);
  emit::UseUp asked{library.kitchen, {}, {}, {}, {}, !request.date.empty()};
  asked.left = use_up::what_is_left(compiled->kitchen, compiled->resolved, compiled->shopping);
  asked.wanted.day = *day;
  if (!request.food.empty()) {
    asked.only = food_of(request.food, *compiled, asked.left);
    if (!asked.only) {
      return bad_input;
    }
  }
  asked.wanted.lefts = wanted_of(*compiled, asked);
  asked.suggestions = use_up::suggest(library, compiled->kitchen, asked.left, asked.wanted);
  say(std::string_view(emit::use_up_text(*compiled, asked)));
  return good;
}

} // namespace

void add_use_up(CommandLine& to) {
  auto [command, asked] =
      to.add<UseUpRequest>("use-up",
                           "what a plan leaves over, how long it is good and what it is "
                           "worth; and which recipes in the library use it, best first",
                           use_up);
  command.add_option("PLAN", asked.plan, "the plan, for example plans/2027-03.yaml")->required();
  command.add_option("--date", asked.date,
                     "only what is in the house on a day of the plan, such as '9 mar' (default: "
                     "everything that is left at its end or goes off before then)");
  command.add_option("--for", asked.food, "only this food");
}

} // namespace manciple::cli
