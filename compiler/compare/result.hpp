#pragma once

#include "kitchen/currency.hpp"
#include "text/date.hpp"

#include <tl/expected.hpp>

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

/// What changed between two results of a build. Knows results only as result.json says them, so
/// that one that was stored and one that was just compiled are compared in the same way.
namespace manciple::compare {

using kitchen::Cents;
using text::Date;

/// A stop that is made.
struct Stop {
  Date date;
  std::string shop;
  Cents paid = 0;

  [[nodiscard]] bool is_at(const Stop& other) const {
    return date == other.date && shop == other.shop;
  }
};

/// A line of the list.
struct Line {
  std::string food;
  Stop stop;
  std::string pack;  ///< "3 lb bag"
  std::string count; ///< as the list has it: "2 x 3 lb bag", "7"
  std::string name;  ///< and what follows it: "onions"
  int packs = 0;
  bool by_weight = false;    ///< `packs` are steps of a scale
  double amount = 0;         ///< in the food's basis
  std::optional<Cents> cost; ///< absent where no price is known
  std::vector<std::string> notes;
};

/// A dish of a meal.
struct Dish {
  std::string name; ///< "leftovers of Smoky lentil soup"
  double servings = 0;
  bool counts_servings = true; ///< else it is food eaten as it is
};
struct Meal {
  Date date;
  std::string slot;
  std::vector<Dish> dishes;
};

/// One cooking of a recipe.
struct Making {
  std::string recipe;
  Date date;
  bool in_session = false;
  bool for_the_day = false; ///< eaten as a dish on the day on which it is cooked
  double servings = 0;
};

/// A prep session.
struct Session {
  Date date;
  int from = 0;    ///< minutes from midnight
  int minutes = 0; ///< that it takes
};

/// What there is to do on a day besides: to take out, to soak, to put away.
struct Reminder {
  Date date;
  std::string kind;
  std::string what;
};

/// What has been done of a plan: the rest of its result is of what is to come.
struct Past {
  Date until;              ///< the day from which is planned, in the morning
  Cents paid = 0;          ///< by the receipts
  std::vector<Stop> stops; ///< that have a receipt
};

/// What a result says, as far as it is compared.
struct Result {
  std::string plan;
  Date from;
  Date until;
  kitchen::Currency currency;
  Cents paid = 0;
  Cents cash_back = 0;
  std::optional<Cents> budget;
  std::vector<Stop> stops;
  std::vector<Line> lines;
  std::vector<std::string> to_find; ///< foods, each once, by name
  std::vector<Meal> meals;
  std::vector<Making> makings;
  std::vector<Session> sessions;
  std::vector<Reminder> reminders;
  std::optional<Past> past;

  /// With what was paid before.
  [[nodiscard]] Cents paid_in_all() const { return paid + (past ? past->paid : 0); }
};

/// Reads a result.json; or says why not, to follow its name: "is not the result of a build".
tl::expected<Result, std::string> read_result(std::string_view json);

} // namespace manciple::compare
