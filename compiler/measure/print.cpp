#include "measure/print.hpp"

#include "measure/at_hand.hpp"

#include <fmt/format.h>

#include <array>

namespace manciple::measure {
namespace {

std::string with_unit(std::string number, const Rational& amount, Unit unit) {
  if (unit == Unit::each) {
    return number;
  }
  const UnitFacts& f = facts(unit);
  return fmt::format("{} {}", number, amount > 1 ? f.plural : f.name);
}

// The nearest whole number of so many parts of a unit; a half goes up.
Rational nearest_part(const Rational& amount, int parts) {
  return {round(amount * parts), Integer(parts)};
}

// By the spoon, for a cook whose teaspoon and tablespoon hold so many millilitres.
std::string spoons(const Rational& ml, const Rational& teaspoon, const Rational& tablespoon) {
  // Less than half of the smallest spoon, an eighth of one, is between two fingers.
  const Rational pinch(1, 16);
  if (ml >= tablespoon) {
    return fmt::format("{} tbsp", print_exact(by_the_tablespoon(ml / tablespoon)));
  }
  if (ml < teaspoon * pinch) {
    return ml > 0 ? "a pinch" : "0";
  }
  const Rational number = by_the_teaspoon(ml / teaspoon);
  return number * teaspoon >= tablespoon ? "1 tbsp" : fmt::format("{} tsp", print_exact(number));
}

// What a recipe measures by the spoon is measured so again; a jug shows 5 ml, a large one 50.
std::string metric_volume(const Quantity& quantity, Writing writing) {
  const Rational ml = in_base(quantity);
  const Rational teaspoon = facts(Unit::metric_teaspoon).factor;
  const bool australian = writing.system == System::australian;
  const Rational tablespoon =
      facts(australian ? Unit::australian_tablespoon : Unit::metric_tablespoon).factor;
  constexpr int most_spoons = 4;
  constexpr int jug = 5;
  constexpr int large_jug = 50;
  const bool spooned = quantity.unit == Unit::metric_teaspoon ||
                       quantity.unit == Unit::metric_tablespoon ||
                       quantity.unit == Unit::australian_tablespoon;
  if (ml < teaspoon * 2 || (spooned && ml <= tablespoon * most_spoons)) {
    return spoons(ml, teaspoon, tablespoon);
  }
  if (ml >= 1000) {
    const Rational seen(round(ml / large_jug) * large_jug);
    return fmt::format("{} l", print_decimal(seen / 1000, 2, writing.point));
  }
  return fmt::format("{} ml", (round(ml / jug) * jug).str());
}

std::string volume_for_kitchen(const Quantity& quantity, Writing writing) {
  if (writing.system != System::us) {
    return metric_volume(quantity, writing);
  }
  const Rational ml = in_base(quantity);
  if (const Rational cups = ml / facts(Unit::us_cup).factor; cups >= Rational(1, 4)) {
    const Rational number = by_the_cup(cups);
    return with_unit(print_exact(number), number, Unit::us_cup);
  }
  const std::string said =
      spoons(ml, facts(Unit::us_teaspoon).factor, facts(Unit::us_tablespoon).factor);
  return said == "4 tbsp" ? "1/4 cup" : said;
}

std::string mass_for_kitchen(const Rational& g, Writing writing) {
  if (writing.system == System::us && g >= facts(Unit::ounce).factor / 4) {
    const Rational pounds = g / facts(Unit::pound).factor;
    if (pounds >= 1) {
      const Rational part = nearest_part(pounds, 4);
      return with_unit(print_exact(part), part, Unit::pound);
    }
    const Rational ounces = g / facts(Unit::ounce).factor;
    const Rational part = nearest_part(ounces, ounces < 4 ? 4 : 2);
    return with_unit(print_exact(part), part, Unit::ounce);
  }
  if (g >= 1000) {
    return fmt::format("{} kg", print_decimal(g / 1000, 2, writing.point));
  }
  if (g * 2 < 1) {
    return g > 0 ? "a pinch" : "0";
  }
  return fmt::format("{} g", round(g).str());
}

} // namespace

std::string print(const Quantity& quantity) {
  return with_unit(print_exact(quantity.amount), quantity.amount, quantity.unit);
}

std::string print_for_kitchen(const Quantity& quantity, Writing writing) {
  const Rational base = in_base(quantity);
  switch (dimension(quantity)) {
  case Dimension::mass:
    return mass_for_kitchen(base, writing);
  case Dimension::volume:
    return volume_for_kitchen(quantity, writing);
  case Dimension::count:
    return print_exact(by_the_piece(base, Cut::quarters));
  }
  return {};
}

namespace {

Rational celsius(int fahrenheit) {
  return Rational(fahrenheit - 32) * 5 / 9;
}

// What is more than nothing is not printed as nothing.
std::string smaller_unit(const Rational& amount, int decimals, std::string_view unit, char point) {
  const std::string number = print_decimal(amount, decimals, point);
  const Rational least(1, decimals == 0 ? 1 : 10);
  return amount > 0 && number == "0"
             ? fmt::format("under {} {}", print_decimal(least, 1, point), unit)
             : fmt::format("{} {}", number, unit);
}

} // namespace

std::string print_at_least(int fahrenheit, System system) {
  return system == System::us ? fmt::format("{} F", fahrenheit)
                              : fmt::format("{} °C", ceil(celsius(fahrenheit)).str());
}

std::string print_on_dial(int fahrenheit, System system) {
  const bool us = system == System::us;
  const Rational degrees = us ? Rational(fahrenheit) : celsius(fahrenheit);
  const Integer fives = round(degrees / 5);
  return fmt::format("{} {}", Integer(fives * 5).str(), us ? "F" : "°C");
}

std::string print_at_most(int fahrenheit, System system) {
  return system == System::us ? fmt::format("{} F", fahrenheit)
                              : fmt::format("{} °C", floor(celsius(fahrenheit)).str());
}

std::string print_for_shop(const Quantity& quantity, Writing writing) {
  const Rational base = in_base(quantity);
  switch (dimension(quantity)) {
  case Dimension::mass:
    if (writing.system == System::us) {
      const Rational pounds = base / facts(Unit::pound).factor;
      return pounds >= 1 ? fmt::format("{} lb", print_decimal(pounds, 2, writing.point))
                         : smaller_unit(pounds * 16, 1, "oz", writing.point);
    }
    return base >= 1000 ? fmt::format("{} kg", print_decimal(base / 1000, 2, writing.point))
                        : smaller_unit(base, 0, "g", writing.point);
  case Dimension::volume:
    if (writing.system == System::us) {
      const Rational ounces = base / facts(Unit::us_fluid_ounce).factor;
      if (ounces >= 64) {
        return fmt::format("{} gal", print_decimal(ounces / 128, 2, writing.point));
      }
      return ounces >= 16 ? fmt::format("{} qt", print_decimal(ounces / 32, 2, writing.point))
                          : smaller_unit(ounces, 1, "fl oz", writing.point);
    }
    return base >= 1000 ? fmt::format("{} l", print_decimal(base / 1000, 2, writing.point))
                        : smaller_unit(base, 0, "ml", writing.point);
  case Dimension::count:
    return ceil(base).str();
  }
  return {};
}

} // namespace manciple::measure
