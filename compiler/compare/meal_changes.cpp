#include "compare/align.hpp"
#include "compare/parts.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <map>

namespace manciple::compare {
namespace {

// To a quarter: what nobody would cook for is no change.
std::string servings(double number) {
  return parts(number, 4);
}

std::string all_of(const std::vector<std::string>& names) {
  if (names.size() < 2) {
    return text::join(names, "");
  }
  return text::join({names.begin(), names.end() - 1}, ", ") + " and " + names.back();
}

// What is otherwise at one meal, to follow its name; empty where nothing is.
std::string changes_of(const Group<Dish>& dishes, bool was, bool is) {
  std::vector<std::string> added;
  std::vector<std::string> gone;
  std::vector<std::string> other;
  for (const Pair<Dish>&pair :
       align<Dish>(dishes.before, dishes.after,
                   {[](const Dish&a, const Dish&b) {
                      return a.name == b.name && servings(a.servings) == servings(b.servings);
                    },
                    [](const Dish&a, const Dish&b) { return a.name == b.name; }})) {
    if (pair.before == nullptr) {
      added.push_back(pair.after->name);
    } else if (pair.after == nullptr) {
      gone.push_back(pair.before->name);
    } else if (pair.after->counts_servings &&
               servings(pair.before->servings) != servings(pair.after->servings)) {
      other.push_back(fmt::format("{} for {} instead of {}", pair.after->name,
                                  servings(pair.after->servings), servings(pair.before->servings)));
    }
  }
  std::vector<std::string> out;
  if (!added.empty() && !gone.empty()) {
    out.push_back(fmt::format("{} instead of {}", all_of(added), all_of(gone)));
  } else if (!added.empty()) {
    out.push_back(was ? all_of(added) + " as well" : all_of(added));
  } else if (!gone.empty()) {
    out.push_back(is ? "without " + all_of(gone) : "nothing now; it was " + all_of(gone));
  }
  out.insert(out.end(), other.begin(), other.end());
  return text::join(out, "; ");
}

} // namespace

std::vector<Change> meal_changes(const Result& before, const Result& after) {
  // In the order in which the meals of a day are eaten, as far as one of the plans says it.
  std::map<std::string, std::size_t> order;
  std::map<std::tuple<Date, std::size_t, std::string>, Group<Dish>> meals;
  for (const Result* result : {&after, &before}) {
    for (const Meal& meal : result->meals) {
      order.emplace(meal.slot, order.size());
    }
  }
  const auto add = [&](const Result& result, auto side) {
    for (const Meal& meal : result.meals) {
      for (const Dish& dish : meal.dishes) {
        (meals[{meal.date, order[meal.slot], meal.slot}].*side).push_back(&dish);
      }
    }
  };
  add(before, &Group<Dish>::before);
  add(after, &Group<Dish>::after);
  std::vector<Change> out;
  for (const auto& [when, dishes] : meals) {
    const std::string what = changes_of(dishes, !dishes.before.empty(), !dishes.after.empty());
    if (!what.empty()) {
      out.push_back({Part::meals, fmt::format("{} {}: {}", text::print_day(std::get<0>(when)),
                                              std::get<2>(when), what)});
    }
  }
  return out;
}

} // namespace manciple::compare
