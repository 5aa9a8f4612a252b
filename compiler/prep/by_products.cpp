#include "prep/by_products.hpp"

#include "foods/convert.hpp"
#include "foods/counted.hpp"
#include "measure/print.hpp"
#include "prep/parts.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

namespace manciple::prep {
namespace {

using kitchen::Kitchen;
using resolve::ByProduct;
using resolve::Resolved;

const kitchen::ByProduct& given(const Kitchen& kitchen, const Resolved& resolved,
                                const ByProduct& one) {
  return kitchen.recipe(resolved.making(one.of).recipe).gives[one.given];
}

} // namespace

std::string name_given(const Kitchen& kitchen, const Resolved& resolved, const ByProduct& one) {
  const kitchen::Ingredient& what = given(kitchen, resolved, one).what;
  return what.food() != nullptr ? kitchen.food(*what.food()).name
                                : kitchen.recipe(*what.recipe()).name;
}

std::string amount_given(const Kitchen& kitchen, const Resolved& resolved, const ByProduct& one,
                         const Rational& amount) {
  const kitchen::Ingredient& what = given(kitchen, resolved, one).what;
  if (const foods::FoodId* id = what.food()) {
    const foods::Food& food = kitchen.food(*id);
    const auto once = foods::as_purchased(food, *what.amount);
    if (!once || !what.amount->measure.is_counted()) {
      return foods::as_seen(food, amount, kitchen.household.system);
    }
    // As the recipe counts it: a carcass is one, whatever it weighs.
    const Rational number = what.amount->number * amount / once->amount;
    return what.amount->measure.piece.empty()
               ? fmt::format("{} {}", measure::print_exact(number),
                             number > 1 ? text::plural(food.name) : food.name)
               : fmt::format("{} {}", foods::print({number, what.amount->measure}), food.name);
  }
  const kitchen::Recipe& recipe = kitchen.recipe(*what.recipe());
  return fmt::format("{} of {}", amount_made(recipe, amount, false), recipe.name);
}

foods::Place place_of(const Kitchen& kitchen, const Resolved& resolved, const ByProduct& one,
                      const ByProduct::Part& part) {
  return part.from_freezer ? foods::Place::freezer : given(kitchen, resolved, one).cool_place;
}

std::string keeps_until(const ByProduct& one) {
  const bool cool = one.good_until && *one.good_until > one.date;
  std::string out = cool ? "good until " + text::print_day(*one.good_until) : "";
  if (one.frozen_until) {
    out += fmt::format("{} until {} in the freezer", cool ? ", or" : "good",
                       text::print_date(*one.frozen_until));
  }
  return out;
}

std::vector<std::string> put_away(const Kitchen& kitchen, const Resolved& resolved, MakingId of) {
  std::vector<std::string> out;
  for (const ByProduct& one : resolved.by_products) {
    if (one.of != of) {
      continue;
    }
    const std::string& from = kitchen.recipe(resolved.making(of).recipe).name;
    for (const ByProduct::Part& part : one.parts) {
      if (part.date > one.date) {
        const resolve::Making& into = resolved.making(part.into);
        out.push_back(fmt::format("Put {} from {} into the {}, for {} on {}",
                                  amount_given(kitchen, resolved, one, part.amount), from,
                                  foods::name(place_of(kitchen, resolved, one, part)),
                                  kitchen.recipe(into.recipe).name, text::print_day(part.date)));
      }
    }
    const std::string until = keeps_until(one);
    if (one.left() > 0 && !until.empty()) {
      out.push_back(fmt::format("Keep {} for something else, {}",
                                amount_given(kitchen, resolved, one, one.left()), until));
    }
  }
  return out;
}

std::string put_away_together(const Kitchen& kitchen, const Resolved& resolved, MakingId of) {
  std::vector<std::string> out;
  for (const ByProduct& one : resolved.by_products) {
    if (one.of != of) {
      continue;
    }
    for (const ByProduct::Part& part : one.parts) {
      if (part.date > one.date) {
        out.push_back(fmt::format(
            "{} into the {}, for {}", amount_given(kitchen, resolved, one, part.amount),
            foods::name(place_of(kitchen, resolved, one, part)), text::print_day(part.date)));
      }
    }
    if (one.left() > 0 && !keeps_until(one).empty()) {
      out.push_back(amount_given(kitchen, resolved, one, one.left()) + " for something else");
    }
  }
  return out.empty() ? std::string()
                     : fmt::format("From {}: {}", kitchen.recipe(resolved.making(of).recipe).name,
                                   text::join(out, "; "));
}

} // namespace manciple::prep
