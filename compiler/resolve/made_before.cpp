#include "resolve/made_before.hpp"

#include "resolve/makings.hpp"

#include <algorithm>

namespace manciple::resolve {

std::vector<MadeBefore> made_before(const kitchen::Kitchen& kitchen,
                                    text::Diagnostics& diagnostics) {
  std::vector<MadeBefore> out;
  const auto& lots = kitchen.on_hand.made;
  for (std::size_t l = 0; l < lots.size(); ++l) {
    const kitchen::MadeLot& lot = lots[l];
    const kitchen::Recipe& recipe = kitchen.recipe(*lot.what.recipe());
    const bool frozen = lot.place == foods::Place::freezer;
    const int keeps = (frozen ? recipe.keeps_freezer : recipe.keeps_unfrozen()).value_or(0);
    const auto times = lot.times ? lot.times : times_of(kitchen, lot.what, diagnostics);
    if (times) {
      out.push_back({l, recipe.id, *times, lot.made,
                     lot.use_by.value_or(lot.made + std::chrono::days(keeps)), frozen});
    }
  }
  std::stable_sort(out.begin(), out.end(), [](const MadeBefore& a, const MadeBefore& b) {
    return std::pair(a.frozen, a.good_until) < std::pair(b.frozen, b.good_until);
  });
  return out;
}

} // namespace manciple::resolve
