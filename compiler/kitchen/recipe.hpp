#pragma once

#include "kitchen/ingredient.hpp"
#include "measure/units.hpp"

#include <algorithm>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace manciple::kitchen {

/// What one making gives besides its servings: "8 cups", "12 tortillas".
struct Makes {
  Rational number;
  foods::Measure measure;
};

/// One step of a method. Times are of one making of the recipe as written; where it says what fits
/// into what it is done in, of one load.
struct MethodStep {
  std::string what;
  int hands_on = 0;              ///< minutes in which a cook is busy
  int then = 0;                  ///< minutes in which it goes on alone
  std::string appliance;         ///< "burner", "oven", ...; empty when none is needed
  bool is_hot = false;           ///< what comes from that appliance is hot
  std::optional<int> fahrenheit; ///< of the oven
  std::optional<int> wait;       ///< minutes that it may wait for the next step at most
  std::string vessel;            ///< "pot", "tray"; empty when it is not said
  std::optional<Makes> fits;     ///< into one of them: of what the recipe makes
  text::Span at;
};

/// What making a recipe leaves over besides its dish: the meat of a stock, a ham bone. It costs
/// nothing: what went in is paid for by the dish.
struct GivesLine {
  Ingredient what; ///< a food or a recipe that others ask for, with its amount in one making
  std::optional<int> keeps_unfrozen; ///< days, from the day on which the recipe is made
  std::optional<int> keeps_freezer;
  foods::Place cool_place = foods::Place::fridge; ///< where it stands unless it is frozen
  /// The lines of the recipe that are in it; none: all of them may be.
  std::vector<Target> of;
  text::Span at;
};

/// A meal that a recipe can be the main dish of; `side`: it goes beside one.
struct Suited {
  static constexpr std::string_view side = "side";

  std::string meal;
  text::Span at;
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
  std::vector<GivesLine> gives;
  std::vector<Suited> suits;
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

  /// What one making comes to in such a measure: its servings, or what it makes of such pieces or
  /// in that dimension, in the measure's unit. Nothing if it does not say.
  [[nodiscard]] std::optional<Rational> made_in_terms_of(const foods::Measure& measure) const;
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
