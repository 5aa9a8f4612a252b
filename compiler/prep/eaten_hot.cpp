#include "prep/eaten_hot.hpp"

#include "kitchen/appliances.hpp"
#include "kitchen/contents.hpp"

namespace manciple::prep {

bool goes_hot_to_the_table(const kitchen::Kitchen& kitchen, const kitchen::Recipe& recipe) {
  return is_eaten_hot(kitchen, recipe) && !recipe.method.empty() && recipe.method.back().is_hot;
}

bool is_eaten_hot(const kitchen::Kitchen& kitchen, const kitchen::Recipe& recipe) {
  const bool cake =
      kitchen::is_baked_from_flour(kitchen, recipe) && holds(kitchen, recipe, foods::Class::sugar);
  return !cake && (recipe.method.empty() || kitchen::is_heated(recipe));
}

} // namespace manciple::prep
