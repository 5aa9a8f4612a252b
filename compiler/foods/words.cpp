#include "foods/words.hpp"

#include "foods/look_up.hpp"

#include <array>

namespace manciple::foods {
namespace {

constexpr auto forms = std::to_array<std::string_view>(
    {"plain",    "chopped", "diced",   "minced",  "sliced",    "shredded", "grated",    "cubed",
     "crumbled", "crushed", "mashed",  "pureed",  "julienned", "halved",   "quartered", "whole",
     "packed",   "sifted",  "spooned", "scooped", "ground",    "torn",     "dry",       "cooked",
     "drained",  "juice",   "zest",    "yolk",    "white",     "beaten",   "leaves",    "florets",
     "pitted",   "shelled", "peeled",  "melted",  "toasted",   "frozen",   "slivered"});

constexpr auto departments = std::to_array<std::string_view>(
    {"produce", "meat", "fish", "dairy", "bakery", "grains", "canned", "baking", "spices", "oils",
     "condiments", "nuts", "frozen", "drinks", "snacks", "household", "other"});

constexpr auto places = std::to_array<std::string_view>({"pantry", "fridge", "freezer"});

constexpr auto allergens = std::to_array<std::string_view>(
    {"milk", "egg", "fish", "crustaceans", "molluscs", "tree nuts", "peanut", "wheat", "gluten",
     "soy", "sesame", "celery", "mustard", "lupin", "sulphites"});

} // namespace

std::optional<Form> parse_form(std::string_view word) {
  return look_up<Form>(forms, word);
}
std::string_view name(Form form) {
  return forms.at(static_cast<std::size_t>(form));
}
std::span<const std::string_view> form_words() {
  return forms;
}

std::optional<Department> parse_department(std::string_view word) {
  return look_up<Department>(departments, word);
}
std::string_view name(Department department) {
  return departments.at(static_cast<std::size_t>(department));
}
std::span<const std::string_view> department_words() {
  return departments;
}

std::optional<Place> parse_place(std::string_view word) {
  return look_up<Place>(places, word);
}
std::string_view name(Place place) {
  return places.at(static_cast<std::size_t>(place));
}
std::span<const std::string_view> place_words() {
  return places;
}

std::optional<Allergen> parse_allergen(std::string_view word) {
  return look_up<Allergen>(allergens, word);
}
std::string_view name(Allergen allergen) {
  return allergens.at(static_cast<std::size_t>(allergen));
}
std::span<const std::string_view> allergen_words() {
  return allergens;
}

} // namespace manciple::foods
