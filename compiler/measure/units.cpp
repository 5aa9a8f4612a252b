#include "measure/units.hpp"

#include "text/words.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <vector>

namespace manciple::measure {
namespace {

constexpr std::string_view hb44 = "NIST Handbook 44, Appendix C";
constexpr std::string_view sp811 = "NIST Special Publication 811, Appendix B";
constexpr std::string_view si = "SI";
constexpr std::string_view cfr = "21 CFR 101.9(b)(5)(viii): household cup of 240 mL";
constexpr std::string_view uk =
    "UK Weights and Measures Act 1985, Schedule 1: gallon of 4.54609 dm3";
constexpr std::string_view metric_spoons = "common practice, no source";

std::vector<UnitFacts> make_table() {
  // The US gallon is 231 cubic inches; the avoirdupois pound 0.45359237 kg; both exact.
  const Rational gallon = decimal("3785.411784");
  const Rational pound = decimal("453.59237");
  const Rational imperial = decimal("4546.09");
  const Rational tsp = gallon / 768;
  const auto mass = Dimension::mass;
  const auto volume = Dimension::volume;
  const auto count = Dimension::count;
  return {
      {Unit::gram, "g", "g", mass, 1, si},
      {Unit::kilogram, "kg", "kg", mass, 1000, si},
      {Unit::milligram, "mg", "mg", mass, Rational(1, 1000), si},
      {Unit::ounce, "oz", "oz", mass, pound / 16, hb44},
      {Unit::pound, "lb", "lb", mass, pound, hb44},
      {Unit::milliliter, "ml", "ml", volume, 1, si},
      {Unit::centiliter, "cl", "cl", volume, 10, si},
      {Unit::deciliter, "dl", "dl", volume, 100, si},
      {Unit::liter, "l", "l", volume, 1000, si},
      {Unit::us_teaspoon, "tsp", "tsp", volume, tsp, hb44},
      {Unit::us_tablespoon, "tbsp", "tbsp", volume, tsp * 3, hb44},
      {Unit::us_fluid_ounce, "fl oz", "fl oz", volume, gallon / 128, hb44},
      {Unit::us_cup, "cup", "cups", volume, gallon / 16, hb44},
      {Unit::us_pint, "pint", "pints", volume, gallon / 8, hb44},
      {Unit::us_quart, "quart", "quarts", volume, gallon / 4, hb44},
      {Unit::us_gallon, "gal", "gal", volume, gallon, hb44},
      {Unit::us_legal_cup, "legal cup", "legal cups", volume, 240, cfr},
      {Unit::metric_teaspoon, "metric tsp", "metric tsp", volume, 5, metric_spoons},
      {Unit::metric_tablespoon, "metric tbsp", "metric tbsp", volume, 15, metric_spoons},
      {Unit::metric_cup, "metric cup", "metric cups", volume, 250, metric_spoons},
      {Unit::australian_tablespoon, "Australian tbsp", "Australian tbsp", volume, 20,
       metric_spoons},
      {Unit::dessertspoon, "dessertspoon", "dessertspoons", volume, 10, metric_spoons},
      {Unit::imperial_fluid_ounce, "imperial fl oz", "imperial fl oz", volume, imperial / 160, uk},
      {Unit::imperial_cup, "imperial cup", "imperial cups", volume, imperial / 16, sp811},
      {Unit::imperial_pint, "imperial pint", "imperial pints", volume, imperial / 8, uk},
      {Unit::imperial_quart, "imperial quart", "imperial quarts", volume, imperial / 4, uk},
      {Unit::imperial_gallon, "imperial gal", "imperial gal", volume, imperial, uk},
      {Unit::pinch, "pinch", "pinches", volume, tsp / 16, "common practice, no source"},
      {Unit::dash, "dash", "dashes", volume, tsp / 8, "common practice, no source"},
      {Unit::smidgen, "smidgen", "smidgens", volume, tsp / 32, "common practice, no source"},
      {Unit::drop, "drop", "drops", volume, Rational(1, 20), "common practice, no source"},
      {Unit::each, "each", "each", count, 1, "counting"},
      {Unit::dozen, "dozen", "dozen", count, 12, "counting"},
  };
}

const std::vector<UnitFacts>& table() {
  static const std::vector<UnitFacts> units = make_table();
  return units;
}

// What a word means to cooks of each system, in the order us, imperial, metric, australian.
struct Word {
  std::string_view word;
  std::array<Unit, 4> meaning;
};

constexpr std::array<Unit, 4> always(Unit unit) {
  return {unit, unit, unit, unit};
}

constexpr std::array<Unit, 4> teaspoons{Unit::us_teaspoon, Unit::metric_teaspoon,
                                        Unit::metric_teaspoon, Unit::metric_teaspoon};
constexpr std::array<Unit, 4> tablespoons{Unit::us_tablespoon, Unit::metric_tablespoon,
                                          Unit::metric_tablespoon, Unit::australian_tablespoon};
constexpr std::array<Unit, 4> cups{Unit::us_cup, Unit::imperial_cup, Unit::metric_cup,
                                   Unit::metric_cup};
constexpr std::array<Unit, 4> fluid_ounces{Unit::us_fluid_ounce, Unit::imperial_fluid_ounce,
                                           Unit::imperial_fluid_ounce, Unit::imperial_fluid_ounce};
constexpr std::array<Unit, 4> pints{Unit::us_pint, Unit::imperial_pint, Unit::imperial_pint,
                                    Unit::imperial_pint};
constexpr std::array<Unit, 4> quarts{Unit::us_quart, Unit::imperial_quart, Unit::imperial_quart,
                                     Unit::imperial_quart};
constexpr std::array<Unit, 4> gallons{Unit::us_gallon, Unit::imperial_gallon, Unit::imperial_gallon,
                                      Unit::imperial_gallon};

constexpr auto words = std::to_array<Word>({
    {"g", always(Unit::gram)},
    {"gm", always(Unit::gram)},
    {"gram", always(Unit::gram)},
    {"gramme", always(Unit::gram)},
    {"kg", always(Unit::kilogram)},
    {"kilo", always(Unit::kilogram)},
    {"kilogram", always(Unit::kilogram)},
    {"mg", always(Unit::milligram)},
    {"oz", always(Unit::ounce)},
    {"ounce", always(Unit::ounce)},
    {"lb", always(Unit::pound)},
    {"pound", always(Unit::pound)},
    {"ml", always(Unit::milliliter)},
    {"milliliter", always(Unit::milliliter)},
    {"millilitre", always(Unit::milliliter)},
    {"cl", always(Unit::centiliter)},
    {"dl", always(Unit::deciliter)},
    {"l", always(Unit::liter)},
    {"liter", always(Unit::liter)},
    {"litre", always(Unit::liter)},
    {"tsp", teaspoons},
    {"teaspoon", teaspoons},
    {"tbsp", tablespoons},
    {"tbs", tablespoons},
    {"tblsp", tablespoons},
    {"tablespoon", tablespoons},
    {"dsp", always(Unit::dessertspoon)},
    {"dstspn", always(Unit::dessertspoon)},
    {"dessertspoon", always(Unit::dessertspoon)},
    {"dessertspoonful", always(Unit::dessertspoon)},
    {"fl oz", fluid_ounces},
    {"fluid ounce", fluid_ounces},
    {"c", cups},
    {"cup", cups},
    {"pt", pints},
    {"pint", pints},
    {"qt", quarts},
    {"quart", quarts},
    {"gal", gallons},
    {"gallon", gallons},
    {"us cup", always(Unit::us_cup)},
    {"us pint", always(Unit::us_pint)},
    {"us gallon", always(Unit::us_gallon)},
    {"us fl oz", always(Unit::us_fluid_ounce)},
    {"legal cup", always(Unit::us_legal_cup)},
    {"metric cup", always(Unit::metric_cup)},
    {"metric tsp", always(Unit::metric_teaspoon)},
    {"metric tbsp", always(Unit::metric_tablespoon)},
    {"australian tbsp", always(Unit::australian_tablespoon)},
    {"imperial fl oz", always(Unit::imperial_fluid_ounce)},
    {"imperial cup", always(Unit::imperial_cup)},
    {"imperial pint", always(Unit::imperial_pint)},
    {"imperial quart", always(Unit::imperial_quart)},
    {"imperial gal", always(Unit::imperial_gallon)},
    {"imperial gallon", always(Unit::imperial_gallon)},
    {"pinch", always(Unit::pinch)},
    {"dash", always(Unit::dash)},
    {"smidgen", always(Unit::smidgen)},
    {"drop", always(Unit::drop)},
    {"each", always(Unit::each)},
    {"dozen", always(Unit::dozen)},
});

} // namespace

std::string_view name(Dimension dimension) {
  switch (dimension) {
  case Dimension::mass:
    return "weight";
  case Dimension::volume:
    return "volume";
  case Dimension::count:
    return "count";
  }
  return {};
}

std::optional<System> parse_system(std::string_view word) {
  for (const System system : {System::us, System::imperial, System::metric, System::australian}) {
    if (word == name(system)) {
      return system;
    }
  }
  return std::nullopt;
}

std::string_view name(System system) {
  switch (system) {
  case System::us:
    return "us";
  case System::imperial:
    return "imperial";
  case System::metric:
    return "metric";
  case System::australian:
    return "australian";
  }
  return {};
}

const UnitFacts& facts(Unit unit) {
  return table()[static_cast<std::size_t>(unit)];
}

std::span<const UnitFacts> all_units() {
  return table();
}

std::string Customs::meaning(std::string_view word) const {
  std::string low = text::lower(word);
  const auto own = words.find(low);
  return own == words.end() ? low : own->second;
}

std::optional<Unit> find_unit(std::string_view word, const Customs& customs) {
  word = text::trim(word);
  const auto system = static_cast<std::size_t>(customs.system);
  if (const auto own = customs.words.find(text::lower(word)); own != customs.words.end()) {
    return find_unit(own->second, customs.system);
  }
  if (word == "T" || word == "T.") {
    return tablespoons[system];
  }
  if (word == "t" || word == "t.") {
    return teaspoons[system];
  }
  std::string plain = text::lower(word);
  std::erase(plain, '.');
  const auto look = [&](std::string_view form) -> std::optional<Unit> {
    const auto* const found =
        std::find_if(words.begin(), words.end(), [&](const Word& w) { return w.word == form; });
    return found == words.end() ? std::nullopt : std::optional(found->meaning[system]);
  };
  const std::optional<Unit> as_written = look(plain);
  return as_written ? as_written : look(text::singular(plain));
}

} // namespace manciple::measure
