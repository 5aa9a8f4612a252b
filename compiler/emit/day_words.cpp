#include "emit/day_words.hpp"

#include "emit/words.hpp"
#include "measure/print.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <map>

namespace manciple::emit {

using measure::Rational;

const std::string_view cooling =
    "Cool what is hot in shallow boxes: from 135 F to 70 F within 2 hours, to 41 F within 4 hours "
    "more (FDA Food Code 3-501.14). Wash boards, knives and hands after raw meat.";

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

std::string how_to_reheat(const Compiled& compiled, const kitchen::Dish& dish) {
  const kitchen::RecipeId* recipe = dish.what.recipe();
  const std::string said = recipe == nullptr ? "" : compiled.kitchen.recipe(*recipe).reheat;
  // USDA FSIS, "Leftovers and Food Safety": reheat to 165 F.
  return said.empty() ? "what is eaten hot, to 165 F in the middle" : said;
}

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
  if (words.empty()) {
    return {};
  }
  const auto pans = prep::pans_to_cool(compiled.kitchen, compiled.resolved.making(making));
  return fmt::format(
      "{}; store {} {}: {}",
      pans ? fmt::format("; cool in {} shallow {} 2 in deep", *pans, *pans == 1 ? "pan" : "pans")
           : "",
      all, all == 1 ? "box" : "boxes", text::join(words, ", "));
}

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

} // namespace manciple::emit
