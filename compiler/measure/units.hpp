#pragma once

#include "measure/rational.hpp"

#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace manciple::measure {

enum class Dimension { mass, volume, count };
std::string_view name(Dimension dimension);

/// Whose cups and pints a text means.
enum class System { us, imperial, metric, australian };
std::optional<System> parse_system(std::string_view word);
std::string_view name(System system);

/// How amounts are written for people: in whose measures, and with a point or a comma. In data, as
/// a measure alone, the mark is a point.
struct Writing {
  System system = System::us;
  char point = '.';

  constexpr Writing() = default;
  constexpr Writing(System measures, char mark = '.') : system(measures), point(mark) {}
  constexpr operator System() const { return system; }
};

/// A house's own words for measures, pieces and packs, in lower case, and the word of ours that
/// each means: "el" is "tbsp", "bund" is "bunch".
using OwnWords = std::map<std::string, std::string, std::less<>>;

/// What words of measures mean to the writer of a text.
struct Customs {
  Customs() = default;
  Customs(System whose) : system(whose) {}
  Customs(System whose, OwnWords own) : system(whose), words(std::move(own)) {}

  /// What a word means, in lower case: itself, unless it is one of the house's own.
  [[nodiscard]] std::string meaning(std::string_view word) const;

  System system = System::us;
  OwnWords words;
};

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

/// The unit that a word (or two: "fl oz", "imperial pint") means by those customs. A capital T
/// is a tablespoon, a small t a teaspoon; otherwise case does not matter, nor does a full stop.
std::optional<Unit> find_unit(std::string_view word, const Customs& customs);

} // namespace manciple::measure
