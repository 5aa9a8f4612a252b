#include "prep/purpose.hpp"

#include "text/words.hpp"

#include <set>

namespace manciple::prep {

std::optional<std::string> purpose(const kitchen::Kitchen& kitchen,
                                   const resolve::Resolved& resolved, const resolve::Use& use) {
  if (const auto* of = std::get_if<resolve::OfMaking>(&use.reason)) {
    return kitchen.recipe(resolved.making(of->making).recipe).name;
  }
  if (const auto* of = std::get_if<resolve::OfDish>(&use.reason)) {
    return kitchen.plan->meals[of->dish.meal].slot;
  }
  return std::nullopt;
}

std::string purposes(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                     resolve::MakingId id) {
  std::set<std::string> names;
  for (const resolve::DishShare& of : resolved.shares_of(id)) {
    const kitchen::Dish& dish = kitchen.plan->meals[of.dish.meal].dishes[of.dish.dish];
    names.insert(kitchen.recipe(*dish.what.recipe()).name);
  }
  return text::join({names.begin(), names.end()}, ", ");
}

} // namespace manciple::prep
