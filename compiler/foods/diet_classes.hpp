#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

namespace manciple::foods {

/// What a food is made of or has in it, as far as diets ask. What allergens tell already (milk,
/// egg, fish, crustaceans, molluscs, gluten) is not told again. A food of a narrower class is of
/// the wider one, too: beef is meat, and lard is animal fat.
enum class DietClass : std::uint8_t {
  beef, ///< and veal
  pork,
  lamb, ///< and mutton and goat
  game, ///< with four feet: venison, rabbit, bison
  meat, ///< of one of these, or of several, where the kind is not said
  poultry,
  stock, ///< of meat, poultry or fish
  gelatin,
  lard,
  animal_fat, ///< suet, dripping, lard, the fat of geese
  rennet,     ///< of an animal
  honey,
  carmine, ///< and shellac: of insects
  finings, ///< by which drinks are cleared: of fish, gelatin, egg or milk
  alcohol,
  caffeine,
  lactose,
  traces_of_lactose, ///< ripened cheese and butter: about half a gram in 100 g, or less
};
std::optional<DietClass> parse_diet_class(std::string_view word);
std::string_view name(DietClass of);
std::span<const std::string_view> diet_class_words();

/// Whether all that is of the one class is of the other: pork of meat; each of itself.
bool is_within(DietClass narrow, DietClass wide);

} // namespace manciple::foods
