#include "foods/ripening.hpp"

#include <algorithm>

namespace manciple::foods {
namespace {

std::optional<int> longest(const Food& food) {
  const auto& best = food.keeps.in(food.keeps.best_place(food.stored));
  return best ? std::optional(best->value) : std::nullopt;
}

} // namespace

std::optional<int> keeps_ripe(const Food& food) {
  return food.ripens ? longest(food) : std::nullopt;
}

std::optional<int> keeps_hard(const Food& food) {
  const auto ripe = keeps_ripe(food);
  if (!ripe) {
    return std::nullopt;
  }
  int least = *ripe;
  for (const auto* place : {&food.keeps.pantry, &food.keeps.fridge}) {
    least = *place ? std::min(least, (*place)->value) : least;
  }
  return (food.keeps.hard ? food.keeps.hard->value : 0) + food.ripens->value + least;
}

std::optional<int> keeps_from_shop(const Food& food) {
  return std::max(longest(food), keeps_hard(food));
}

} // namespace manciple::foods
