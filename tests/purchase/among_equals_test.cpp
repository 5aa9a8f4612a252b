#include <gtest/gtest.h>

#include "purchase/build.hpp"
#include "purchase/check.hpp"

namespace manciple::purchase {
namespace {

/// The only good's purchases in the best list.
std::vector<Purchase> bought(const Model& model) {
  const Solution solution = solve(model);
  EXPECT_EQ(check(model, solution), std::vector<std::string>{});
  EXPECT_EQ(solution.status, Status::optimal);
  return solution.goods.empty() ? std::vector<Purchase>{} : solution.goods[0].purchases;
}

/// One shop at which stops are made whatever they cost.
Model stops_on(const std::vector<Day>& days) {
  Model model = one_shop(25, days);
  for (Stop& stop : model.stops)
    stop.always = true;
  return model;
}

TEST(AmongEquals, WhatKeepsIsBoughtOnTheFirstDay) {
  Model model = stops_on({0, 7, 14});
  model.goods.push_back(good(60, {need(16, 900)}, {pack(0, 1000, 3 * dollar)}));
  const std::vector<Purchase> purchases = bought(model);
  ASSERT_EQ(purchases.size(), 1U);
  EXPECT_EQ(purchases[0].stop, 0U);
}

TEST(AmongEquals, WhatNeedNotBeFrozenIsBoughtLater) {
  Model model = stops_on({0, 7, 14});
  Good meat = good(2, {need(1, 500), need(15, 500)}, {pack(0, 500, 4 * dollar)});
  meat.keeps_frozen = 90;
  model.goods.push_back(meat);
  const std::vector<Purchase> purchases = bought(model);
  ASSERT_EQ(purchases.size(), 2U);
  EXPECT_EQ(purchases[0].stop, 0U);
  EXPECT_EQ(purchases[1].stop, 2U);
  EXPECT_EQ(purchases[0].frozen + purchases[1].frozen, 0);
}

TEST(AmongEquals, ACentLessIsWorthFreezing) {
  Model model = stops_on({0, 14});
  Offer now = pack(0, 500, 4 * dollar - 100);
  now.last_day = 5;
  Good meat = good(2, {need(15, 500)}, {now, pack(0, 500, 4 * dollar)});
  meat.keeps_frozen = 90;
  model.goods.push_back(meat);
  const std::vector<Purchase> purchases = bought(model);
  ASSERT_EQ(purchases.size(), 1U);
  EXPECT_EQ(purchases[0].stop, 0U);
  EXPECT_GT(purchases[0].frozen, 0);
}

TEST(AmongEquals, AWeighedPieceIsNotDivided) {
  Model model = stops_on({0, 7, 14});
  Offer step = pack(0, 50, dollar / 2);
  step.by_weight = true;
  model.goods.push_back(good(60, {need(1, 500), need(15, 500)}, {step}));
  const std::vector<Purchase> purchases = bought(model);
  ASSERT_EQ(purchases.size(), 1U);
  EXPECT_EQ(purchases[0].packs, 20);
}

TEST(AmongEquals, RoomAndReductionsStayAsTheyWere) {
  Model model = stops_on({0, 7});
  // Room for one of the two on the first nights.
  model.room[static_cast<std::size_t>(Place::pantry)].assign(26, 1'000'000);
  Good first = good(60, {need(10, 800)}, {pack(0, 800, 2 * dollar)});
  first.room_cool = 1000;
  model.goods.push_back(first);
  model.goods.push_back(first);
  const Solution solution = solve(model);
  EXPECT_EQ(check(model, solution), std::vector<std::string>{});
  EXPECT_EQ(solution.status, Status::infeasible); // both stand there on the ninth night

  model.goods[1].demands[0].day = 3;
  const Solution possible = solve(model);
  EXPECT_EQ(check(model, possible), std::vector<std::string>{});
  ASSERT_EQ(possible.status, Status::optimal);
  EXPECT_EQ(possible.goods[0].purchases.at(0).stop, 1U); // the first day's room is the other's
  EXPECT_EQ(possible.goods[1].purchases.at(0).stop, 0U);
}

} // namespace
} // namespace manciple::purchase
