#include "foods/nutrients.hpp"

namespace manciple::foods {
namespace {

constexpr std::array<NutrientFacts, nutrient_count> table{{
    {"water", "g", "water_g"},
    {"energy", "kcal", "energy_kcal"},
    {"protein", "g", "protein_g"},
    {"fat", "g", "fat_g"},
    {"carbohydrate", "g", "carbohydrate_g"},
    {"fiber", "g", "fibre_g"},
    {"sugars", "g", "sugars_g"},
    {"calcium", "mg", "calcium_mg"},
    {"iron", "mg", "iron_mg"},
    {"magnesium", "mg", "magnesium_mg"},
    {"phosphorus", "mg", "phosphorus_mg"},
    {"potassium", "mg", "potassium_mg"},
    {"sodium", "mg", "sodium_mg"},
    {"zinc", "mg", "zinc_mg"},
    {"vitamin C", "mg", "vitamin_c_mg"},
    {"folate", "ug", "folate_dfe_ug"},
    {"vitamin B12", "ug", "vitamin_b12_ug"},
    {"vitamin A", "ug", "vitamin_a_rae_ug"},
    {"vitamin D", "ug", "vitamin_d_ug"},
    {"saturated fat", "g", "saturated_g"},
    {"monounsaturated fat", "g", "monounsaturated_g"},
    {"polyunsaturated fat", "g", "polyunsaturated_g"},
    {"cholesterol", "mg", "cholesterol_mg"},
}};

constexpr std::array<Nutrient, nutrient_count> in_order = [] {
  std::array<Nutrient, nutrient_count> out{};
  for (std::size_t i = 0; i < nutrient_count; ++i) {
    out.at(i) = static_cast<Nutrient>(i);
  }
  return out;
}();

} // namespace

const NutrientFacts& facts(Nutrient nutrient) {
  return table.at(static_cast<std::size_t>(nutrient));
}

std::string_view in_words(Nutrient nutrient) {
  return nutrient == Nutrient::fiber ? "fibre" : facts(nutrient).name;
}

std::optional<Nutrient> parse_nutrient(std::string_view word) {
  for (const Nutrient nutrient : in_order) {
    if (facts(nutrient).name == word) {
      return nutrient;
    }
  }
  if (word == "fibre") {
    return Nutrient::fiber;
  }
  return word == "sugar" ? std::optional(Nutrient::sugars) : std::nullopt;
}

const std::array<Nutrient, nutrient_count>& all_nutrients() {
  return in_order;
}

} // namespace manciple::foods
