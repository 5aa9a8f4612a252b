#pragma once

#include "kitchen/household.hpp"
#include "kitchen/ingredient.hpp"
#include "kitchen/shop.hpp"
#include "text/date.hpp"

#include <map>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace manciple::kitchen {

struct Meal;

/// "halloumi instead of chicken breast", "without mushrooms": what is other in a dish for somebody.
struct Swap {
  text::Span at;
  std::string text; ///< as it is written
  std::optional<Ingredient>
      what;                ///< with the amount of a serving, where one is said; none: without
  std::string in_place_of; ///< as it is written
  std::optional<Target> replaced;                ///< a food or a recipe; else
  std::vector<foods::AnyClass> replaced_classes; ///< every food of these classes
};

/// What somebody has otherwise in a dish.
struct Variant {
  std::string who;
  std::vector<Swap> swaps;
  text::Span at;
};

/// One dish of a meal.
struct Dish {
  enum class Kind { cooked, leftovers, plain };
  Kind kind = Kind::cooked;
  Ingredient what;                   ///< the recipe, or a food eaten as it is (plain)
  std::optional<Rational> servings;  ///< said by the plan; else those who eat
  std::vector<std::string> eaten_by; ///< said by the plan; else everybody there
  std::vector<Variant> variants;     ///< until they are dishes of their own (kitchen/variants)
  /// Those for whom another dish stands in this one's place.
  std::vector<std::string> not_by;
  std::map<std::string, Rational, std::less<>> portions; ///< of an adult's serving, by who eats it
  text::Span at;
};

struct Meal {
  text::Date date;
  std::string slot;
  std::vector<Dish> dishes;
  text::Span at;
};

/// Someone who is away from some meals, or a guest who is there for some.
struct Absence {
  std::string who;
  text::Date from;
  text::Date until;
  std::vector<std::string> slots; ///< empty: all

  [[nodiscard]] bool covers(const Meal& meal) const;
};

struct Guest {
  Person person;
  text::Date from;
  text::Date until;
  std::vector<std::string> slots; ///< empty: all

  [[nodiscard]] bool covers(const Meal& meal) const;
};

/// What a plan would like its eaters to have more or less of.
struct Aim {
  enum class Per : std::uint8_t { day, week, meal };
  /// What is counted: a nutrient, grams of foods of a class or kind or of a food, or money; with
  /// `times`, the meals that have such a food.
  std::variant<std::monostate, foods::Nutrient, std::vector<foods::AnyClass>, foods::FoodId,
               std::string>
      of;           ///< nothing: money; a text: a kind of food, "vegetables"
  std::string what; ///< as the file calls it
  bool at_least = true;
  bool times = false;
  Rational amount; ///< in the nutrient's unit, grams, times or cents
  Per per = Per::day;
  std::string slot; ///< of a meal
  std::string text; ///< "protein: at least 30 g a dinner"
  text::Span at;
};

/// Something used at a rate, or kept at a level, without a recipe.
struct Staple {
  Ingredient what;
  std::optional<int>
      every_days;          ///< the amount is used up in so many days; else it is a level to keep
  bool in_freezer = false; ///< a level that is kept in the freezer
};

/// Something to buy besides.
struct Extra {
  Ingredient what;
  std::optional<text::Date> by;
  std::string reason;
};

struct Candidate {
  ShopId shop{};
  bool always = false; ///< made whether it pays or not
};

/// When what is bought is at home, unless a trip says it.
constexpr int usually_home = 12 * text::minutes_an_hour;

/// A day of shopping and the shops that may be stopped at, in the order of the day.
struct Trip {
  text::Date date;
  std::vector<Candidate> stops;
  int home = usually_home; ///< minutes from midnight when what is bought can be used
  std::optional<Cents> budget;
  text::Span at;
};

/// A window in which cooks prepare.
struct Session {
  text::Date date;
  int from = 0; ///< minutes from midnight
  int until = 0;
  int cooks = 1;
  std::vector<std::string> names = {}; ///< of the cooks; none: not said
  text::Span at = {};
};

/// Something eaten or thrown away besides what the plan says.
struct Change {
  text::Date date;
  Ingredient what; ///< a food, with its amount
  bool thrown = false;
};

struct Plan {
  std::string name;
  /// The first day that is still to come; where the plan is planned as a whole, its first day.
  text::Date from;
  text::Date until;
  text::Date begins;               ///< its first day, whatever has been done of it
  std::optional<text::Date> as_of; ///< said by the file
  text::Span as_of_at;
  std::vector<Change> changes; ///< by date
  std::vector<Meal> meals;     ///< by date, then by the time of the meal
  std::vector<Absence> away;
  std::vector<Guest> guests;
  std::vector<Staple> staples;
  std::vector<Extra> extra;
  std::vector<Trip> trips;
  std::vector<Trip> trips_done; ///< what things usually cost is as they say, too
  bool says_trips = false;      ///< else the usual ones
  std::vector<Session> sessions;
  std::vector<CookRule> cooks; ///< on days of its own, in place of those of the household
  std::optional<Cents> budget;
  std::vector<Aim> aims;
  text::Span at;

  /// The first day that counts for it: a trip may be before its first meal.
  [[nodiscard]] text::Date first_day() const;
  /// Whether somebody of the household is away from a meal.
  [[nodiscard]] bool is_away(std::string_view who, const Meal& meal) const;
};

/// What a plan refers to.
struct PlanContext {
  std::string slug;         ///< the name of the plan's file
  Household& household;     ///< meals that the plan has besides are added
  std::vector<Shop>& shops; ///< those that the plan only names are added
  Names& recipes;           ///< recipes and foods
  Names& foods;             ///< foods alone
};

/// Nothing when the file's dates cannot be told.
std::optional<Plan> read_plan(const text::Node& file, const PlanContext& context,
                              text::Diagnostics& diagnostics);

} // namespace manciple::kitchen
