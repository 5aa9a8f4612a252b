#include <gtest/gtest.h>

#include "purchase/build.hpp"
#include "purchase/check.hpp"

namespace manciple::purchase {
namespace {

Solution solved(const Model& model) {
  const Solution solution = solve(model);
  EXPECT_EQ(check(model, solution), std::vector<std::string>{});
  EXPECT_EQ(solution.status, Status::optimal);
  return solution;
}

std::vector<Volume>& room(Model& model, Place place) {
  return model.room[static_cast<std::size_t>(place)];
}

/// Two foods that a cheap stop on day 0 and a dear one on day 5 sell, for days 2 and 7.
Model two_foods() {
  Model model = one_shop(9, {0, 5});
  for (int i = 0; i < 2; ++i) {
    Offer cheap = pack(0, 1000, 2 * dollar);
    Offer dear = pack(0, 1000, (3 + i) * dollar);
    cheap.last_day = 0;
    dear.first_day = 5;
    Good food = good(20, {need(2, 1000), need(7, 1000)}, {cheap, dear});
    food.cool_place = Place::fridge;
    food.room_cool = 1000; // a litre a pack
    model.goods.push_back(food);
  }
  return model;
}

TEST(Coupled, BuysLaterWhatDoesNotFitNow) {
  Model model = two_foods();
  EXPECT_EQ(solved(model).total, 8 * dollar);
  room(model, Place::fridge).assign(10, 3'000'000);
  const Solution solution = solved(model);
  // Of the two, the one waits that costs only 1.00 more.
  EXPECT_EQ(solution.total, 9 * dollar);
  EXPECT_EQ(solution.goods[0].purchases.size(), 2U);
  EXPECT_EQ(solution.goods[1].purchases.size(), 1U);
  room(model, Place::fridge).assign(10, 2'000'000);
  EXPECT_EQ(solved(model).total, 11 * dollar);
}

TEST(Coupled, LeavesTheNightsAloneThatAreNotShort) {
  Model model = two_foods();
  room(model, Place::fridge).assign(10, 4'000'000);
  room(model, Place::fridge)[6] = 1'000'000; // after day 2 and before day 7
  EXPECT_EQ(solve(model).status, Status::infeasible);
  room(model, Place::fridge)[6] = 2'000'000;
  EXPECT_EQ(solved(model).total, 8 * dollar);
}

TEST(Coupled, CountsFrozenFoodInTheFreezer) {
  Model model = one_shop(20, {0, 10});
  model.stops[1].cost = dollar;
  Good meat = good(2, {need(12, 1000)}, {pack(0, 1000, 5 * dollar)});
  meat.keeps_frozen = 90;
  meat.cool_place = Place::fridge;
  meat.room_cool = meat.room_frozen = 1000;
  model.goods.push_back(meat);
  room(model, Place::freezer).assign(21, 900'000);
  EXPECT_EQ(solved(model).total, 6 * dollar);
  room(model, Place::freezer).assign(21, 1'000'000);
  EXPECT_EQ(solved(model).total, 5 * dollar);
}

TEST(Coupled, TakesCreditUpToWhatIsSpent) {
  Model model = one_shop(9, {0});
  model.shops[0].credit = 10 * dollar;
  model.goods.push_back(good(20, {need(2, 100)}, {pack(0, 100, 4 * dollar)}));
  EXPECT_EQ(solved(model).paid, 0);
  model.goods.push_back(good(20, {need(2, 100)}, {pack(0, 100, 7 * dollar)}));
  EXPECT_EQ(solved(model).paid, dollar);
  EXPECT_EQ(solved(model).credit[0], 10 * dollar);
}

TEST(Coupled, GoesWhereCreditIsEvenIfPricesAreHigher) {
  Model model = one_shop(9, {0});
  model.shops.resize(2);
  model.stops.push_back({0, 1, 0, false});
  model.shops[1].credit = 2 * dollar;
  for (int i = 0; i < 2; ++i)
    model.goods.push_back(
        good(20, {need(2, 100)}, {pack(0, 100, 3 * dollar), pack(1, 100, 4 * dollar)}));
  // One is bought with the credit, 2.00 for 4.00; for the other it is gone.
  EXPECT_EQ(solved(model).total, 5 * dollar);
}

TEST(Coupled, BuysMoreToReachAReduction) {
  Model model = one_shop(9, {0, 5});
  model.shops[0].over = 10 * dollar;
  model.shops[0].off = 3 * dollar;
  Offer later = pack(0, 100, 4 * dollar);
  later.first_day = 5;
  Offer now = pack(0, 100, 5 * dollar);
  now.last_day = 0;
  model.goods.push_back(good(20, {need(2, 100)}, {now}));
  model.goods.push_back(good(20, {need(7, 100)}, {now, later}));
  const Solution solution = solved(model);
  EXPECT_EQ(solution.total, 7 * dollar);
  EXPECT_EQ(solution.off[0], 3 * dollar);
  model.shops[0].off = dollar / 2;
  EXPECT_EQ(solved(model).total, 9 * dollar);
}

TEST(Coupled, TakesAReductionOncePerVisit) {
  Model model = one_shop(9, {0, 5});
  model.shops[0].over = 4 * dollar;
  model.shops[0].off = dollar;
  Offer later = pack(0, 100, 5 * dollar);
  later.first_day = 5;
  Offer now = pack(0, 100, 5 * dollar);
  now.last_day = 0;
  model.goods.push_back(good(20, {need(2, 100)}, {now}));
  model.goods.push_back(good(20, {need(7, 100)}, {now, later}));
  EXPECT_EQ(solved(model).total, 8 * dollar);
  model.stops[1].cost = 2 * dollar;
  EXPECT_EQ(solved(model).total, 9 * dollar);
}

} // namespace
} // namespace manciple::purchase
