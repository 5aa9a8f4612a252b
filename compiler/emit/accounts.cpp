// What it costs and what is left.
#include "emit/day_words.hpp"
#include "emit/emit.hpp"
#include "emit/words.hpp"
#include "foods/convert.hpp"
#include "foods/counted.hpp"
#include "foods/spoken.hpp"
#include "measure/print.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <map>

namespace manciple::emit {

using measure::Rational;

namespace {

// What receipts say was paid, and what that makes with the list.
std::string paid_before(const Compiled& compiled) {
  std::string out = "\n## Paid before\n\n| date | shop | paid |\n|---|---|---:|\n";
  for (const kitchen::Receipt& receipt : compiled.kitchen.receipts) {
    out += fmt::format("| {} | {}{} | {} |\n", text::print_day(receipt.date),
                       escape_markdown(compiled.kitchen.shop(receipt.shop).name),
                       receipt.slug.empty() ? " (no receipt, as the list has it)" : "",
                       figure(compiled, receipt.paid()));
  }
  return out + fmt::format("| all | | {} |\n| with the list | | {} |\n",
                           figure(compiled, compiled.past->paid),
                           figure(compiled, compiled.past->paid + compiled.shopping.paid));
}

} // namespace

std::string money_markdown(const Compiled& compiled) {
  const auto& plan = compiled.plan();
  const auto& shopping = compiled.shopping;
  const auto& worth = compiled.worth;
  const std::size_t open = without_price(compiled);
  if (open > 0 && open == shopping.lines.size()) {
    return fmt::format("# Money: {}\n\n{}\n", escape_markdown(plan.name), verdict(compiled));
  }
  std::string out = fmt::format("# Money: {}\n\n## By stop\n\n| date | shop | goods | tax "
                                "| reduction | credit | paid | comes back |\n"
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

  out += "\n## By meal\n\nWhat was bought for it, before tax; what was in the house counts "
         "nothing.\n\n| date | meal | dish | cost | a serving |\n|---|---|---|---:|---:|\n";
  Rational meals = 0;
  for (std::size_t m = 0; m < plan.meals.size(); ++m) {
    for (std::size_t d = 0; d < plan.meals[m].dishes.size(); ++d) {
      const kitchen::Dish& dish = plan.meals[m].dishes[d];
      const Rational& cost = worth.dishes[m][d];
      const Rational& servings = compiled.resolved.servings[m][d];
      meals += cost;
      const bool plain = dish.kind == kitchen::Dish::Kind::plain;
      out += fmt::format("| {} | {} | {}{} | {} | {} |\n", text::print_day(plan.meals[m].date),
                         escape_markdown(plan.meals[m].slot),
                         dish.kind == kitchen::Dish::Kind::leftovers ? "leftovers of " : "",
                         escape_markdown(dish_name(compiled, dish)), figure(compiled, cents(cost)),
                         plain || servings == 0 ? "" : figure(compiled, cents(cost / servings)));
    }
  }
  Rational staples = 0;
  for (const Rational& cost : worth.staples) {
    staples += cost;
  }
  Rational extras = 0;
  for (const Rational& cost : worth.extras) {
    extras += cost;
  }
  out += "\n## Where the money goes\n\n| what | cost |\n|---|---:|\n";
  const auto row = [&](std::string_view what, const Rational& cost) {
    out += fmt::format("| {} | {} |\n", what, figure(compiled, cents(cost)));
  };
  row("meals", meals);
  row("staples", staples);
  row("extra", extras);
  row("cooked and left over", worth.left_over);
  row("left at the end, still good", worth.kept);
  row("thrown away", worth.wasted);
  row("all goods", worth.total());
  if (open > 0) {
    out += fmt::format("\n{} of {} lines have no known price and count nothing here.\n", open,
                       shopping.lines.size());
  }
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
    // A tenth is what peeling and scales give and take.
    if (foods::is_more_than_scraps(food_of(compiled, line), line.wasted) &&
        line.wasted * 10 >= line.amount) {
      wasted += fmt::format("- {} of {} bought on {}\n", named(line.food, line.wasted),
                            escape_markdown(count_of(compiled, line)),
                            text::print_day(compiled.shopping.visits[line.visit].date));
    }
  }
  out += short_but_enough(compiled);
  out += "\n## Was on hand and is still there\n\n";
  for (std::size_t l = 0; l < compiled.kitchen.on_hand.lots.size(); ++l) {
    const kitchen::StockLot& lot = compiled.kitchen.on_hand.lots[l];
    const foods::Food& food = compiled.kitchen.food(*lot.what.food());
    const Rational left = lot.amount - compiled.shopping.taken_of_lot(l);
    const bool gone = lot.use_by && *lot.use_by <= plan.until;
    if (gone ? foods::is_more_than_scraps(food, left) : foods::is_seen(food, left)) {
      (gone ? wasted : out) +=
          fmt::format("- {} ({})\n", named(*lot.what.food(), left),
                      gone ? "was on hand, good until " + text::print_date(*lot.use_by)
                           : std::string(foods::name(lot.place)));
    }
  }
  out += cooked_and_left(compiled);
  return out + "\n## Past its date before it is used\n\n" +
         (wasted.empty() ? "Nothing.\n" : wasted);
}

} // namespace manciple::emit
