#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

/// The closed vocabularies of a food record.
namespace manciple::foods {

/// How a food is cut or what state it is in, where that changes its weight by volume or how much of
/// it is left. `plain` is as it comes: milk, flour, peas.
enum class Form : std::uint8_t {
  plain,
  chopped,
  diced,
  minced,
  sliced,
  shredded,
  grated,
  cubed,
  crumbled,
  crushed,
  mashed,
  pureed,
  julienned,
  halved,
  quartered,
  whole,
  packed,
  sifted,
  spooned,
  scooped,
  ground,
  torn,
  dry,
  cooked,
  drained,
  juice,
  zest,
  yolk,
  white,
  beaten,
  leaves,
  florets,
  pitted,
  shelled,
  peeled,
  melted,
  toasted,
  frozen,
  slivered,
};
std::optional<Form> parse_form(std::string_view word);
std::string_view name(Form form);
std::span<const std::string_view> form_words();

/// Where a shop keeps it.
enum class Department : std::uint8_t {
  produce,
  meat,
  fish,
  dairy,
  bakery,
  grains,
  canned,
  baking,
  spices,
  oils,
  condiments,
  nuts,
  frozen,
  drinks,
  snacks,
  household,
  other, ///< of what is carried as it is written
};
std::optional<Department> parse_department(std::string_view word);
std::string_view name(Department department);
std::span<const std::string_view> department_words();

/// Where a house keeps it.
enum class Place : std::uint8_t { pantry, fridge, freezer };
inline constexpr std::array all_places{Place::pantry, Place::fridge, Place::freezer};
std::optional<Place> parse_place(std::string_view word);
std::string_view name(Place place);
std::span<const std::string_view> place_words();

/// What makes some people ill: the nine of US law (FALCPA 2004, FASTER Act 2021) and the fourteen
/// of EU Regulation 1169/2011, Annex II, as one list. US law names wheat, EU law all cereals with
/// gluten; both are here, and a wheat food is of both.
enum class Allergen : std::uint8_t {
  milk,
  egg,
  fish,
  crustaceans,
  molluscs,
  tree_nuts,
  peanut,
  wheat,
  gluten,
  soy,
  sesame,
  celery,
  mustard,
  lupin,
  sulphites,
};
std::optional<Allergen> parse_allergen(std::string_view word);
std::string_view name(Allergen allergen);
std::span<const std::string_view> allergen_words();

} // namespace manciple::foods
