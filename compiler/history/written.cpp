#include "history/written.hpp"

#include "foods/counted.hpp"
#include "foods/spoken.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <array>

namespace manciple::history {
namespace {

using foods::Food;
using measure::Unit;

// A fraction of this that a cook writes; others are written in grams.
constexpr int finest_part = 16;
constexpr int decimals = 1000;

bool is_plain(const Rational& number, int finest) {
  return number > 0 && denominator(Rational(number * finest)) == 1;
}

// In that measure, if it is a plain number of it and exactly the amount.
std::optional<std::string> in_measure(const Food& food, const Rational& amount,
                                      const foods::Measure& measure, int finest) {
  const auto number = foods::measured(food, amount, measure, foods::Form::plain);
  if (!number || !is_plain(number->amount, finest)) {
    return std::nullopt;
  }
  const foods::Amount written{number->amount, measure};
  const auto back = foods::as_purchased(food, written);
  if (!back || back->amount != amount) {
    return std::nullopt;
  }
  return foods::print(written);
}

std::optional<std::string> in_units(const Food& food, const Rational& amount, bool us) {
  using enum Unit;
  static constexpr std::array us_volumes{us_gallon, us_quart, us_cup, us_fluid_ounce};
  static constexpr std::array us_spoons{us_tablespoon, us_teaspoon};
  static constexpr std::array us_weights{pound, ounce};
  static constexpr std::array metric{kilogram, gram, liter, milliliter};
  const auto first = [&](const auto& units, int finest) -> std::optional<std::string> {
    for (const Unit unit : units) {
      if (auto words = in_measure(food, amount, {unit, {}}, finest)) {
        return words;
      }
    }
    return std::nullopt;
  };
  if (!us) {
    return first(metric, decimals);
  }
  const bool liquid = food.shop_in == "gal" || food.shop_in == "qt" || food.shop_in == "fl oz";
  auto words = liquid ? first(us_volumes, finest_part) : std::nullopt;
  words = words ? words : first(us_weights, finest_part);
  return words ? words : first(us_spoons, finest_part);
}

// How much it is, without the food's name.
std::string exactly(const Food& food, const Rational& amount, bool us) {
  const std::string piece = foods::counted_by(food);
  if (!piece.empty()) {
    if (auto words = in_measure(food, amount, {Unit::each, piece}, 2)) {
      return *words;
    }
  }
  if (foods::basis(food) == measure::Dimension::count) {
    return measure::print_exact(amount);
  }
  if (auto words = in_units(food, amount, us)) {
    return *words;
  }
  const bool mass = foods::basis(food) == measure::Dimension::mass;
  return fmt::format("{} {}", measure::print_exact(amount), mass ? "g" : "ml");
}

} // namespace

std::string amount_written(const kitchen::Kitchen& kitchen, const Holding& holding) {
  const Food& food = kitchen.food(holding.food);
  const bool us = kitchen.household.system == measure::System::us;
  const Rational packs = holding.pack > 0 ? holding.amount / holding.pack : Rational(1);
  if (packs > 1 && denominator(packs) == 1) {
    return fmt::format("{} ({}) packs {}", measure::print_exact(packs),
                       exactly(food, holding.pack, us), food.name);
  }
  return fmt::format("{} {}", exactly(food, holding.amount, us), food.name);
}

std::string line_written(const kitchen::Kitchen& kitchen, const Holding& holding) {
  std::string out =
      fmt::format("{}, {}", amount_written(kitchen, holding), foods::name(holding.place));
  if (holding.opened) {
    out += ", opened " + text::print_date(*holding.opened);
  }
  out += holding.thawed ? ", thawed" : "";
  out += holding.hard ? ", hard" : "";
  return out + (holding.use_by ? ", until " + text::print_date(*holding.use_by) : "");
}

std::string line_written(const kitchen::Kitchen& kitchen, const kitchen::MadeLot& lot) {
  const kitchen::Recipe& recipe = kitchen.recipe(*lot.what.recipe());
  const Rational servings = lot.times.value_or(1) * recipe.serves;
  return fmt::format("{} {} {}, {}, made {}{}", measure::print_exact(servings),
                     servings > 1 ? "servings" : "serving", recipe.slug, foods::name(lot.place),
                     text::print_date(lot.made),
                     lot.use_by ? ", until " + text::print_date(*lot.use_by) : "");
}

std::string file_written(const kitchen::Kitchen& kitchen, const Past& past) {
  std::string out = fmt::format("# What is in the house on {}, in the morning.\ndate: {}\non hand:\n",
                                text::print_day(past.until), text::print_date(past.until));
  for (const foods::Place place :
       {foods::Place::fridge, foods::Place::freezer, foods::Place::pantry}) {
    std::vector<std::string> lines;
    for (const Holding& one : past.there) {
      if (one.place == place) {
        lines.push_back(line_written(kitchen, one));
      }
    }
    for (const kitchen::MadeLot& lot : past.made) {
      if (lot.place == place) {
        lines.push_back(line_written(kitchen, lot));
      }
    }
    out += lines.empty() ? "" : fmt::format("  # {}\n", foods::name(place));
    for (const std::string& line : lines) {
      out += "  - " + line + "\n";
    }
  }
  return out;
}

} // namespace manciple::history
