#pragma once

#include "foods/food.hpp"

#include <tl/expected.hpp>

#include <string>
#include <vector>

namespace manciple::foods {

/// What an amount of a food is measured in: a unit, or a named piece of the food.
struct Measure {
  measure::Unit unit = measure::Unit::each; ///< used when `piece` is empty
  std::string piece;                        ///< "clove", in the singular
  bool operator==(const Measure&) const = default;

  /// Of pieces or bare numbers, not of weight or volume.
  [[nodiscard]] bool is_counted() const {
    return !piece.empty() || measure::facts(unit).dimension == measure::Dimension::count;
  }
};

/// An amount of a food in a form.
struct Amount {
  Rational number;
  Measure measure;
  Form form = Form::plain;
  /// Whether the form was reached before measuring: "1 lb diced onions" is an edible portion,
  /// "1 lb onions, diced" is a weight as bought. Volumes are always of the form.
  bool formed_first = false;
  /// The amount is of the whole food, and the form is what is taken from it: "juice of 1 lb lemons"
  /// is a pound as bought, "1 cup lemon juice" is not.
  bool taken_from_whole = false;
};

/// One step of a conversion, to be shown: what was done and where the figure is from.
struct ConversionStep {
  std::string what;
  std::string source;
};

/// How much of a food has to be bought, as purchased, in the food's basis.
struct Purchased {
  Rational amount; ///< grams, or millilitres or pieces for a food without weights
  std::vector<ConversionStep> steps;
};

/// Why an amount cannot be converted and what would help.
struct NoConversion {
  std::string what;
  std::string fix;
};

/// What amounts of a food are reckoned in: mass wherever the food has a weight at all.
measure::Dimension basis(const Food& food);

/// What has to be bought (AP) for `amount` to be had.
tl::expected<Purchased, NoConversion> as_purchased(const Food& food, const Amount& amount);

/// The share of the weight as bought that is left in a form, and is eaten; 1 where nothing is
/// trimmed. Absent where it is not known.
std::optional<Rational> eaten_share(const Food& food, Form form);

/// The other way: how many of `measure` of `form` come of `purchased` (in the food's basis).
tl::expected<Purchased, NoConversion> measured(const Food& food, const Rational& purchased,
                                               const Measure& measure, Form form);

/// "3 cloves", "1 1/2 cups, chopped", "250 g".
std::string print(const Amount& amount);

} // namespace manciple::foods
