#include "foods/kinds.hpp"

#include "foods/classes.hpp"

#include <algorithm>
#include <array>

namespace manciple::foods {
namespace {

constexpr auto kind_words = std::to_array<std::pair<std::string_view, std::string_view>>({
    {"vegetables", "vegetables"},
    {"vegetable", "vegetables"},
    {"fruit", "fruit"},
    {"fruits", "fruit"},
    {"fruit and vegetables", "fruit and vegetables"},
    {"vegetables and fruit", "fruit and vegetables"},
    {"fruit and veg", "fruit and vegetables"},
    {"pulses", "pulses"},
    {"legumes", "pulses"},
});

constexpr int group_size = 1000; // an SR28 number is its group and three digits
constexpr int fruits = 9;
constexpr int vegetables = 11;
constexpr int legumes = 16;

bool is_fruit_by_name(const Food& food) {
  constexpr auto names = std::to_array<std::string_view>(
      {"asian pear", "blood orange", "blackcurrant", "cantaloupe", "damson", "dragon fruit",
       "fruit salad", "galia melon", "greengage", "melon", "mirabelle", "prickly pear",
       "redcurrant", "white currant", "sour cherry", "star fruit", "frozen fruit",
       "frozen mixed berry"});
  return std::find(names.begin(), names.end(), food.name) != names.end();
}

bool is_vegetable(const Food& food) {
  if (is(food, Class::starch) || is(food, Class::herb) ||
      food.name.find("potato") != std::string::npos || food.department == Department::snacks ||
      food.department == Department::spices) {
    return false;
  }
  if (food.usda) {
    return *food.usda / group_size == vegetables;
  }
  return food.department == Department::produce && !is_fruit_by_name(food);
}

bool is_fruit(const Food& food) {
  return food.usda ? *food.usda / group_size == fruits : is_fruit_by_name(food);
}

} // namespace

std::optional<std::string_view> parse_kind(std::string_view word) {
  const auto* const found = std::find_if(kind_words.begin(), kind_words.end(),
                                         [&](const auto& one) { return one.first == word; });
  return found == kind_words.end() ? std::nullopt : std::optional(found->second);
}

bool is_of_kind(const Food& food, std::string_view kind) {
  if (kind == "vegetables") {
    return is_vegetable(food);
  }
  if (kind == "fruit") {
    return is_fruit(food);
  }
  if (kind == "pulses") {
    return food.usda && *food.usda / group_size == legumes &&
           food.department != Department::condiments && food.department != Department::snacks;
  }
  return is_vegetable(food) || is_fruit(food);
}

} // namespace manciple::foods
