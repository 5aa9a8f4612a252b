#pragma once

#include "foods/food.hpp"

#include <span>
#include <string_view>
#include <vector>

namespace manciple::foods {

/// What a food is where it may do harm: as it is bought, before anything is done to it. A food may
/// be of several classes. The lists are by name, from what the foods are; a food that is not in
/// the reference is of no class.
enum class Class : std::uint8_t {
  poultry,     ///< raw
  minced,      ///< raw meat, minced or in sausages
  meat,        ///< raw, poultry and minced meat among it
  fish,        ///< raw, shellfish not
  shellfish,   ///< raw: mussels, oysters, clams, shrimp, ...
  ready_meat,  ///< ready to eat: sliced meat, cooked and smoked meat and fish
  egg,         ///< raw, in or out of the shell
  milk,        ///< what spoils of it: milk, cream, yogurt and soft cheese
  kidney_bean, ///< dried beans that poison unless they are boiled: kidney, borlotti and white ones
  starch,      ///< rice, pasta, pulses and potatoes: once cooked they must be kept cold
  vegetable,   ///< fresh, and mushrooms
  herb,        ///< fresh
  aromatic,    ///< garlic, herbs, chillies: what oils are flavoured with
  spice,       ///< dried, and salt
  oil,
  acid,  ///< vinegar, lemon and lime juice, and what is pickled
  sugar, ///< sugar, honey and syrup
  flour,
  bread,
  sprout,
  honey
};

bool is(const Food& food, Class what);

/// Raw, of an animal: what is cut before it dirties the board.
bool is_raw_animal(const Food& food);

/// All names by which foods are sorted into classes: each is that of a food in the reference.
std::vector<std::string_view> names_in_classes();

} // namespace manciple::foods
