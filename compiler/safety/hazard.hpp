#pragma once

#include "foods/classes.hpp"
#include "kitchen/recipe.hpp"
#include "text/diagnostics.hpp"

#include <span>
#include <string_view>
#include <vector>

namespace manciple::safety {

/// What is done to the food.
enum class Process : std::uint8_t {
  any,
  cold,        ///< the method has no step with heat
  hot,         ///< it has one
  not_boiled,  ///< nothing is boiled, pressure-cooked or simmered
  slow_cooker, ///< without being boiled before
};

/// What a recipe looks like that holds a danger. Every part that is given must fit.
struct Pattern {
  std::vector<foods::Class> food = {};    ///< some ingredient is of one of these
  std::vector<foods::Class> with = {};    ///< and some of each of these
  std::vector<foods::Class> without = {}; ///< and none of these
  std::vector<foods::Class> only = {};    ///< all are of one of these
  Process process = Process::any;
  /// A step says one of these; see `says`.
  std::vector<std::string_view> says = {};
  /// And neither the name nor a step says one of these.
  std::vector<std::string_view> unless = {};
  /// Kept there for more than so many days.
  std::optional<foods::Place> kept = {};
  int days = 0;
};

/// A danger: what is wrong, what to do, and who says so.
struct Hazard {
  text::Code code;
  bool forbidden = false; ///< an error; else a warning
  Pattern pattern;
  std::string_view what;
  std::string_view instead;
  std::string_view source;
};

std::span<const Hazard> hazards();

} // namespace manciple::safety
