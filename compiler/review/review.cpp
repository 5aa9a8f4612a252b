#include "review/review.hpp"

#include "kitchen/table.hpp"
#include "resolve/eaters.hpp"
#include "review/usual.hpp"

#include <algorithm>

namespace manciple::review {
namespace {

using history::Move;
using kitchen::Kitchen;
using kitchen::Receipt;
using resolve::Resolved;

constexpr int days_a_week = 7;

void spent(const Kitchen& kitchen, Date until, Review& out) {
  for (const Receipt& receipt : kitchen.receipts) {
    if (!history::is_of_plan(receipt, *kitchen.plan, until)) {
      continue;
    }
    out.paid += receipt.paid();
    auto& [stops, paid] = out.by_shop[receipt.shop];
    ++stops;
    paid += receipt.paid();
    for (const kitchen::Bought& line : receipt.bought) {
      out.by_department[kitchen.food(*line.what.food()).department] += line.paid.value_or(0);
    }
  }
}

// A part of the cost of a use to each who eats of the dish that it is in.
void to_people(const Kitchen& kitchen, const resolve::DishShare& of, const Rational& cost,
               Review& out) {
  const kitchen::Meal& meal = kitchen.plan->meals[of.dish.meal];
  const kitchen::Dish& dish = meal.dishes[of.dish.dish];
  const auto people = resolve::eaters(kitchen, of.dish);
  Rational all = 0;
  for (const kitchen::Person* one : people) {
    all += kitchen::portion(*one, meal, dish);
  }
  for (const kitchen::Person* one : people) {
    out.by_person[one->name] += cost * kitchen::portion(*one, meal, dish) / all;
  }
}

void eaten(const Kitchen& kitchen, const Resolved& resolved, const Move& move, Review& out) {
  const Rational cost = move.cost.value_or(0);
  if (!move.use) {
    out.by_meal["besides"] += cost;
    return;
  }
  const resolve::Use& use = resolved.uses[*move.use];
  if (std::holds_alternative<resolve::OfStaple>(use.reason)) {
    out.by_meal["staples"] += cost;
    return;
  }
  if (std::holds_alternative<resolve::OfExtra>(use.reason)) {
    out.by_meal["extra"] += cost;
    return;
  }
  Rational left = cost;
  for (const resolve::DishShare& of : resolved.shares_of(use)) {
    const Rational part = cost * of.share;
    out.by_meal[kitchen.plan->meals[of.dish.meal].slot] += part;
    to_people(kitchen, of, part, out);
    left -= part;
  }
  out.by_meal["cooked and left over"] += left;
}

void thrown(const std::vector<Move>& moves, Review& out) {
  std::map<foods::FoodId, Thrown> sums;
  for (const Move& move : moves) {
    if (move.kind == Move::Kind::thrown_away) {
      Thrown& of = sums[move.food];
      of.food = move.food;
      of.amount += move.amount;
      of.cost = move.cost ? std::optional(Rational(of.cost.value_or(0) + *move.cost)) : of.cost;
      out.thrown_away += move.cost.value_or(0);
    }
  }
  for (auto& [food, one] : sums) {
    out.thrown.push_back(std::move(one));
  }
  std::stable_sort(out.thrown.begin(), out.thrown.end(), [](const Thrown& a, const Thrown& b) {
    return a.cost.value_or(0) > b.cost.value_or(0);
  });
}

void prices(const Kitchen& kitchen, Date until, Review& out) {
  std::map<foods::FoodId, std::vector<PriceSeen>> all;
  for (const Receipt& receipt : kitchen.receipts) {
    for (const kitchen::Bought& line : receipt.bought) {
      if (line.paid && line.amount > 0 && history::is_of_plan(receipt, *kitchen.plan, until)) {
        all[*line.what.food()].push_back({receipt.date, receipt.shop,
                                          Rational(*line.paid) / line.amount, *line.paid,
                                          line.amount, line.sale});
      }
    }
  }
  constexpr int near = 10; // by no more than a tenth
  for (auto& [food, seen] : all) {
    const auto [low, high] =
        std::minmax_element(seen.begin(), seen.end(),
                            [](const PriceSeen& a, const PriceSeen& b) { return a.unit < b.unit; });
    const bool varies = seen.size() > 1 && (high->unit - low->unit) * near > low->unit;
    out.prices.push_back(
        {food, seen, usual(seen), static_cast<std::size_t>(low - seen.begin()), varies});
  }
  std::stable_sort(out.prices.begin(), out.prices.end(),
                   [&](const FoodPrices& a, const FoodPrices& b) {
                     return kitchen.food(a.food).name < kitchen.food(b.food).name;
                   });
}

// What was used of a staple between the first count and the last: what the plan took of it, what
// was eaten besides, and what counts miss.
void rates(const Kitchen& kitchen, const Resolved& resolved, const history::Past& past,
           Review& out) {
  if (kitchen.counts.size() < 2 || !kitchen.on_hand.date) {
    return;
  }
  const Date last = *kitchen.counts.back().date;
  out.weeks = Rational((last - out.from).count()) / days_a_week;
  for (std::size_t s = 0; s < kitchen.plan->staples.size() && out.weeks > 0; ++s) {
    const kitchen::Staple& staple = kitchen.plan->staples[s];
    const foods::FoodId food = *staple.what.food();
    if (!staple.every_days) {
      continue;
    }
    Rate rate{s, 0, 0};
    const auto once = foods::as_purchased(kitchen.food(food), *staple.what.amount);
    rate.planned = once->amount * days_a_week / *staple.every_days;
    for (const Move& move : past.moves) {
      const auto* of =
          move.use ? std::get_if<resolve::OfStaple>(&resolved.uses[*move.use].reason) : nullptr;
      const bool mine = of != nullptr && of->staple == s;
      const bool besides = !move.use && move.food == food;
      if (move.date > last || (!mine && !besides)) {
        continue;
      }
      switch (move.kind) {
      case Move::Kind::eaten:
      case Move::Kind::missing:
        rate.used += move.amount;
        break;
      case Move::Kind::found:
        rate.used -= move.amount;
        break;
      case Move::Kind::counted:
      case Move::Kind::bought:
      case Move::Kind::thrown_away:
        break;
      }
    }
    rate.used = std::max(Rational(0), Rational(rate.used / out.weeks));
    out.rates.push_back(std::move(rate));
  }
}

} // namespace

Review review(const Kitchen& kitchen, const Resolved& resolved, const history::Past& past) {
  Review out;
  out.from = kitchen.on_hand.date.value_or(kitchen.plan->begins);
  out.until = past.until;
  spent(kitchen, past.until, out);
  for (const Move& move : past.moves) {
    if (move.kind == Move::Kind::eaten) {
      eaten(kitchen, resolved, move, out);
    }
    const Rational cost = move.cost.value_or(0);
    out.missing += move.kind == Move::Kind::missing ? cost
                   : move.kind == Move::Kind::found ? Rational(-cost)
                                                    : Rational(0);
  }
  thrown(past.moves, out);
  for (const history::Holding& one : past.there) {
    out.still_there += one.price && !one.cut ? Rational(*one.price * one.amount) : Rational(0);
  }
  prices(kitchen, past.until, out);
  out.savings = savings(kitchen, past.until);
  out.differences = past.differences;
  rates(kitchen, resolved, past, out);
  return out;
}

} // namespace manciple::review
