#include "foods/diet_classes.hpp"

#include "foods/look_up.hpp"

#include <array>

namespace manciple::foods {
namespace {

constexpr auto class_words = std::to_array<std::string_view>(
    {"beef", "pork", "lamb", "game", "meat", "poultry", "stock", "gelatin", "lard", "animal fat",
     "rennet", "honey", "carmine", "finings", "alcohol", "caffeine", "lactose",
     "traces of lactose"});

} // namespace

std::optional<DietClass> parse_diet_class(std::string_view word) {
  return look_up<DietClass>(class_words, word);
}

std::string_view name(DietClass of) {
  return class_words.at(static_cast<std::size_t>(of));
}

std::span<const std::string_view> diet_class_words() {
  return class_words;
}

bool is_within(DietClass narrow, DietClass wide) {
  if (narrow == wide) {
    return true;
  }
  if (wide == DietClass::meat) {
    return narrow == DietClass::beef || narrow == DietClass::pork || narrow == DietClass::lamb ||
           narrow == DietClass::game;
  }
  return wide == DietClass::animal_fat && narrow == DietClass::lard;
}

} // namespace manciple::foods
