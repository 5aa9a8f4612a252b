#pragma once

#include "foods/book.hpp"
#include "kitchen/cooks.hpp"
#include "kitchen/ingredient.hpp"
#include "kitchen/people.hpp"
#include "kitchen/read.hpp"
#include "text/date.hpp"

#include <array>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace manciple::kitchen {

/// A meal of the day and when it is on the table.
struct Slot {
  std::string name;
  int at = 0; ///< minutes from midnight, where a day has no time of its own
  /// By day of the week, Sunday first.
  std::array<std::optional<int>, 7> by_day = {};
  std::array<bool, 7> packed = {}; ///< made the evening before and eaten cold

  [[nodiscard]] int hour(text::Date day) const {
    return by_day.at(std::chrono::weekday(day).c_encoding()).value_or(at);
  }
  [[nodiscard]] bool is_packed(text::Date day) const {
    return packed.at(std::chrono::weekday(day).c_encoding());
  }
};

struct Appliance {
  std::string name;
  int count = 1;
  std::optional<bool> heats = {}; ///< whether what comes from it is hot; none: not said
};

/// A shop by the name of its file, as a household's file names it.
struct ShopName {
  std::string slug;
  text::Span at;
};

/// Where a food may be bought.
struct BuyingRule {
  foods::FoodId food{};
  std::vector<ShopName> only_at; ///< empty: anywhere
  std::vector<ShopName> never_at;
  /// Here rather than elsewhere, unless it is cheaper there by more than `preference`.
  std::vector<ShopName> prefer;
};

/// By how much a shop that is not preferred has to be cheaper. Our own choice: what the difference
/// in quality is usually worth.
inline const Rational preference{1, 10};

/// Foods that may stand for each other, with how much of each does the same, as bought and in the
/// food's basis: canned black beans 1, canned pinto beans 1.
struct Substitutes {
  std::vector<std::pair<foods::FoodId, Rational>> foods;

  [[nodiscard]] bool holds(foods::FoodId food) const;
};

/// A food in terms of the first of its substitutes: one of it does what `worth` of that does.
struct InTermsOf {
  foods::FoodId food{};
  Rational worth = 1;
};

/// A stop takes a quarter of an hour besides the way. Common practice, no source.
constexpr Cents stops_an_hour = 4;

/// By how much less than their share eaters are content, unless the household or a recipe says
/// otherwise. Our own choice.
inline const Rational usual_give{1, 10};

struct Household {
  std::vector<Person>
      people;     ///< none: not said, and a dish is made for as many as its recipe serves
  OwnDiets diets; ///< of its own
  std::vector<Slot> slots;
  bool says_slots = false;              ///< else the usual ones
  std::vector<std::string> added_slots; ///< those of the plan that it does not say
  std::vector<Appliance> appliances;
  bool says_appliances = false; ///< else the usual ones
  /// Millilitres that a pot, a mixer, ... holds, by name.
  std::map<std::string, Rational, std::less<>> holds;
  std::vector<CookRule> cooks; ///< who cooks when; none: not said
  std::vector<BuyingRule> buying;
  std::vector<Substitutes> any_of;
  measure::Writing system; ///< its measures, and how it writes amounts
  std::optional<Rational> fridge_litres;
  std::optional<Rational> freezer_litres;
  std::optional<Rational> pantry_litres;
  std::vector<ShopName> member_of; ///< where it pays the member price
  Cents hour_cost = 600;           ///< what an hour of handling food is worth
  /// What saving one stop is worth, unless the shop says.
  Cents stop_cost = hour_cost / stops_an_hour;
  std::optional<Cents> budget;    ///< for a plan
  bool buys_optional = false;     ///< what recipes call optional; else it is only told
  Rational give = usual_give;     ///< by how much less than their share eaters are content
  Rational leftovers_worth{1, 2}; ///< of its usual price, for what keeps beyond the plan
  Rational waste_costs{1, 4};     ///< of its usual price, for what is thrown away
  Currency currency;
  std::chrono::weekday week_starts = std::chrono::Monday; ///< as in ISO 8601
  std::string time_zone; ///< by its name in the tz database: Europe/Berlin; empty: not said
  /// The household's own words for measures, pieces and packs.
  measure::OwnWords words;

  /// What words mean here.
  [[nodiscard]] measure::Customs customs() const { return {system, words}; }

  /// From 1: the place of a day in its week.
  [[nodiscard]] unsigned day_of_week(text::Date day) const {
    return static_cast<unsigned>((std::chrono::weekday(day) - week_starts).count()) + 1;
  }
  [[nodiscard]] InTermsOf in_terms_of(foods::FoodId food) const;
  /// All that may stand for a food: itself alone where nothing else may.
  [[nodiscard]] std::vector<foods::FoodId> instead_of(foods::FoodId food) const;
  /// Null if it says nothing about an appliance of that name.
  [[nodiscard]] const Appliance* appliance(std::string_view name) const;
  [[nodiscard]] const Slot* slot(std::string_view name) const;
  void add_slot(Slot slot);
  [[nodiscard]] std::optional<std::size_t> person(std::string_view name) const;
};

/// What is taken of a house that says nothing of itself: the usual meals, four burners, an oven and
/// a sink. Common practice, no source.
Household usual_household();

/// When a meal that the household does not have is on the table, in minutes from midnight; nothing
/// for what is nearly the name of one that it has or that is usual. Common practice, no source.
std::optional<int> hour_of_new_meal(const Household& household, std::string_view name);

/// Meals of the household, in lower case; what is none is an error and left out.
std::vector<std::string> read_meals(const std::vector<const text::Node*>& list,
                                    const Household& household, text::Diagnostics& diagnostics);

/// What a rule says besides its days: `who`, `meals`, `from` and `until`. Names are not looked up.
CookRule read_cook(const text::Fields& fields, const Household& household,
                   text::Diagnostics& diagnostics);

/// What a household's file says of `measures`, without a look at the rest of it.
measure::System system_of(const text::Node& file);

Household read_household(const text::Node& file, Names& names, text::Diagnostics& diagnostics);

} // namespace manciple::kitchen
