#pragma once

#include "measure/rational.hpp"

#include <optional>
#include <span>
#include <string_view>

namespace manciple::measure {

enum class Dimension { mass, volume, count };
std::string_view name(Dimension dimension);

/// Whose cups and pints a text means.
enum class System { us, imperial, metric, australian };
std::optional<System> parse_system(std::string_view word);
std::string_view name(System system);

/// A unit of the table, by its place in it.
enum class Unit : std::uint8_t {
  gram,
  kilogram,
  milligram,
  ounce,
  pound,
  milliliter,
  centiliter,
  deciliter,
  liter,
  us_teaspoon,
  us_tablespoon,
  us_fluid_ounce,
  us_cup,
  us_pint,
  us_quart,
  us_gallon,
  us_legal_cup,
  metric_teaspoon,
  metric_tablespoon,
  metric_cup,
  australian_tablespoon,
  dessertspoon,
  imperial_fluid_ounce,
  imperial_cup,
  imperial_pint,
  imperial_quart,
  imperial_gallon,
  pinch,
  dash,
  smidgen,
  drop,
  each,
  dozen,
};

struct UnitFacts {
  Unit unit;
  std::string_view name;   ///< as printed for one: "cup"
  std::string_view plural; ///< as printed for more: "cups"; abbreviations do not change
  Dimension dimension;
  Rational factor; ///< in grams, millilitres or pieces; exact
  std::string_view source;
};

const UnitFacts& facts(Unit unit);
std::span<const UnitFacts> all_units();

/// The unit that a word (or two: "fl oz", "imperial pint") means to a cook of `system`. A capital T
/// is a tablespoon, a small t a teaspoon; otherwise case does not matter, nor does a full stop.
std::optional<Unit> find_unit(std::string_view word, System system);

} // namespace manciple::measure
