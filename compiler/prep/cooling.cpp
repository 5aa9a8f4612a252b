#include "prep/cooling.hpp"

#include "foods/convert.hpp"
#include "kitchen/appliances.hpp"
#include "kitchen/contents.hpp"
#include "kitchen/food_code.hpp"
#include "measure/print.hpp"
#include "prep/eaten_hot.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace manciple::prep {
namespace {

// Inches of a pan, and of what is in it.
constexpr int pan_width = 9;
constexpr int pan_length = 13;
constexpr int pan_depth = 2;
constexpr int pan_depth_metric = 5; // centimetres

// What it holds, in millilitres (25.4 mm an inch, exact).
const Rational& pan() {
  static const Rational cubic_inch(16387064, 1000000);
  static const Rational out = cubic_inch * pan_width * pan_length * pan_depth;
  return out;
}

constexpr int full_depth = 48; // minutes for a full pan
constexpr int at_least = 20;   // for a thin layer

// Baked from flour and nothing that spoils: it cools on a rack.
bool is_bread(const kitchen::Kitchen& kitchen, const kitchen::Recipe& recipe) {
  using foods::Class;
  const auto has = [&](Class what) { return kitchen::holds(kitchen, recipe, what); };
  return kitchen::is_baked_from_flour(kitchen, recipe) && !has(Class::meat) &&
         !has(Class::poultry) && !has(Class::minced) && !has(Class::fish) &&
         !has(Class::shellfish) && !has(Class::ready_meat) && !has(Class::vegetable);
}

} // namespace

std::optional<Rational> millilitres_of(const kitchen::Kitchen& kitchen,
                                       const kitchen::Recipe& recipe) {
  Rational goes_in = 0;
  for (const kitchen::Ingredient& line : recipe.ingredients) {
    const foods::Food* food = kitchen::food_of(kitchen, line);
    if (food == nullptr || !line.amount) {
      continue;
    }
    const auto bought = foods::as_purchased(*food, *line.amount);
    if (bought && foods::basis(*food) != measure::Dimension::count) {
      goes_in += bought->amount;
    }
  }
  for (const kitchen::Ingredient& line : recipe.ingredients) {
    const auto& unit = line.amount ? measure::facts(line.amount->measure.unit)
                                   : measure::facts(measure::Unit::gram);
    const bool measured = line.recipe() != nullptr && line.amount &&
                          !line.amount->measure.is_counted() &&
                          unit.dimension != measure::Dimension::count;
    goes_in += measured ? Rational(line.amount->number * unit.factor) : Rational(0);
  }
  for (const kitchen::Makes& makes : recipe.makes) {
    const auto& unit = measure::facts(makes.measure.unit);
    if (makes.measure.piece.empty() && unit.dimension == measure::Dimension::volume) {
      goes_in = std::max(goes_in, Rational(makes.number * unit.factor));
    }
  }
  return goes_in > 0 ? std::optional(goes_in) : std::nullopt;
}

int cooling_pans(const Rational& millilitres) {
  return static_cast<int>(measure::to_int64(measure::ceil(millilitres / pan())));
}

std::string depth_of_pans(measure::System system) {
  return system == measure::System::us ? fmt::format("{} in", pan_depth)
                                       : fmt::format("{} cm", pan_depth_metric);
}

std::optional<Cooling> cooling(const kitchen::Kitchen& kitchen, const resolve::Making& making) {
  const kitchen::Recipe& recipe = kitchen.recipe(making.recipe);
  Rational stored = making.left();
  for (const resolve::Consumer& consumer : making.consumers) {
    stored += consumer.date == making.date ? Rational(0) : consumer.times;
  }
  if (is_bread(kitchen, recipe) || !kitchen::is_heated(recipe) || !is_eaten_hot(kitchen, recipe) ||
      recipe.keeps_pantry || stored == 0) {
    return std::nullopt;
  }
  // What it makes, where it says so: of a stock, the bones stay behind.
  std::optional<Rational> one;
  for (const kitchen::Makes& makes : recipe.makes) {
    const auto& unit = measure::facts(makes.measure.unit);
    if (makes.measure.piece.empty() && unit.dimension == measure::Dimension::volume) {
      one = makes.number * unit.factor;
    }
  }
  const bool liquid = one.has_value();
  one = one ? one : millilitres_of(kitchen, recipe);
  if (!one) {
    return std::nullopt;
  }
  Cooling out;
  out.liquid = liquid;
  out.pans = cooling_pans(*one * stored);
  const Rational depth = *one * stored / (out.pans * pan()); // of a full one
  out.minutes = static_cast<int>(measure::to_int64(measure::ceil(depth * depth * full_depth)));
  out.minutes = std::max(out.minutes, at_least);
  return out;
}

std::string how_to_cool(const Cooling& cooled, bool in_boxes, const measure::Writing& writing) {
  const measure::System system = writing.system;
  const std::string to = measure::print_at_most(kitchen::cooled_first.fahrenheit, system);
  if (in_boxes) {
    return fmt::format("the open boxes in {}, to {}", cooled.liquid ? "ice water" : "a draught",
                       to);
  }
  return fmt::format("in {} shallow {} no deeper than {}{}, to {}", cooled.pans,
                     cooled.pans == 1 ? "pan" : "pans", depth_of_pans(system),
                     cooled.liquid ? ", in ice water" : "", to);
}

} // namespace manciple::prep
