#pragma once

#include "resolve/resolve.hpp"

#include <set>

namespace manciple::resolve {

/// Checks every dish against what its eaters must not have, through recipes in recipes to any
/// depth. What a food contains is an error at the dish, with the way by which it gets there; what
/// differs by maker or is not known comes back as a label to read.
std::vector<LabelCheck> check_limits(const kitchen::Kitchen& kitchen,
                                     text::Diagnostics& diagnostics);

/// What somebody must not have, as it is said: "egg".
std::string name_of(const kitchen::Kitchen& kitchen, const kitchen::Limit& limit);

/// Whether a food has what somebody must not have. The name of one that nobody knows may speak of
/// it.
foods::Holds holds_limit(const kitchen::Kitchen& kitchen, foods::FoodId food,
                         const kitchen::Limit& limit);

/// Whether a recipe says that it may contain what somebody must not have.
bool may_contain(const kitchen::Recipe& recipe, const kitchen::Limit& limit);

/// What may be in something: foods, and recipes that say what they may contain.
struct Inside {
  std::set<foods::FoodId> foods;
  std::set<kitchen::RecipeId> recipes;

  /// A food with what may be bought instead, or a recipe with all that goes into it.
  void add(const kitchen::Kitchen& kitchen, const kitchen::Target& what);
};

/// Whether somebody may eat it.
struct Fit {
  std::optional<std::string> forbidden; ///< "Ada must not have milk: butter has it"
  std::vector<LabelCheck> labels;       ///< to be read before
};
Fit fit_for(const kitchen::Kitchen& kitchen, const Inside& inside, const kitchen::Person& person);

/// By food, then by what has to be known.
void sort_labels(const kitchen::Kitchen& kitchen, std::vector<LabelCheck>& labels);

} // namespace manciple::resolve
