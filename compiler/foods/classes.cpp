#include "foods/classes.hpp"

#include "foods/food.hpp"
#include "foods/look_up.hpp"

#include <algorithm>
#include <array>

namespace manciple::foods {
namespace {

constexpr auto safety_words = std::to_array<std::string_view>(
    {"raw poultry", "minced meat", "raw meat", "raw fish", "raw shellfish", "ready meat",
     "cold cut", "egg", "fresh dairy", "kidney bean", "starch", "fresh herb", "aromatic", "acid",
     "sugar", "flour", "sprout", "honey"});
static_assert(safety_words.size() == static_cast<std::size_t>(Class::honey) + 1);

// Whether all that is of the one class is of the other.
bool is_within(Class narrow, Class wide) {
  return narrow == wide ||
         (wide == Class::meat && (narrow == Class::poultry || narrow == Class::minced)) ||
         (wide == Class::ready_meat && narrow == Class::cold_cut) ||
         (wide == Class::aromatic && narrow == Class::herb);
}

bool is_by_record(const SafetyClasses& safety, Class what) {
  return std::any_of(safety.classes.begin(), safety.classes.end(),
                     [&](Class one) { return is_within(one, what); });
}

bool is_assumed_to_be(const Food& food, Class what) {
  const std::string_view name = food.name;
  switch (what) {
  case Class::meat:
    return food.department == Department::meat;
  case Class::fish:
    return food.department == Department::fish;
  case Class::starch:
    return food.department == Department::grains;
  case Class::acid:
    return food.department == Department::oils && name.ends_with("vinegar");
  case Class::flour:
    return food.department == Department::baking && name.ends_with(" flour");
  default:
    return false;
  }
}

} // namespace

std::optional<Class> parse_safety_class(std::string_view word) {
  return look_up<Class>(safety_words, word);
}

std::string_view name(Class of) {
  return safety_words.at(static_cast<std::size_t>(of));
}

std::span<const std::string_view> safety_class_words() {
  return safety_words;
}

bool is(const Food& food, Class what) {
  switch (what) {
  case Class::vegetable:
    return food.department == Department::produce;
  case Class::spice:
    return food.department == Department::spices;
  case Class::oil:
    return food.department == Department::oils && !is(food, Class::acid);
  case Class::bread:
    return food.department == Department::bakery;
  default:
    return food.safety ? is_by_record(*food.safety, what) : is_assumed_to_be(food, what);
  }
}

bool is_assumed(const Food& food) {
  return !food.safety && std::any_of(safety_words.begin(), safety_words.end(), [&](auto word) {
    return is_assumed_to_be(food, *parse_safety_class(word));
  });
}

bool is_raw_animal(const Food& food) {
  return is(food, Class::meat) || is(food, Class::fish) || is(food, Class::shellfish) ||
         is(food, Class::egg);
}

} // namespace manciple::foods
