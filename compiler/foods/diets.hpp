#pragma once

#include "foods/food.hpp"

#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace manciple::foods {

/// A class of foods that somebody may have to do without: one of those that diets ask about, or an
/// allergen.
using AnyClass = std::variant<DietClass, Allergen>;

std::string_view name(const AnyClass& of);
/// Every word for a class, groups such as "shellfish" among them.
std::vector<std::string_view> class_words();
/// The classes that a word stands for: "pork", "fowl", "shellfish", "dairy"; none where it is no
/// word for a class.
std::vector<AnyClass> classes_called(std::string_view word);

/// The names of the diets that are known.
std::vector<std::string_view> diet_words();
/// What a diet does without: "vegetarian", "gluten-free", "no pork", "low lactose"; none where it
/// is not one. What goes for a diet differs from house to house; these are the usual meanings.
/// Common practice, no source.
std::vector<AnyClass> diet_called(std::string_view word);
/// What is left out by a diet that says so in its name: "pork" of "no pork", "gluten" of
/// "gluten-free"; empty where the name is not of that kind.
std::string without(std::string_view diet);

/// What is known of a food with respect to a class.
enum class Holds : std::uint8_t {
  no,
  read_the_label, ///< it differs by maker
  not_known,      ///< nobody has said, for want of a record
  yes,
};
Holds holds(const Food& food, const AnyClass& of);

} // namespace manciple::foods
