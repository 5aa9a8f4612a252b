#pragma once

#include "foods/diets.hpp"
#include "kitchen/ingredient.hpp"
#include "kitchen/read.hpp"
#include "text/fields.hpp"

#include <map>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace manciple::kitchen {

/// Something that somebody must not have: a class of foods, or a food.
struct Limit {
  std::variant<foods::AnyClass, foods::FoodId> what;
  std::string diet; ///< the diet that says so, as the file calls it; empty: it is said by itself
};

/// Diets of the house's own, by name in lower case.
using OwnDiets = std::map<std::string, std::vector<Limit>, std::less<>>;

enum class Sex : std::uint8_t { female, male };
/// Who carries a child or nurses one needs more of much, and has more to keep away from.
enum class Stage : std::uint8_t { pregnant, nursing };

/// Someone who eats: of the household, or a guest for some days.
struct Person {
  std::string name;
  int heads = 1;        ///< of guests who come together
  Rational portion = 1; ///< of an adult's serving, of all heads together
  std::vector<Limit> limits;
  std::vector<std::string> diets; ///< as the file calls them
  std::optional<int> months = {}; ///< their age
  std::optional<Sex> sex = {};
  std::optional<Stage> stage = {};
  /// By meal: how many times their usual portion they eat there; else once.
  std::map<std::string, Rational, std::less<>> appetite = {};
  text::Span at;
};

/// What a child eats of an adult's serving: in quarters, from the energy that children of an age
/// need against the 2200 kcal of a grown-up (Dietary Guidelines for Americans 2020-2025, table
/// A2-2, moderately active, girls and boys together; from memory).
Rational portion_at(int months);

/// Diets that a household's file makes, each from classes of foods, allergens, other diets and
/// foods.
OwnDiets read_diets(const std::vector<const text::Entry*>& entries, Names& names,
                    text::Diagnostics& diagnostics);

/// What a file says of someone besides their name: `portion`, `avoids`, `diet`, `age`, `sex`,
/// `pregnant`, `nursing` and `appetite`. `heads` are in the person already.
void read_about(const text::Fields& fields, Person& person, const OwnDiets& own, Names& names,
                text::Diagnostics& diagnostics);

} // namespace manciple::kitchen
