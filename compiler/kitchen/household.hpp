#pragma once

#include "foods/book.hpp"
#include "kitchen/ingredient.hpp"
#include "kitchen/read.hpp"

#include <optional>
#include <string>
#include <vector>

namespace manciple::kitchen {

/// Someone who eats: of the household, or a guest for some days.
struct Person {
  std::string name;
  Rational portion = 1; ///< of an adult's serving
  std::vector<foods::Allergen> avoids;
  std::vector<foods::FoodId> avoids_foods;
  text::Span at;
};

/// A meal of the day and when it is on the table.
struct Slot {
  std::string name;
  int at = 0; ///< minutes from midnight
};

struct Appliance {
  std::string name;
  int count = 1;
};

/// Where a food may be bought.
struct BuyingRule {
  foods::FoodId food{};
  std::vector<std::string> only_at; ///< shop files' names; empty: anywhere
  std::vector<std::string> never_at;
  text::Span at;
};

struct Household {
  std::vector<Person> people;
  std::vector<Slot> slots;
  std::vector<Appliance> appliances;
  std::vector<BuyingRule> buying;
  measure::System system = measure::System::us;
  std::optional<Rational> fridge_litres;
  std::optional<Rational> freezer_litres;
  std::optional<Rational> pantry_litres;
  Cents stop_cost = 0;            ///< what making one stop is worth, unless the shop says
  std::optional<Cents> budget;    ///< for a plan
  Rational leftovers_worth{1, 2}; ///< of what was paid for what keeps beyond the plan
  std::string currency = "$";

  [[nodiscard]] const Slot* slot(std::string_view name) const;
  [[nodiscard]] std::optional<std::size_t> person(std::string_view name) const;
};

Household read_household(const text::Node& file, Names& names, text::Diagnostics& diagnostics);

/// Puts what a list of allergen classes and foods says into a person.
void read_avoids(const std::vector<const text::Node*>& list, Person& person, Names& names,
                 text::Diagnostics& diagnostics);

} // namespace manciple::kitchen
