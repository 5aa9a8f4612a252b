#include "buying/item/most_packs.hpp"

#include <gtest/gtest.h>

#include "solver/buying/build.hpp"

namespace manciple::buying {
namespace {

/// By visit, of an item's only offer, with both visits open.
std::vector<int> most_of(const Item& item) {
  Model model = one_shop(12, {0, 5});
  model.items.push_back(item);
  const Prepared prepared = prepare(model, model.items[ItemId(0)]);
  Terms terms;
  terms.charge.assign(prepared.visits.size(), Cost{});
  const std::vector<int> most = most_packs(prepared, terms);
  std::vector<int> out;
  for (const Visit& visit : prepared.visits) {
    out.push_back(most[visit.sources.front()]);
  }
  return out;
}

Item two_uses() {
  return item({need(3, 100), need(8, 100)}, {pack(0, 100, dollar)});
}

TEST(MostPacks, WhatKeepsIsBoughtAtTheFirstOfTwoVisits) {
  EXPECT_EQ(most_of(two_uses()), (std::vector<int>{2, 0}));
}

TEST(MostPacks, WhatSpoilsIsBoughtForTheDaysBeforeTheNextVisit) {
  Item food = two_uses();
  food.buy_late = true;
  EXPECT_EQ(most_of(food), (std::vector<int>{1, 1}));
}

TEST(MostPacks, WhatMightBeOpenedTooSoonIsBoughtAtEither) {
  Item food = two_uses();
  food.offers[OfferId(0)].life.opened = 3;
  food.demands[DemandId(0)].give = 10 * unit;
  const std::vector<int> most = most_of(food);
  EXPECT_GE(most[0], 2);
  EXPECT_GE(most[1], 1);
}

} // namespace
} // namespace manciple::buying
