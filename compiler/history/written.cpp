#include "history/written.hpp"

#include "foods/counted.hpp"
#include "foods/spoken.hpp"
#include "history/replacement.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <array>
#include <limits>
#include <span>

namespace manciple::history {
namespace {

using foods::Food;
using measure::Unit;

// Parts that a cook writes: quarters.
constexpr int quarters = 4;
constexpr int thousandths = 1000;
// Nobody counts more spoons.
constexpr int most_spoons = 8;

// In that measure, if it is whole or in such parts of it, and exactly the amount.
std::optional<Rational> in_measure(const Food& food, const Rational& amount,
                                   const foods::Measure& measure, int parts) {
  const auto number = foods::measured(food, amount, measure, foods::Form::plain);
  if (!number || number->amount <= 0 || denominator(Rational(number->amount * parts)) != 1) {
    return std::nullopt;
  }
  const auto back = foods::as_purchased(food, {number->amount, measure});
  return back && back->amount == amount ? std::optional(number->amount) : std::nullopt;
}

std::optional<std::string> in_units(const Food& food, const Rational& amount,
                                    std::span<const Unit> units, int parts,
                                    int most = std::numeric_limits<int>::max()) {
  for (const Unit unit : units) {
    const auto number = in_measure(food, amount, {unit, {}}, parts);
    if (number && *number <= most) {
      return foods::print({*number, {unit, {}}});
    }
  }
  return std::nullopt;
}

std::optional<std::string> in_units(const Food& food, const Rational& amount, bool us) {
  using enum Unit;
  static constexpr std::array us_volumes{us_gallon, us_quart, us_fluid_ounce};
  static constexpr std::array us_weights{pound, ounce};
  static constexpr std::array us_spoons{us_cup, us_tablespoon, us_teaspoon};
  static constexpr std::array metric{kilogram, gram, liter, milliliter};
  if (!us) {
    return in_units(food, amount, metric, thousandths);
  }
  const bool liquid = food.shop_in == "gal" || food.shop_in == "qt" || food.shop_in == "fl oz";
  auto words = liquid ? in_units(food, amount, us_volumes, quarters) : std::nullopt;
  words = words ? words : in_units(food, amount, us_weights, quarters);
  return words ? words : in_units(food, amount, us_spoons, quarters, most_spoons);
}

// So many whole ones of what a bare count of it means.
std::optional<foods::Amount> in_pieces(const Food& food, const Rational& amount) {
  const foods::Measure piece{Unit::each, foods::counted_by(food)};
  const auto number = piece.piece.empty() ? std::nullopt : in_measure(food, amount, piece, 1);
  return number ? std::optional(foods::Amount{*number, piece}) : std::nullopt;
}

// "12 eggs", "2 heads garlic".
std::string pieces_written(const Food& food, const foods::Amount& pieces) {
  const std::string& piece = pieces.measure.piece;
  const bool several = pieces.number > 1;
  const std::string number = measure::print_exact(pieces.number);
  if (foods::counts_itself(food, piece) || food.name.ends_with(piece)) {
    return fmt::format("{} {}", number, several ? text::plural(food.name) : food.name);
  }
  return fmt::format("{} {} {}", number, several ? text::plural(piece) : piece, food.name);
}

// To the milligram, and never less: nobody weighs finer, and no use goes short by it.
std::string in_base(const Food& food, const Rational& amount) {
  const bool mass = foods::basis(food) == measure::Dimension::mass;
  const Rational up = Rational(measure::ceil(Rational(amount * thousandths))) / thousandths;
  return fmt::format("{} {}", measure::print_decimal(up, 3), mass ? "g" : "ml");
}

// In units, or exactly enough.
std::string measured(const Food& food, const Rational& amount, bool us) {
  if (foods::basis(food) == measure::Dimension::count) {
    return measure::print_exact(amount);
  }
  const auto words = in_units(food, amount, us);
  return words ? *words : in_base(food, amount);
}

// With the food's name.
std::string written(const Food& food, const Rational& amount, bool us) {
  if (const auto pieces = in_pieces(food, amount)) {
    return pieces_written(food, *pieces);
  }
  const bool counted = foods::basis(food) == measure::Dimension::count;
  return fmt::format("{} {}", measured(food, amount, us),
                     counted ? food.name : foods::name_of(food, amount));
}

std::string without_name(const Food& food, const Rational& amount, bool us) {
  const bool counted = foods::basis(food) == measure::Dimension::count;
  const auto pieces = counted ? std::nullopt : in_pieces(food, amount);
  return pieces ? foods::print(*pieces) : measured(food, amount, us);
}

bool is_us(const kitchen::Kitchen& kitchen) {
  return kitchen.household.system == measure::System::us;
}

} // namespace

std::string exactly(const kitchen::Kitchen& kitchen, foods::FoodId food, const Rational& amount) {
  return without_name(kitchen.food(food), amount, is_us(kitchen));
}

std::string amount_written(const kitchen::Kitchen& kitchen, const Holding& holding) {
  const Food& food = kitchen.food(holding.food);
  const Rational packs = holding.pack > 0 ? holding.amount / holding.pack : Rational(1);
  if (packs > 1 && denominator(packs) == 1) {
    return fmt::format("{} ({}) packs {}", measure::print_exact(packs),
                       without_name(food, holding.pack, is_us(kitchen)),
                       foods::name_of(food, holding.amount));
  }
  return written(food, holding.amount, is_us(kitchen));
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
  const kitchen::Currency& currency = kitchen.household.currency;
  Rational sum = 0;
  std::size_t unknown = 0;
  std::string lines;
  for (const foods::Place place :
       {foods::Place::fridge, foods::Place::freezer, foods::Place::pantry}) {
    std::string of_place;
    Rational worth = 0;
    const auto add = [&](const std::string& line, const std::optional<Rational>& cost) {
      worth += cost.value_or(0);
      unknown += cost ? 0 : 1;
      of_place += fmt::format(
          "  - {}{}\n", line,
          cost ? "  # " + currency.print(measure::to_int64(measure::round(*cost))) : "");
    };
    for (const Holding& one : past.there) {
      if (one.place == place) {
        add(line_written(kitchen, one), replacement_cost(kitchen, one));
      }
    }
    for (const kitchen::MadeLot& lot : past.made) {
      if (lot.place == place) {
        add(line_written(kitchen, lot), replacement_cost(kitchen, lot));
      }
    }
    if (!of_place.empty()) {
      lines += fmt::format("  # {}: {}\n{}", foods::name(place),
                           currency.print(measure::to_int64(measure::round(worth))), of_place);
      sum += worth;
    }
  }
  std::string head =
      fmt::format("# What is in the house on the morning of {}.\n", text::print_day(past.until));
  if (sum > 0) {
    head += fmt::format("# It would cost {} to buy again{}.\n",
                        currency.print(measure::to_int64(measure::round(sum))),
                        unknown == 0   ? ""
                        : unknown == 1 ? "; one thing has no known price"
                                       : fmt::format("; {} things have no known price", unknown));
  }
  return fmt::format("{}date: {}\non hand:\n{}", head, text::print_date(past.until), lines);
}

} // namespace manciple::history
