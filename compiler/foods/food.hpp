#pragma once

#include "foods/classes.hpp"
#include "foods/diet_classes.hpp"
#include "foods/expecting.hpp"
#include "foods/nutrients.hpp"
#include "foods/words.hpp"
#include "measure/quantity.hpp"

#include <optional>
#include <string>
#include <vector>

namespace manciple::foods {

using measure::Rational;

/// A figure and where it is from: "SR28 11282.1" (USDA SR28 food and measure), "FSIS 210" (row of
/// the USDA FSIS storage data), a handbook, or "common practice no source".
template <typename T>
struct Sourced {
  T value{};
  std::string source;
};

/// What a volume of a form weighs. One figure a form: it scales to every unit of volume, so that
/// sixteen tablespoons are a cup whatever the order of a sum.
struct VolumeWeight {
  Form form = Form::plain;
  measure::Unit unit = measure::Unit::us_cup; ///< the unit the source weighed
  Rational grams;                             ///< of one such unit
  std::string source;
};

/// What one named piece weighs: "clove", "large", "stalk".
struct Piece {
  std::string name;
  Rational grams;
  bool as_purchased = false; ///< weighed before trimming; otherwise the edible portion
  std::string source;
};

/// The share of the weight as bought that is left in a form; over 1 for what takes up water.
struct Yield {
  Form form = Form::plain; ///< plain is the edible portion
  Rational share;
  std::string source;
};

/// The longest times it keeps, in days; absent where not known or not kept there.
struct Keeps {
  std::optional<Sourced<int>> pantry;
  std::optional<Sourced<int>> fridge;
  std::optional<Sourced<int>> freezer;
  std::optional<Sourced<int>> opened; ///< once opened or cut, in the fridge
  std::optional<Sourced<int>> thawed; ///< in the fridge
  std::optional<Sourced<int>> hard;   ///< of fruit that ripens: hard, in the fridge
  std::optional<Sourced<int>> cut; ///< once cut, where that is less than opened; 0: cut when used
  /// Juice and zest of a fruit that does not freeze itself, in the freezer.
  std::optional<Sourced<int>> frozen_juice;

  /// In the freezer as it is, or else as juice.
  [[nodiscard]] const std::optional<Sourced<int>>& in(Place place) const;
  /// Where it keeps longest as it is bought: what stands in the pantry may go to the fridge.
  [[nodiscard]] Place best_place(Place stored) const;
  /// For how many days it keeps once it is cut, so that it can be cut in a session before; 0 for
  /// what is cut when it is used.
  [[nodiscard]] int once_cut() const;
};

/// The lowest safe temperature in the middle.
struct SafeTemperature {
  int fahrenheit = 0;
  int rest_minutes = 0;
};

/// How long a roast of up to a weight is in the oven.
struct RoastingTime {
  Rational pounds;          ///< the heaviest
  int fahrenheit = 0;       ///< of the oven
  Rational minutes_a_pound; ///< at least
  std::string source;
};

/// What an eater who must avoid something has to know. A class in neither list is absent.
struct Allergens {
  std::vector<Allergen> contains;
  std::vector<Allergen> check_label; ///< differs by maker
};

/// The classes that a food is of as far as diets ask. A class in neither list is absent.
struct Classes {
  std::vector<DietClass> contains;
  std::vector<DietClass> check_label; ///< differs by maker
  std::string source;
};

/// The number of a form in the USDA SR28 tables, where it is another than the food's: an egg's
/// white, a lemon's juice.
struct UsdaForm {
  Form form = Form::plain;
  int number = 0;
  std::optional<Nutrients> nutrients = {};
};

/// All that is known of something bought or used. What is not known is absent; nothing is guessed.
struct Food {
  std::string name; ///< singular
  std::vector<std::string> aliases;
  Department department = Department::household;
  std::optional<int> usda; ///< number in the USDA SR28 tables
  /// Number there of the same food cooked without salt: what of its vitamins heat leaves.
  std::optional<int> usda_cooked;
  std::vector<UsdaForm> usda_forms;
  Place stored = Place::pantry;
  std::vector<VolumeWeight> volumes;
  std::vector<Piece> pieces;
  std::optional<std::string> count_as; ///< the piece that a bare count means
  std::optional<std::string> sold_as;  ///< the piece that a shop means by one, if another
  std::optional<std::string> in_packs; ///< the piece that a pack of several holds, if another
  std::vector<Yield> yields;
  Keeps keeps;
  std::optional<bool> freezes;        ///< well or poorly
  bool freezes_for_cooking = false;   ///< well, but limp: for what is heated only
  std::string thaw;                   ///< a hint
  std::optional<Sourced<int>> ripens; ///< days on the counter
  std::optional<Sourced<int>> soak;   ///< minutes
  std::optional<Sourced<SafeTemperature>> safe_at;
  std::vector<RoastingTime> roasts;    ///< by weight
  std::optional<Allergens> allergens;  ///< absent: not known, never "none"
  std::optional<Classes> classes;      ///< absent: not known, never "none"
  std::optional<SafetyClasses> safety; ///< absent: its department and name tell
  std::optional<Cautions> expecting;   ///< absent: only its name tells
  std::string shop_in;                 ///< the measure a shopper says: "lb", "each", "gal"
  std::optional<Nutrients> nutrients;
  std::optional<Nutrients> cooked; ///< of 100 g of the food once it is cooked
  bool from_tap = false;           ///< water: never bought
  /// Carried as a line writes it, since nothing more is known: what its amounts are in.
  std::optional<measure::Dimension> as_written;
  bool given = false; ///< carried so, and what a recipe of the library leaves over: no shop has it

  [[nodiscard]] const VolumeWeight* volume(Form form) const;
  /// By a word in the singular, any case.
  [[nodiscard]] const Piece* piece(std::string_view word) const;
  [[nodiscard]] const Yield* yield(Form form) const;
  /// What 100 g of a form hold: the form's own figures, else those of the food.
  [[nodiscard]] const Nutrients* nutrients_of(Form form) const;
  [[nodiscard]] bool is_household() const { return department == Department::household; }
};

/// The form in which names are compared: lower case, without accents, single spaces, last word in
/// the singular.
std::string normal_name(std::string_view name);

} // namespace manciple::foods
