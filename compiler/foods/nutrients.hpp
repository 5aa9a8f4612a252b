#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string_view>

namespace manciple::foods {

/// What of a food the tables measure, in the order of the reference's file.
enum class Nutrient : std::uint8_t {
  water,
  energy,
  protein,
  fat,
  carbohydrate,
  fiber,
  sugars,
  calcium,
  iron,
  magnesium,
  phosphorus,
  potassium,
  sodium,
  zinc,
  vitamin_c,
  folate, ///< dietary folate equivalents
  vitamin_b12,
  vitamin_a, ///< retinol activity equivalents
  vitamin_d,
  saturated,
  monounsaturated,
  polyunsaturated,
  cholesterol,
};
inline constexpr std::size_t nutrient_count = 23;

/// How a nutrient is called and measured.
struct NutrientFacts {
  std::string_view name;   ///< "saturated fat", as keys and columns say it
  std::string_view unit;   ///< "g", "mg", "ug" (micrograms) or "kcal"
  std::string_view column; ///< of reference/nutrients.csv
};
const NutrientFacts& facts(Nutrient nutrient);
/// Its name as people read it. Keys and columns keep the spelling that they have.
std::string_view in_words(Nutrient nutrient);
/// By its name.
std::optional<Nutrient> parse_nutrient(std::string_view word);
/// All of them, in order.
const std::array<Nutrient, nutrient_count>& all_nutrients();

/// Of 100 g of the edible portion, in the nutrient's unit; absent where the source has no figure.
/// Figures that are measured in a laboratory, to two or three digits: no sum of them is exact.
struct Nutrients {
  std::array<std::optional<double>, nutrient_count> of;

  [[nodiscard]] const std::optional<double>& operator[](Nutrient nutrient) const {
    return of[static_cast<std::size_t>(nutrient)];
  }
  std::optional<double>& operator[](Nutrient nutrient) {
    return of[static_cast<std::size_t>(nutrient)];
  }
};

} // namespace manciple::foods
