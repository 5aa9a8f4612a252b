// What it costs and what is left.
#include "emit/day_words.hpp"
#include "emit/emit.hpp"
#include "emit/words.hpp"
#include "foods/convert.hpp"
#include "foods/counted.hpp"
#include "foods/spoken.hpp"
#include "measure/print.hpp"
#include "prep/by_products.hpp"
#include "purchase/rules.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <numeric>
#include <set>

namespace manciple::emit {

using measure::Rational;

namespace {

// What something is worth of which a part may have no known price.
std::string at_least(const Compiled& compiled, const Rational& worth, bool all_known) {
  const std::string sum = figure(compiled, cents(worth));
  return all_known ? sum : worth > 0 ? "at least " + sum : "not known";
}

// A pinch of a spice whose price nobody knows changes no figure.
std::string by_meal(const Compiled& compiled) {
  const auto& plan = compiled.plan();
  const purchase::Worth& worth = compiled.worth;
  std::string out =
      "\n## By meal\n\nPaid is what this plan's list spends on it, before tax. Worth is the value "
      "of what is eaten: food that was in the house counts at what it would cost to buy again.\n\n"
      "| date | meal | dish | paid | worth | worth a serving |\n|---|---|---|---:|---:|---:|\n";
  for (std::size_t m = 0; m < plan.meals.size(); ++m) {
    for (std::size_t d = 0; d < plan.meals[m].dishes.size(); ++d) {
      const kitchen::Dish& dish = plan.meals[m].dishes[d];
      const Rational& value = worth.replaced.dishes[m][d];
      const auto& unknown = worth.unknown_in[m][d];
      const bool all_known = std::all_of(unknown.begin(), unknown.end(), [&](foods::FoodId food) {
        return compiled.kitchen.food(food).department == foods::Department::spices;
      });
      const Rational& servings = compiled.resolved.servings[m][d];
      const bool plain = dish.kind == kitchen::Dish::Kind::plain;
      out += fmt::format(
          "| {} | {} | {}{} | {} | {} | {} |\n", text::print_day(plan.meals[m].date),
          escape_markdown(plan.meals[m].slot),
          dish.kind == kitchen::Dish::Kind::leftovers ? "leftovers of " : "",
          escape_markdown(dish_name(compiled, dish)), figure(compiled, cents(worth.dishes[m][d])),
          at_least(compiled, value, all_known),
          plain || servings == 0 ? "" : at_least(compiled, value / servings, all_known));
    }
  }
  return out;
}

// The sums of meals, staples and extras, and the rest.
std::string by_purpose(const Compiled& compiled) {
  const purchase::Worth& worth = compiled.worth;
  std::string out = "\n## Where the money goes\n\n| what | paid | worth |\n|---|---:|---:|\n";
  const auto row = [&](std::string_view what, const auto& of) {
    out += fmt::format("| {} | {} | {} |\n", what, figure(compiled, cents(of(worth))),
                       figure(compiled, cents(of(worth.replaced))));
  };
  const auto sum = [](const std::vector<Rational>& list) {
    return std::accumulate(list.begin(), list.end(), Rational(0));
  };
  row("meals", [&](const purchase::Parts& parts) {
    Rational all = 0;
    for (const auto& meal : parts.dishes) {
      all += sum(meal);
    }
    return all;
  });
  row("staples", [&](const purchase::Parts& parts) { return sum(parts.staples); });
  row("extra", [&](const purchase::Parts& parts) { return sum(parts.extras); });
  row("cooked and left over", [](const purchase::Parts& parts) { return parts.left_over; });
  row("left at the end, still good", [](const purchase::Parts& parts) { return parts.kept; });
  row("thrown away", [](const purchase::Parts& parts) { return parts.wasted; });
  row("all goods", [](const purchase::Parts& parts) { return parts.total(); });
  return out;
}

// What counts nothing in what is worth, by name.
std::string without_worth(const Compiled& compiled) {
  std::set<std::string_view> names;
  for (const foods::FoodId food : compiled.worth.unknown) {
    names.insert(compiled.kitchen.food(food).name);
  }
  return names.empty()
             ? ""
             : fmt::format("\nNot included in worth, because no shop's price is known: {}.\n",
                           escape_markdown(fmt::format("{}", fmt::join(names, ", "))));
}

// What receipts say was paid, and what that makes with the list.
std::string paid_before(const Compiled& compiled) {
  std::string out = "\n## Paid before\n\n| date | shop | paid |\n|---|---|---:|\n";
  for (const kitchen::Receipt& receipt : compiled.kitchen.receipts) {
    out += fmt::format("| {} | {}{} | {} |\n", text::print_day(receipt.date),
                       escape_markdown(compiled.kitchen.shop(receipt.shop).name),
                       receipt.slug.empty() ? " (no receipt; as listed)" : "",
                       figure(compiled, receipt.paid()));
  }
  return out + fmt::format("| all | | {} |\n| including the list | | {} |\n",
                           figure(compiled, compiled.past->paid),
                           figure(compiled, compiled.past->paid + compiled.shopping.paid));
}

} // namespace

std::string money_markdown(const Compiled& compiled) {
  const auto& plan = compiled.plan();
  const auto& shopping = compiled.shopping;
  const std::size_t open = without_price(compiled);
  if (open > 0 && open == shopping.lines.size()) {
    return fmt::format("# Money: {}\n\n{}\n", escape_markdown(plan.name), verdict(compiled));
  }
  std::string out = fmt::format("# Money: {}\n\n## By stop\n\n| date | shop | goods | tax "
                                "| reduction | credit | paid | cash back |\n"
                                "|---|---|---:|---:|---:|---:|---:|---:|\n",
                                escape_markdown(plan.name));
  std::map<text::Date, kitchen::Cents> by_trip;
  kitchen::Cents goods = 0;
  kitchen::Cents tax = 0;
  kitchen::Cents off = 0;
  kitchen::Cents credit = 0;
  for (const purchase::StopMade& visit : shopping.visits) {
    by_trip[visit.date] += visit.paid();
    goods += visit.goods;
    tax += visit.tax;
    off += visit.off;
    credit += visit.credit;
    out += fmt::format("| {} | {} | {} | {} | {} | {} | {} | {} |\n", text::print_day(visit.date),
                       escape_markdown(compiled.kitchen.shop(visit.shop).name),
                       figure(compiled, visit.goods), figure(compiled, visit.tax),
                       figure(compiled, visit.off), figure(compiled, visit.credit),
                       figure(compiled, visit.paid()), figure(compiled, visit.cash_back));
  }
  out += fmt::format("| all | | {} | {} | {} | {} | {} | {} |\n", figure(compiled, goods),
                     figure(compiled, tax), figure(compiled, off), figure(compiled, credit),
                     figure(compiled, shopping.paid), figure(compiled, shopping.cash_back));
  if (compiled.past && !compiled.kitchen.receipts.empty()) {
    out += paid_before(compiled);
  }
  out += "\n## By trip\n\n| date | paid |\n|---|---:|\n";
  for (const auto& [date, paid] : by_trip) {
    out += fmt::format("| {} | {} |\n", text::print_day(date), figure(compiled, paid));
  }

  out += by_meal(compiled) + by_purpose(compiled);
  if (open > 0) {
    out += fmt::format("\n{} of {} lines have no known price and count as nothing here.\n", open,
                       shopping.lines.size());
  }
  out += without_worth(compiled);
  return out + (shopping.proven() ? "" : fmt::format("\n{}\n", verdict(compiled)));
}

namespace {

// What is made and no dish eats.
std::string cooked_and_left(const Compiled& compiled) {
  std::multimap<text::Date, const resolve::Making*> by_date;
  for (const resolve::Making& making : compiled.resolved.makings) {
    by_date.emplace(making.date, &making);
  }
  std::string out;
  for (const auto& [date, of] : by_date) {
    const resolve::Making& making = *of;
    const std::string left = left_of(compiled, making);
    if (left.empty()) {
      continue;
    }
    out += fmt::format("- {} of {}, made {}{}\n", left,
                       escape_markdown(compiled.kitchen.recipe(making.recipe).name),
                       text::print_day(making.date), good_until(making));
  }
  return out.empty() ? "" : "\n## Cooked and left over\n\n" + out;
}

// What dishes leave over and no other takes.
std::string by_products_left(const Compiled& compiled) {
  std::string out;
  for (const resolve::ByProduct& one : compiled.resolved.by_products) {
    const kitchen::Recipe& of = compiled.kitchen.recipe(compiled.resolved.making(one.of).recipe);
    if (one.left() <= 0) {
      continue;
    }
    const std::string until = prep::keeps_until(one);
    out += fmt::format(
        "- {}, from {} on {}{}\n",
        escape_markdown(prep::amount_given(compiled.kitchen, compiled.resolved, one, one.left())),
        escape_markdown(of.name), text::print_day(one.date), until.empty() ? "" : ": " + until);
  }
  return out.empty() ? "" : "\n## By-products left over from cooking\n\n" + out;
}

// What is left of a line: of a pack that is begun, about which part; else how much.
std::string rest_of(const Compiled& compiled, const purchase::Line& line) {
  const foods::Food& food = food_of(compiled, line);
  const kitchen::Offer& offer = offer_of(compiled, line);
  const bool begun = !offer.by_weight && line.kept < offer.size;
  const bool by_content = foods::counted_by(food).empty();
  if (!begun || !by_content || offer.pack == "each") {
    return foods::as_seen(food, line.kept, compiled.kitchen.household.system);
  }
  const bool in_pieces = foods::basis(food) == measure::Dimension::count && line.kept >= 1;
  return fmt::format("{}: {} of the {}", foods::name_of(food, line.amount),
                     in_pieces ? measure::print_decimal(line.kept, 0)
                               : foods::part_of(line.kept / offer.size),
                     offer.pack);
}

// What the list leaves a little short.
std::string short_but_enough(const Compiled& compiled) {
  std::string out;
  for (const std::string& one : a_little_short(compiled)) {
    out += fmt::format("- {} less than planned\n", escape_markdown(one));
  }
  return out.empty() ? "" : "\n## A little short, and enough\n\n" + out;
}

} // namespace

std::string left_markdown(const Compiled& compiled) {
  const auto& plan = compiled.plan();
  std::string out =
      fmt::format("# Left after {}\n\n## Bought and still good\n\n", text::print_day(plan.until));
  std::string wasted;
  const auto named = [&](foods::FoodId food, const Rational& amount) {
    return escape_markdown(
        foods::as_seen(compiled.kitchen.food(food), amount, compiled.kitchen.household.system));
  };
  for (const purchase::Line& line : compiled.shopping.lines) {
    if (foods::is_seen(food_of(compiled, line), line.kept)) {
      out += fmt::format("- {}\n", escape_markdown(rest_of(compiled, line)));
    }
    if (purchase::is_worth_using_up(food_of(compiled, line), line.wasted, line.amount)) {
      wasted += fmt::format("- {} from {}, bought on {}\n", named(line.food, line.wasted),
                            escape_markdown(count_of(compiled, line)),
                            text::print_day(compiled.shopping.visits[line.visit].date));
    }
  }
  out += short_but_enough(compiled);
  out += "\n## Was on hand and is still there\n\n";
  for (std::size_t l = 0; l < compiled.kitchen.on_hand.lots.size(); ++l) {
    const kitchen::StockLot& lot = compiled.kitchen.on_hand.lots[l];
    const foods::Food& food = compiled.kitchen.food(lot.food());
    const Rational left = lot.amount - compiled.shopping.taken_of_lot(l);
    const bool gone = purchase::is_past(lot, plan);
    if (gone ? foods::is_more_than_scraps(food, left) : foods::is_seen(food, left)) {
      (gone ? wasted : out) +=
          fmt::format("- {} ({})\n", named(lot.food(), left),
                      gone ? "was on hand, good until " + text::print_date(*lot.use_by)
                           : std::string(foods::name(lot.place)));
    }
  }
  out += cooked_and_left(compiled) + by_products_left(compiled);
  return out + "\n## Goes off before it is used\n\n" + (wasted.empty() ? "Nothing.\n" : wasted);
}

} // namespace manciple::emit
