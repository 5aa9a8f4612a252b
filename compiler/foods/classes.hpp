#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace manciple::foods {

/// What a food is where the safety of a dish is concerned: as it is bought, before anything is done
/// to it. A food may be of several classes.
enum class Class : std::uint8_t {
  // As its record says.
  poultry,     ///< raw
  minced,      ///< raw meat, minced or in sausages
  meat,        ///< raw, poultry and minced meat among it
  fish,        ///< raw, shellfish not
  shellfish,   ///< raw: mussels, oysters, clams, shrimp, ...
  ready_meat,  ///< ready to eat: cooked, cured and smoked meat and fish, cold cuts among it
  cold_cut,    ///< sliced, cured and smoked meat and fish, eaten as it is bought
  egg,         ///< raw, in or out of the shell
  milk,        ///< what spoils of it and as it does: cream, yogurt, soft cheese, coconut milk, tofu
  kidney_bean, ///< dried beans that poison unless they are boiled: kidney, borlotti and white ones
  starch,      ///< rice, pasta, pulses and potatoes: once cooked they must be kept cold
  herb,        ///< fresh
  aromatic,    ///< garlic, herbs, chillies: what oils are flavoured with
  acid,        ///< vinegar, lemon and lime juice
  sugar,       ///< sugar, honey and syrup
  flour,
  sprout,
  honey,
  // As its department says.
  vegetable, ///< fresh, and mushrooms
  spice,     ///< dried, and salt
  oil,       ///< no vinegar
  bread
};

/// Of the classes that a record says: its word there, and back.
std::optional<Class> parse_safety_class(std::string_view word);
std::string_view name(Class of);
std::span<const std::string_view> safety_class_words();

/// Of which of these a food is, wider classes left out: what is raw poultry is raw meat as well,
/// and fresh herbs are aromatic. None of them, where the list is empty.
struct SafetyClasses {
  std::vector<Class> classes;
  std::string source;
};

struct Food;

/// Whether a food is of a class. What is sold as meat, fish or grain is taken for raw meat, raw
/// fish or starch where its record does not say; a flour or a vinegar is known by its name then.
bool is(const Food& food, Class what);

/// Whether there is a class that a food is only taken to be of, because its record does not say.
bool is_assumed(const Food& food);

/// Raw, of an animal: what is cut before it dirties the board.
bool is_raw_animal(const Food& food);

} // namespace manciple::foods
