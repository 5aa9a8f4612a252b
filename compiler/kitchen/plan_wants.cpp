// What a plan wants besides its meals: staples and what else to buy.
#include "kitchen/errors.hpp"
#include "kitchen/keys.hpp"
#include "kitchen/plan_reader.hpp"

#include <fmt/format.h>

namespace manciple::kitchen {

using text::Fields;
using text::Node;

namespace {

// Cuts " in the freezer" off what is kept there.
bool take_in_freezer(std::string_view& words) {
  for (const std::string_view ending :
       {", in the freezer", " in the freezer", ", freezer", ", frozen"}) {
    if (words.ends_with(ending)) {
      words.remove_suffix(ending.size());
      return true;
    }
  }
  return false;
}

} // namespace

// "2 gal whole milk per week" is a rate, "keep 12 eggs" a level, "keep 4 lb chicken thighs in the
// freezer" one that is kept there.
void PlanReader::staple(const Node& node) {
  std::string_view words = node.scalar;
  std::size_t offset = 0;
  std::optional<int> days;
  bool in_freezer = false;
  if (words.starts_with("keep ")) {
    offset = 5;
    words.remove_prefix(offset);
    in_freezer = take_in_freezer(words);
  } else {
    for (const auto& [ending, length] : {std::pair<std::string_view, int>{" per week", 7},
                                         {" per day", 1},
                                         {" per month", 30},
                                         {" a week", 7},
                                         {" a day", 1},
                                         {" a month", 30}}) {
      if (words.ends_with(ending)) {
        days = length;
        words.remove_suffix(ending.size());
        break;
      }
    }
    if (!days) {
      diagnostics_.error(
          errors::bad_value, node.span, "a staple needs a rate of use or a level to keep",
          "end it with 'per week', 'per day' or 'per month', or begin it with 'keep'");
      return;
    }
  }
  if (auto what = one(node, words, offset, context_.foods)) {
    if (!what->amount) {
      diagnostics_.error(errors::unread_amount, node.span, "give an amount");
      return;
    }
    const foods::Food& food = *context_.foods.food(what->target);
    if (in_freezer && food.stored != foods::Place::freezer && !food.freezes.value_or(true)) {
      diagnostics_.warning(errors::bad_value, node.span,
                           fmt::format("{} does not freeze well", food.name),
                           "leave out 'in the freezer', or keep something else");
    }
    plan_.staples.push_back({std::move(*what), days, in_freezer});
  }
}

void PlanReader::extra(const Node& node) {
  Extra extra;
  const Node* line = &node;
  if (node.is_mapping()) {
    const Fields fields(node, keys::extra, diagnostics_);
    line = fields.find("buy");
    if (const Node* by = fields.find("by")) {
      extra.by = inside(*by);
    }
    if (const Node* reason = fields.find("for")) {
      extra.reason = reason->scalar;
    }
  }
  if (line == nullptr) {
    return;
  }
  if (auto what = one(*line, line->scalar, 0, context_.foods, true)) {
    if (!what->amount) {
      const foods::Food& food = *context_.foods.food(what->target);
      const bool packed = food.is_household() &&
                          (food.shop_in == "pack" || food.shop_in == "box"); // "birthday candles"
      const std::string one = packed ? food.shop_in : food.sold_as.value_or("");
      what->amount = foods::Amount{1, {measure::Unit::each, one}, foods::Form::plain, false};
      if (packed) {
        what->containers = 1;
      }
      // A food that nobody counts ("honey") is on the list as it is written.
      if (!foods::as_purchased(food, *what->amount)) {
        what->target = context_.foods.as_written(food.name, measure::Dimension::count, {}, &food)
                           .value_or(what->target);
      }
    }
    extra.what = std::move(*what);
    plan_.extra.push_back(std::move(extra));
  }
}

} // namespace manciple::kitchen
