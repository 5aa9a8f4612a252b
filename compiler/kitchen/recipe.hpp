#pragma once

#include "kitchen/ingredient.hpp"
#include "measure/units.hpp"

#include <algorithm>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace manciple::kitchen {

/// One step of a method. Times are of one making of the recipe as written.
struct MethodStep {
  std::string what;
  int hands_on = 0;              ///< minutes in which a cook is busy
  int then = 0;                  ///< minutes in which it goes on alone
  std::string appliance;         ///< "burner", "oven", ...; empty when none is needed
  std::optional<int> fahrenheit; ///< of the oven
  std::optional<int> wait;       ///< minutes that it may wait for the next step at most
  text::Span at;
};

/// What one making gives besides its servings: "8 cups", "12 tortillas".
struct Makes {
  Rational number;
  foods::Measure measure;
};

/// In which parts a recipe is made.
enum class MadeIn : std::uint8_t { usual, whole, halves, quarters, exactly };

struct Recipe {
  RecipeId id{};
  std::string slug; ///< the name of its file
  std::string name;
  text::Span at;
  Rational serves = 1;
  bool says_serves = false; ///< else as many as is usual
  std::vector<Makes> makes;
  std::vector<Ingredient> ingredients;
  std::vector<MethodStep> method;
  std::optional<int> keeps_pantry;  ///< days, once made: mixes, granola
  std::optional<int> keeps_fridge;  ///< days
  std::optional<int> keeps_freezer; ///< days
  /// Made in a prep session when one is near enough, even where it is a meal of its own.
  bool make_ahead = false;
  /// A piece of equipment or a wait that must begin early: minutes before the meal.
  std::optional<int> marinate;
  std::string reheat;
  MadeIn made_in = MadeIn::usual;
  /// By how much less than their share eaters are content, of 1.
  std::optional<Rational> give;
  std::vector<foods::Allergen> may_contain;
  measure::Writing system;

  /// Where it stands once made, if it is not frozen.
  [[nodiscard]] foods::Place cool_place() const {
    return keeps_pantry ? foods::Place::pantry : foods::Place::fridge;
  }
  /// Days it keeps without freezing.
  [[nodiscard]] std::optional<int> keeps_unfrozen() const {
    return std::max(keeps_pantry, keeps_fridge);
  }
};

/// Reads a recipe file. Ingredients that cannot be read are left out, each with its error.
Recipe read_recipe(const text::Node& file, std::string slug, const measure::Customs& household,
                   Names& names, text::Diagnostics& diagnostics);

} // namespace manciple::kitchen
