#include "kitchen/recipe.hpp"

#include "kitchen/errors.hpp"
#include "kitchen/read.hpp"
#include "text/errors.hpp"
#include "text/nearest.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

namespace manciple::kitchen {
namespace {

using text::Diagnostics;
using text::Fields;
using text::Node;

std::optional<int> read_oven(const Node& node, Diagnostics& diagnostics) {
  measure::Cursor cursor{node.scalar};
  const auto degrees = measure::scan_number(cursor);
  const std::string_view scale = text::trim(cursor.rest());
  if (degrees && *degrees <= 600 && (scale == "F" || scale == "C")) {
    const Rational f = scale == "F" ? *degrees : Rational(*degrees * 9 / 5 + 32);
    return static_cast<int>(measure::to_int64(measure::round(f)));
  }
  diagnostics.error(errors::bad_value, node.span,
                    fmt::format("'{}' is not a temperature such as 425 F", node.scalar));
  return std::nullopt;
}

MethodStep read_step(const Node& node, Diagnostics& diagnostics) {
  MethodStep step;
  step.at = node.span;
  if (node.is_scalar()) {
    step.what = node.scalar;
    return step;
  }
  Fields fields(node, "a step", diagnostics);
  if (const Node* what = fields.need_text("do")) {
    step.what = what->scalar;
    step.at = what->span;
  }
  if (const Node* time = fields.find("hands on")) {
    step.hands_on = read_minutes(*time, diagnostics).value_or(0);
  }
  if (const Node* time = fields.find("then")) {
    step.then = read_minutes(*time, diagnostics).value_or(0);
  }
  if (const Node* on = fields.find_text("on")) {
    step.appliance = text::lower(on->scalar);
  }
  if (const Node* at = fields.find_text("at")) {
    step.fahrenheit = read_oven(*at, diagnostics);
  }
  if (const Node* cuts = fields.find("cuts")) {
    step.cuts = read_yes_no(*cuts, diagnostics).value_or(false);
  }
  fields.close();
  return step;
}

void read_keeps(const Node& node, Recipe& recipe, Diagnostics& diagnostics) {
  Fields fields(node, "'keeps' of a recipe", diagnostics);
  if (const Node* time = fields.find("pantry")) {
    recipe.keeps_pantry = read_days(*time, diagnostics);
  }
  if (const Node* time = fields.find("fridge")) {
    recipe.keeps_fridge = read_days(*time, diagnostics);
  }
  if (const Node* time = fields.find("freezer")) {
    recipe.keeps_freezer = read_days(*time, diagnostics);
  }
  fields.close();
}

// "8 cups", "12 tortillas": a unit, or a word of the recipe's own.
std::optional<Makes> read_makes(const Node& node, measure::System system,
                                Diagnostics& diagnostics) {
  measure::Cursor cursor{node.scalar};
  const auto number = node.is_scalar() ? measure::scan_number(cursor) : std::nullopt;
  if (!number || *number <= 0) {
    diagnostics.error(errors::unread_amount, node.span,
                      "what a recipe makes is an amount such as 8 cups");
    return std::nullopt;
  }
  Makes makes{*number, {}};
  if (const auto unit = measure::scan_unit(cursor, system)) {
    makes.measure.unit = *unit;
  } else {
    makes.measure.piece = text::singular(text::lower(text::trim(cursor.rest())));
  }
  return makes;
}

} // namespace

Recipe read_recipe(const Node& file, std::string slug, measure::System household, Names& names,
                   Diagnostics& diagnostics) {
  Recipe recipe;
  recipe.slug = std::move(slug);
  recipe.system = household;
  recipe.at = file.span;
  Fields fields(file, "a recipe", diagnostics);
  if (const Node* name = fields.need_text("name")) {
    recipe.name = name->scalar;
    recipe.at = name->span;
  }
  if (const Node* system = fields.find_text("measures")) {
    if (const auto known = measure::parse_system(system->scalar)) {
      recipe.system = *known;
    } else {
      diagnostics.error(errors::bad_value, system->span,
                        fmt::format("'{}' is no system of measures", system->scalar),
                        "us, imperial, metric or australian");
    }
  }
  recipe.serves = 1;
  if (const Node* serves = fields.need("serves")) {
    const auto number = read_number(*serves, diagnostics);
    if (number && *number > 0) {
      recipe.serves = *number;
    } else if (number) {
      diagnostics.error(errors::bad_value, serves->span, "a recipe serves at least one");
    }
  }
  for (const Node* makes : fields.list("makes")) {
    if (const auto read = read_makes(*makes, recipe.system, diagnostics)) {
      recipe.makes.push_back(*read);
    }
  }
  if (fields.need("ingredients") != nullptr) {
    for (const Node* line : fields.list("ingredients")) {
      if (const std::string* words =
              text::text_of(*line, "an ingredient such as '2 onions, diced'", diagnostics)) {
        for (Ingredient& ingredient :
             read_line(*line, *words, 0, recipe.system, names, diagnostics)) {
          recipe.ingredients.push_back(std::move(ingredient));
        }
      }
    }
  }
  for (const Node* step : fields.list("method")) {
    recipe.method.push_back(read_step(*step, diagnostics));
  }
  if (const Node* keeps = fields.find("keeps")) {
    read_keeps(*keeps, recipe, diagnostics);
  }
  if (const Node* ahead = fields.find("make ahead")) {
    recipe.make_ahead = read_yes_no(*ahead, diagnostics).value_or(false);
  }
  if (const Node* marinate = fields.find("marinate")) {
    recipe.marinate = read_minutes(*marinate, diagnostics);
  }
  if (const Node* reheat = fields.find_text("reheat")) {
    recipe.reheat = reheat->scalar;
  }
  for (const Node* word : fields.list("may contain")) {
    if (const auto allergen = foods::parse_allergen(word->scalar)) {
      recipe.may_contain.push_back(*allergen);
    } else {
      const auto known = foods::allergen_words();
      diagnostics.error(errors::bad_value, word->span,
                        fmt::format("'{}' is no allergen class", word->scalar),
                        text::did_you_mean(word->scalar, {known.begin(), known.end()}));
    }
  }
  fields.close();
  return recipe;
}

} // namespace manciple::kitchen
