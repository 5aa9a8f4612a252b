#pragma once

#include "measure/units.hpp"
#include "text/date.hpp"

#include <span>
#include <string>
#include <string_view>

/// The small house that `manciple new` begins with.
namespace manciple::cli {

/// A file of it. `DAY1` to `DAY9` stand for the days of its plan, `DAY0` for the day before.
struct HouseFile {
  std::string_view name; ///< below the house: "recipes/pancakes.yaml"
  std::string_view text;
};

/// Of a house with US or with metric measures, in the order of names; made by the build from
/// compiler/cli/house.
std::span<const HouseFile> house_files(measure::System system);

/// The text of a file with the days of a plan that begins on `from`.
std::string with_days(std::string_view text, text::Date from);

} // namespace manciple::cli
