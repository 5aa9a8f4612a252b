#pragma once

#include "kitchen/household.hpp"
#include "kitchen/ingredient.hpp"
#include "kitchen/shop.hpp"
#include "text/date.hpp"

#include <optional>
#include <string>
#include <vector>

namespace manciple::kitchen {

/// One dish of a meal.
struct Dish {
  enum class Kind { cooked, leftovers, plain };
  Kind kind = Kind::cooked;
  Ingredient what;                   ///< the recipe, or a food eaten as it is (plain)
  std::optional<Rational> servings;  ///< said by the plan; else those who eat
  std::vector<std::string> eaten_by; ///< said by the plan; else everybody there
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
};

struct Guest {
  Person person; ///< its portion is of the whole party
  int count = 1;
  text::Date from;
  text::Date until;
  std::vector<std::string> slots; ///< empty: all
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

/// A day of shopping and the shops that may be stopped at, in the order of the day.
struct Trip {
  text::Date date;
  std::vector<Candidate> stops;
  int home = 12 * 60; ///< minutes from midnight when what is bought can be used
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

struct Plan {
  std::string name;
  text::Date from;
  text::Date until;
  std::vector<Meal> meals; ///< by date, then by the time of the meal
  std::vector<Absence> away;
  std::vector<Guest> guests;
  std::vector<Staple> staples;
  std::vector<Extra> extra;
  std::vector<Trip> trips;
  bool says_trips = false; ///< else the usual ones
  std::vector<Session> sessions;
  std::optional<Cents> budget;
  text::Span at;
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
