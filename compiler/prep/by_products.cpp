#include "prep/by_products.hpp"

#include "foods/convert.hpp"
#include "foods/counted.hpp"
#include "measure/print.hpp"
#include "prep/labels.hpp"
#include "resolve/by_products.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

namespace manciple::prep {

using kitchen::Kitchen;
using resolve::ByProduct;
using resolve::Resolved;

std::string name_given(const Kitchen& kitchen, const Resolved& resolved, const ByProduct& one) {
  const kitchen::Ingredient& what = resolve::given_as(kitchen, resolved, one).what;
  return what.food() != nullptr ? kitchen.food(*what.food()).name
                                : kitchen.recipe(*what.recipe()).name;
}

std::string amount_given(const Kitchen& kitchen, const Resolved& resolved, const ByProduct& one,
                         const Rational& amount) {
  const kitchen::Ingredient& what = resolve::given_as(kitchen, resolved, one).what;
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
  return part.from_freezer ? foods::Place::freezer
                           : resolve::given_as(kitchen, resolved, one).cool_place;
}

std::string keeps_until(const ByProduct& one) {
  const bool cool = one.good_until && *one.good_until > one.date;
  std::string out = cool ? "good until " + text::print_day(*one.good_until) : "";
  if (one.frozen_until) {
    out += fmt::format("{} until {} in the freezer", cool ? ", or" : "good",
                       text::print_day(*one.frozen_until));
  }
  return out;
}

std::vector<PutAway> put_away(const Kitchen& kitchen, const Resolved& resolved, MakingId of) {
  std::vector<PutAway> out;
  for (const ByProduct& one : resolved.by_products) {
    if (one.of != of) {
      continue;
    }
    for (const ByProduct::Part& part : one.parts) {
      if (part.date > one.date) {
        out.push_back({&one, &part, amount_given(kitchen, resolved, one, part.amount)});
      }
    }
    if (one.left() > 0 && !keeps_until(one).empty()) {
      out.push_back({&one, nullptr, amount_given(kitchen, resolved, one, one.left())});
    }
  }
  return out;
}

std::string in_words(const Kitchen& kitchen, const Resolved& resolved, const PutAway& put) {
  const std::string& dish = kitchen.recipe(resolved.making(put.of->of).recipe).name;
  if (put.part == nullptr) {
    return fmt::format("Put away {} from {}, for use in something else: {}", put.amount, dish,
                       keeps_until(*put.of));
  }
  return fmt::format("Put {} from {} into the {}, for {} on {}", put.amount, dish,
                     foods::name(place_of(kitchen, resolved, *put.of, *put.part)),
                     kitchen.recipe(resolved.making(put.part->into).recipe).name,
                     text::print_day(put.part->date));
}

std::string in_one_line(const Kitchen& kitchen, const Resolved& resolved,
                        const std::vector<PutAway>& puts) {
  std::vector<std::string> words;
  for (const PutAway& put : puts) {
    words.push_back(put.amount +
                    (put.part == nullptr
                         ? " for something else, " + keeps_until(*put.of)
                         : fmt::format(" into the {}, for {}",
                                       foods::name(place_of(kitchen, resolved, *put.of, *put.part)),
                                       text::print_day(put.part->date))));
  }
  return fmt::format("From {}: {}",
                     kitchen.recipe(resolved.making(puts.front().of->of).recipe).name,
                     text::join(words, "; "));
}

} // namespace manciple::prep
