#pragma once

#include "nutrition/nutrition.hpp"
#include "resolve/limits.hpp"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace manciple::nutrition {

/// A dish that could be eaten in the place of another.
struct StandIn {
  std::string name;
  bool planned = true;         ///< the plan has it, too; else it is only in the library
  bool labels = false;         ///< there are labels to read before somebody eats it
  double counts = 0;           ///< what of a serving counts for an aim
  std::optional<double> cents; ///< a serving, where all its prices are known
};

/// Whether an aim counts such a food.
bool is_counted(const kitchen::Kitchen& kitchen, const foods::Food& food, const kitchen::Aim& aim);

/// What the library has for the meals of a plan.
class LibraryDishes {
public:
  LibraryDishes(kitchen::Library library, const kitchen::Kitchen& kitchen);

  /// Recipes that suit the meal of a dish, as its main dish or beside that, and that everybody who
  /// eats the dish may have. Their prices are what their foods usually cost at the shops of the
  /// plan's trips, before tax.
  std::vector<StandIn> in_place_of(resolve::DishRef dish, bool main, const kitchen::Aim& aim);

private:
  // What a serving of a recipe holds and costs, and what is in it.
  struct Serving {
    Sum holds;
    std::optional<double> cents;
    resolve::Inside inside;
  };

  [[nodiscard]] bool is_planned(const kitchen::Recipe& recipe) const;
  const Serving& serving(const kitchen::Recipe& recipe);
  [[nodiscard]] std::optional<double> cents_of(const kitchen::Recipe& recipe);
  [[nodiscard]] double counts(const kitchen::Recipe& recipe, const kitchen::Aim& aim);
  [[nodiscard]] kitchen::Person known_here(const kitchen::Person& person);

  kitchen::Library library_;
  const kitchen::Kitchen& kitchen_;
  std::map<kitchen::RecipeId, Serving> servings_;
  std::map<foods::FoodId, std::optional<double>> prices_;
};

} // namespace manciple::nutrition
