#include "resolve/shares.hpp"

#include <map>

namespace manciple::resolve {

std::vector<std::vector<DishShare>> shares(const std::vector<Making>& makings) {
  std::vector<std::vector<DishShare>> out;
  for (const Making& making : makings) {
    std::map<DishRef, Rational> sums;
    for (const Consumer& consumer : making.consumers) {
      const Rational part = consumer.times / making.times;
      if (const auto* dish = std::get_if<DishRef>(&consumer.who)) {
        sums[*dish] += part;
        continue;
      }
      // What needs a making stands before it.
      for (const DishShare& of : out[static_cast<std::size_t>(std::get<MakingId>(consumer.who))]) {
        sums[of.dish] += part * of.share;
      }
    }
    std::vector<DishShare>& list = out.emplace_back();
    for (auto& [dish, share] : sums) {
      list.push_back({dish, std::move(share)});
    }
  }
  return out;
}

std::vector<DishShare> Resolved::shares_of(const Use& use) const {
  if (const auto* making = std::get_if<OfMaking>(&use.reason)) {
    return shares_of(making->making);
  }
  const auto* dish = std::get_if<OfDish>(&use.reason);
  return dish == nullptr ? std::vector<DishShare>{} : std::vector<DishShare>{{dish->dish, 1}};
}

} // namespace manciple::resolve
