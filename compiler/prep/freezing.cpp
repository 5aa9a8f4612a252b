#include "prep/freezing.hpp"

#include "foods/counted.hpp"
#include "foods/spoken.hpp"

#include <fmt/format.h>

#include <map>

namespace manciple::prep {
namespace {

using foods::Food;
using kitchen::Kitchen;
using purchase::Shopping;
using resolve::Resolved;

std::vector<Bag> bags_of_line(const Kitchen& kitchen, const Resolved& resolved,
                              const Shopping& shopping, std::size_t line) {
  std::vector<Bag> out;
  std::optional<Date> week; // in which the bag of a staple was taken out
  const Date bought = shopping.visits[shopping.lines[line].visit].date;
  Rational rest = shopping.lines[line].to_freeze;
  for (const purchase::Supply& supply : shopping.supplies) {
    const resolve::Use& use = resolved.uses[supply.use];
    const bool kept = resolve::is_for_freezer(kitchen, use);
    if (supply.line != line || (!supply.frozen && !kept)) {
      continue;
    }
    const Date frozen_on = supply.frozen ? supply.frozen_on : bought;
    const bool staple = std::holds_alternative<resolve::OfStaple>(use.reason);
    if (staple && week && use.date - *week < std::chrono::days(7)) {
      out.back().amount += supply.amount;
    } else {
      out.push_back({supply.amount, supply.use, frozen_on});
      week = staple ? std::optional(use.date) : std::nullopt;
    }
    rest -= frozen_on == bought ? supply.amount : Rational(0);
  }
  if (foods::is_more_than_scraps(kitchen.food(shopping.lines[line].food), rest)) {
    out.push_back({rest, std::nullopt, bought});
  }
  return out;
}

} // namespace

std::vector<Bag> Freezing::on(Date day) const {
  std::vector<Bag> out;
  for (const Bag& bag : bags) {
    if (bag.frozen_on == day) {
      out.push_back(bag);
    }
  }
  return out;
}

std::vector<Freezing> freezing(const Kitchen& kitchen, const Resolved& resolved,
                               const Shopping& shopping) {
  std::vector<Freezing> out;
  for (std::size_t l = 0; l < shopping.lines.size(); ++l) {
    std::vector<Bag> bags = bags_of_line(kitchen, resolved, shopping, l);
    if (!bags.empty()) {
      const purchase::Line& line = shopping.lines[l];
      out.push_back({line.food, shopping.visits[line.visit].date, std::move(bags)});
    }
  }
  std::map<std::size_t, std::vector<Bag>> of_lots;
  for (const purchase::StockUse& used : shopping.from_stock) {
    const bool kept = !used.frozen && resolve::is_for_freezer(kitchen, resolved.uses[used.use]);
    if ((used.frozen || kept) && kitchen.on_hand.lots[used.lot].place != foods::Place::freezer) {
      of_lots[used.lot].push_back(
          {used.amount, used.use, kept ? kitchen.plan->from : used.frozen_on});
    }
  }
  for (auto& [lot, bags] : of_lots) {
    out.push_back({kitchen.on_hand.lots[lot].food(), std::nullopt, std::move(bags)});
  }
  return out;
}

Rational amount_of(const std::vector<Bag>& bags) {
  Rational sum = 0;
  for (const Bag& bag : bags) {
    sum += bag.amount;
  }
  return sum;
}

std::string into_freezer(const Kitchen& kitchen, const Food& food, const std::vector<Bag>& bags) {
  const std::string what = foods::as_seen(food, amount_of(bags), kitchen.household.system);
  const std::string_view word = bags.size() == 1 ? "bag" : "bags";
  if (food.freezes_for_cooking) {
    return fmt::format(
        "Chop {}; freeze in oil or water in an ice cube tray, then in {} {}, labelled", what,
        bags.size(), word);
  }
  return food.keeps.frozen_juice
             ? fmt::format("Wash, zest and juice {}; freeze as cubes in {} {}, labelled", what,
                           bags.size(), word)
             : fmt::format("Portion {} into {} {}, label and freeze", what, bags.size(), word);
}

} // namespace manciple::prep
