#include "kitchen/recipe.hpp"

#include "kitchen/errors.hpp"
#include "kitchen/keys.hpp"
#include "kitchen/read.hpp"
#include "text/fields.hpp"
#include "text/nearest.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace manciple::kitchen {
namespace {

using text::Diagnostics;
using text::Fields;
using text::Node;

std::optional<int> read_oven(const Node& node, Diagnostics& diagnostics) {
  measure::Cursor cursor{node.scalar};
  const auto degrees = measure::scan_number(cursor);
  std::string_view scale = text::trim(cursor.rest());
  constexpr std::string_view sign = "\u00b0"; // "200 °C"
  scale.remove_prefix(scale.starts_with(sign) ? sign.size() : 0);
  scale = text::trim(scale);
  if (degrees && *degrees <= 600 && (scale == "F" || scale == "C")) {
    const Rational f = scale == "F" ? *degrees : Rational(*degrees * 9 / 5 + 32);
    return static_cast<int>(measure::to_int64(measure::round(f)));
  }
  diagnostics.error(errors::bad_value, node.span,
                    fmt::format("'{}' is not a temperature such as 425 F", node.scalar));
  return std::nullopt;
}

// "at most 30 min", or without the words.
std::optional<int> read_wait(const Node& node, Diagnostics& diagnostics) {
  constexpr std::string_view at_most = "at most ";
  Node time = node;
  if (time.scalar.starts_with(at_most)) {
    time.scalar.erase(0, at_most.size());
  }
  return read_minutes(time, diagnostics);
}

// "8 cups", "12 tortillas": a unit, or a word of the recipe's own.
std::optional<Makes> read_makes(const Node& node, std::string_view key,
                                const measure::Customs& customs, Diagnostics& diagnostics) {
  measure::Cursor cursor{node.scalar};
  const auto number = measure::scan_number(cursor);
  if (!number || *number <= 0) {
    diagnostics.error(errors::unread_amount, node.span,
                      fmt::format("'{}' needs an amount such as 8 cups", key));
    return std::nullopt;
  }
  Makes makes{*number, {}};
  if (const auto unit = measure::scan_unit(cursor, customs)) {
    makes.measure.unit = *unit;
  } else {
    const std::string_view word = text::trim(cursor.rest());
    if (!word.empty() && !text::is_letter(word.front())) {
      diagnostics.error(errors::unread_word, node.span,
                        fmt::format("'{}' is not a measure or a kind of piece", word),
                        "write it as '8 cups' or '12 tortillas'");
      return std::nullopt;
    }
    makes.measure.piece = text::singular(text::lower(word));
  }
  return makes;
}

MethodStep read_step(const Node& node, const measure::Customs& customs, Diagnostics& diagnostics) {
  MethodStep step;
  step.at = node.span;
  if (node.is_scalar()) {
    step.what = node.scalar;
    return step;
  }
  const Fields fields(node, keys::step, diagnostics);
  if (const Node* what = fields.find("do")) {
    step.what = what->scalar;
    step.at = what->span;
  }
  if (const Node* time = fields.find("hands on")) {
    step.hands_on = read_minutes(*time, diagnostics).value_or(0);
  }
  if (const Node* time = fields.find("then")) {
    step.then = read_minutes(*time, diagnostics).value_or(0);
  }
  if (const Node* on = fields.find("on")) {
    step.appliance = text::lower(on->scalar);
  }
  if (const Node* at = fields.find("at")) {
    step.fahrenheit = read_oven(*at, diagnostics);
  }
  if (const Node* in = fields.find("in")) {
    step.vessel = text::lower(in->scalar);
  }
  if (const Node* fits = fields.find("fits")) {
    step.fits = read_makes(*fits, "fits", customs, diagnostics);
  }
  if (const Node* wait = fields.find("wait")) {
    step.wait = read_wait(*wait, diagnostics);
  }
  return step;
}

void read_keeps(const Node& node, Recipe& recipe, Diagnostics& diagnostics) {
  const Fields fields(node, keys::keeps, diagnostics);
  if (const Node* time = fields.find("pantry")) {
    recipe.keeps_pantry = read_days(*time, diagnostics);
  }
  if (const Node* time = fields.find("fridge")) {
    recipe.keeps_fridge = read_days(*time, diagnostics);
  }
  if (const Node* time = fields.find("freezer")) {
    recipe.keeps_freezer = read_days(*time, diagnostics);
  }
}

// What a recipe is written for, where it does not say. Common practice, no source.
constexpr int usual_serves = 4;

// Tiny recipes would be made without end, huge ones never. Our own choice.
const Rational least_serves(1, 100);
constexpr int most_serves = 100'000;

Rational read_serves(const Node& node, Diagnostics& diagnostics) {
  const auto number = read_positive(node, diagnostics);
  if (number && (*number < least_serves || *number > most_serves)) {
    diagnostics.error(errors::bad_value, node.span, "'serves' must be between 0.01 and 100000");
    return 1;
  }
  return number.value_or(1);
}

// What it is; "{what: 1 ham bone, keeps: {fridge: 4 days}, of: ham}".
void read_by_product(const Node& node, Recipe& recipe, const measure::Customs& customs,
                     Names& names, Diagnostics& diagnostics) {
  GivesLine read;
  read.at = node.span;
  read.keeps_unfrozen = recipe.keeps_unfrozen();
  read.keeps_freezer = recipe.keeps_freezer;
  read.cool_place = recipe.cool_place();
  const Node* what = &node;
  std::optional<Fields> fields;
  if (!node.is_scalar()) {
    fields.emplace(node, keys::by_product, diagnostics);
    what = fields->find("what");
    if (what == nullptr) {
      return; // said
    }
    if (const Node* keeps = fields->find("keeps")) {
      Recipe of;
      read_keeps(*keeps, of, diagnostics);
      read.keeps_unfrozen = of.keeps_unfrozen();
      read.keeps_freezer = of.keeps_freezer;
      read.cool_place = of.cool_place();
    }
    for (const Node* name : fields->list("of")) {
      const auto of = names.find(name->scalar);
      const bool known =
          of && std::any_of(recipe.ingredients.begin(), recipe.ingredients.end(),
                            [&](const Ingredient& line) { return line.target == *of; });
      if (known) {
        read.of.push_back(*of);
      } else {
        diagnostics.error(
            errors::unknown_food, name->span,
            fmt::format("{} has no {} among its ingredients", recipe.name, name->scalar),
            "name one of the recipe's ingredients, as its line does");
      }
    }
  }
  for (Ingredient& one : read_line(*what, what->scalar, 0, customs, names, diagnostics)) {
    if (!one.amount) {
      diagnostics.error(errors::unread_amount, what->span, "no amount is given",
                        fmt::format("for example '1 {}'", one.text));
      continue;
    }
    GivesLine& added = recipe.gives.emplace_back(read);
    added.what = std::move(one);
  }
}

MadeIn read_made_in(const Node& node, Diagnostics& diagnostics) {
  constexpr std::array<std::pair<std::string_view, MadeIn>, 4> words{{
      {"whole", MadeIn::whole},
      {"halves", MadeIn::halves},
      {"quarters", MadeIn::quarters},
      {"exactly", MadeIn::exactly},
  }};
  const auto* const found = std::find_if(
      words.begin(), words.end(), [&](const auto& word) { return word.first == node.scalar; });
  if (found != words.end()) {
    return found->second;
  }
  diagnostics.error(errors::bad_value, node.span,
                    fmt::format("'{}' is not a way to divide a recipe", node.scalar),
                    "use whole, halves, quarters or exactly");
  return MadeIn::usual;
}

} // namespace

std::optional<Rational> Recipe::made_in_terms_of(const foods::Measure& measure) const {
  if (measure.piece == "serving") {
    return serves;
  }
  const auto& unit = measure::facts(measure.unit);
  for (const Makes& one : makes) {
    const bool counted = measure.is_counted();
    if (counted != one.measure.is_counted()) {
      continue;
    }
    if (counted ? one.measure.piece == measure.piece
                : measure::facts(one.measure.unit).dimension == unit.dimension) {
      return counted ? one.number
                     : Rational(one.number * measure::facts(one.measure.unit).factor / unit.factor);
    }
  }
  return std::nullopt;
}

Recipe read_recipe(const Node& file, std::string slug, const measure::Customs& household,
                   Names& names, Diagnostics& diagnostics) {
  Recipe recipe;
  recipe.slug = std::move(slug);
  recipe.name = text::title(recipe.slug);
  recipe.system = household.system;
  recipe.at = file.span;
  const Fields fields(file, keys::recipe, diagnostics);
  if (const Node* name = fields.find("name")) {
    recipe.name = name->scalar;
    recipe.at = name->span;
  }
  if (const Node* system = fields.find("measures")) {
    if (const auto known = measure::parse_system(system->scalar)) {
      recipe.system.system = *known;
    } else {
      diagnostics.error(errors::bad_value, system->span,
                        fmt::format("'{}' is not a system of measures", system->scalar),
                        "use us, imperial, metric or australian");
    }
  }
  const measure::Customs customs{recipe.system, household.words};
  recipe.serves = usual_serves;
  if (const Node* serves = fields.find("serves")) {
    recipe.serves = read_serves(*serves, diagnostics);
    recipe.says_serves = true;
  }
  for (const Node* makes : fields.list("makes")) {
    if (const auto read = read_makes(*makes, "makes", customs, diagnostics)) {
      recipe.makes.push_back(*read);
    }
  }
  for (const Node* meal : fields.list("suits")) {
    recipe.suits.push_back({text::lower(meal->scalar), meal->span});
  }
  for (const Node* line : fields.list("ingredients")) {
    for (Ingredient& ingredient : read_line(*line, line->scalar, 0, customs, names, diagnostics)) {
      recipe.ingredients.push_back(std::move(ingredient));
    }
  }
  for (const Node* step : fields.list("method")) {
    recipe.method.push_back(read_step(*step, customs, diagnostics));
    MethodStep& last = recipe.method.back();
    if (last.fits && !recipe.made_in_terms_of(last.fits->measure)) {
      diagnostics.warning(
          errors::bad_value, last.at,
          fmt::format("{} does not say how much it makes in that measure, so 'fits' has no meaning",
                      recipe.name),
          "add it to 'makes', or say how many servings fit: 'fits: 4 servings'");
      last.fits.reset();
    }
  }
  if (const Node* keeps = fields.find("keeps")) {
    read_keeps(*keeps, recipe, diagnostics);
  }
  for (const Node* given : fields.list("gives")) {
    read_by_product(*given, recipe, customs, names, diagnostics);
  }
  if (const Node* ahead = fields.find("make ahead")) {
    recipe.make_ahead = read_yes_no(*ahead, diagnostics).value_or(false);
  }
  if (const Node* parts = fields.find("made in")) {
    recipe.made_in = read_made_in(*parts, diagnostics);
  }
  if (const Node* give = fields.find("give")) {
    recipe.give = read_percent(*give, diagnostics);
  }
  if (const Node* marinate = fields.find("marinate")) {
    recipe.marinate = read_minutes(*marinate, diagnostics);
  }
  if (const Node* reheat = fields.find("reheat")) {
    recipe.reheat = reheat->scalar;
  }
  recipe.may_contain = read_allergens(fields.list("may contain"), diagnostics);
  return recipe;
}

} // namespace manciple::kitchen
