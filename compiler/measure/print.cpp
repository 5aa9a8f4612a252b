#include "measure/print.hpp"

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

// The nearest amount that is a whole number of one of the `parts` of a unit.
Rational nearest_part(const Rational& amount, std::initializer_list<int> parts) {
  Rational best;
  bool any = false;
  for (const int part : parts) {
    const Rational candidate(round(amount * part), Integer(part));
    if (!any || abs(candidate - amount) < abs(best - amount)) {
      best = candidate;
      any = true;
    }
  }
  return best;
}

std::string volume_for_kitchen(const Rational& ml, Writing writing) {
  if (writing.system != System::us) {
    return ml >= 1000 ? fmt::format("{} l", print_decimal(ml / 1000, 2, writing.point))
                      : fmt::format("{} ml", print_decimal(ml, ml < 10 ? 1 : 0, writing.point));
  }
  const auto in = [&](Unit unit) { return Rational(ml / facts(unit).factor); };
  if (const Rational cups = in(Unit::us_cup); cups >= Rational(1, 4)) {
    const Rational part = nearest_part(cups, {4, 3});
    return with_unit(print_exact(part), part, Unit::us_cup);
  }
  if (const Rational spoons = in(Unit::us_tablespoon); spoons >= 1) {
    const Rational part = nearest_part(spoons, {2});
    return with_unit(print_exact(part), part, Unit::us_tablespoon);
  }
  const Rational spoons = in(Unit::us_teaspoon);
  if (const Rational part = nearest_part(spoons, {8, 4}); part > 0) {
    return with_unit(print_exact(part), part, Unit::us_teaspoon);
  }
  return spoons > 0 ? "a pinch" : "0";
}

std::string mass_for_kitchen(const Rational& g, Writing writing) {
  if (writing.system == System::us && g >= facts(Unit::ounce).factor / 4) {
    const Rational pounds = g / facts(Unit::pound).factor;
    if (pounds >= 1) {
      const Rational part = nearest_part(pounds, {4});
      return with_unit(print_exact(part), part, Unit::pound);
    }
    const Rational ounces = g / facts(Unit::ounce).factor;
    const Rational part = nearest_part(ounces, {ounces < 4 ? 4 : 2});
    return with_unit(print_exact(part), part, Unit::ounce);
  }
  if (g >= 1000) {
    return fmt::format("{} kg", print_decimal(g / 1000, 2, writing.point));
  }
  return fmt::format("{} g", print_decimal(g, g < 10 ? 1 : 0, writing.point));
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
    return volume_for_kitchen(base, writing);
  case Dimension::count:
    return print_exact(nearest_part(base, {4, 3}));
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
