#pragma once

#include "kitchen/kitchen.hpp"

#include <algorithm>
#include <optional>
#include <string>
#include <variant>
#include <vector>

/// From what the plan says to what it takes: who eats, what is made when, which food is used when.
namespace manciple::resolve {

using kitchen::RecipeId;
using measure::Rational;
using text::Date;

/// One dish of one meal: indices into the plan.
struct DishRef {
  std::size_t meal = 0;
  std::size_t dish = 0;
  friend auto operator<=>(const DishRef&, const DishRef&) = default;
};

/// Names one making.
enum class MakingId : std::uint32_t {};

/// Who a making is for: a dish of a meal, or another making that it is an ingredient of.
struct Consumer {
  std::variant<DishRef, MakingId> who;
  Rational times;            ///< how many times the recipe as written this gets
  Date date;                 ///< when it is used
  bool leftovers = false;    ///< a later meal of a dish cooked for an earlier one
  bool from_freezer = false; ///< keeps till then only frozen
};

/// One cooking of a recipe, for one meal or for several uses: a batch.
struct Making {
  MakingId id{};
  RecipeId recipe{};
  Rational times;  ///< of the recipe as written, in parts that a cook can measure
  Rational needed; ///< what its consumers would take
  Date date;
  std::optional<std::size_t> session; ///< made in this prep session; else on the day, for the meal
  int ready_by = 0; ///< minutes from midnight of `date`; of no meaning in a session
  std::vector<Consumer> consumers;
  /// The last day on which it is good unfrozen, counted from the oldest of its parts that is not
  /// from the freezer or the pantry: FDA Food Code 2022, 3-501.17. None if the recipe does not say
  /// how long it keeps.
  std::optional<Date> good_until = {};
  /// It was made before: place among `made` of what is on hand. Nothing is bought or done for it.
  std::optional<std::size_t> on_hand = {};

  /// What no consumer gets, in times the recipe.
  [[nodiscard]] Rational left() const { return std::max(Rational(0), Rational(times - needed)); }
};

/// What a making leaves over besides its dish, and what takes it.
struct ByProduct {
  /// What one ingredient of another making takes of it.
  struct Part {
    MakingId into{};
    std::size_t ingredient = 0;
    Rational amount; ///< of what is given
    Rational covers; ///< of what is asked for, in its own terms
    Date date;
    bool from_freezer = false;
  };
  MakingId of{};
  std::size_t given = 0; ///< place in what the recipe gives
  /// Of a food as purchased, in its basis; of a recipe, in times as written.
  Rational amount;
  Date date;
  /// The last day on which it is good unfrozen, counted from the oldest part of the making.
  std::optional<Date> good_until = {};
  std::optional<Date> frozen_until = {};
  std::vector<Part> parts = {};

  /// What nothing takes.
  [[nodiscard]] Rational left() const {
    Rational out = amount;
    for (const Part& part : parts) {
      out -= part.amount;
    }
    return out;
  }
};

/// How much of a making a dish eats, of 1.
struct DishShare {
  DishRef dish;
  Rational share;
};

/// Why food is used.
struct OfMaking {
  MakingId making{};
  std::size_t ingredient = 0;
};
struct OfDish {
  DishRef dish;
};
struct OfStaple {
  std::size_t staple = 0;
};
struct OfExtra {
  std::size_t extra = 0;
};
using Reason = std::variant<OfMaking, OfDish, OfStaple, OfExtra>;

/// A food used on a day: `amount` as purchased, in the food's basis.
struct Use {
  foods::FoodId food{};
  Rational amount;
  Date date; ///< when it has to be in the house
  /// Minutes from midnight: what a trip brings later that day is too late.
  int clock = text::minutes_a_day;
  bool fresh = false; ///< not from the freezer
  Reason reason;
  foods::Form form{};                ///< to which it is cut
  std::optional<std::size_t> cut_in; ///< the prep session in which it is cut ahead
  Rational give;                     ///< of `amount`: what may be lacking without harm
  /// "1 can", without a size: so many of those that are sold.
  std::optional<Rational> containers;
  int slack = 0; ///< it may be eaten so many days before `date`
  bool optional = false;
};

/// A label that has to be read before a person eats: whether the food has what they must not have
/// differs by maker, or is not known.
struct LabelCheck {
  foods::FoodId food{};
  std::string what; ///< "sesame"; of a diet, where nothing is known: "whether it is vegetarian"
  std::string person;
  bool known = true; ///< else nobody has said what is in the food
};

struct Resolved {
  std::vector<std::vector<Rational>> servings; ///< by meal and dish
  std::vector<Making> makings;                 ///< what needs a making stands before it
  std::vector<std::vector<DishShare>> shares;  ///< by making: the dishes it ends up in, by meal
  std::vector<ByProduct> by_products;          ///< by the making that they are of
  std::vector<Use> uses;                       ///< by food's name, then date
  std::vector<Use> left_out;                   ///< optional ones that are not bought
  std::vector<LabelCheck> labels;

  [[nodiscard]] const Making& making(MakingId id) const {
    return makings[static_cast<std::size_t>(id)];
  }
  [[nodiscard]] const std::vector<DishShare>& shares_of(MakingId id) const {
    return shares[static_cast<std::size_t>(id)];
  }
  /// The dishes that a use ends up in, by meal; none of what a plan wants besides its meals.
  [[nodiscard]] std::vector<DishShare> shares_of(const Use& use) const;
};

/// Whether a use is what the plan wants to have in the freezer on its last day.
bool is_for_freezer(const kitchen::Kitchen& kitchen, const Use& use);

/// Whether a meal is packed the evening before. On the plan's first day nothing is in the house yet
/// then, and it is made in the morning.
bool is_packed(const kitchen::Kitchen& kitchen, const kitchen::Meal& meal);

/// Whether a form is a cut that can be done ahead.
bool is_cut(foods::Form form);

/// Resolves the plan of a kitchen. With errors the result is not to be used.
Resolved resolve(const kitchen::Kitchen& kitchen, text::Diagnostics& diagnostics);

} // namespace manciple::resolve
