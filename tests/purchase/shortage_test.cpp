#include <gtest/gtest.h>

#include "purchase/build.hpp"

namespace manciple::purchase {
namespace {

Shortage only_shortage(const Model& model) {
  const Solution solution = solve(model);
  EXPECT_EQ(solution.status, Status::infeasible);
  EXPECT_EQ(solution.shortages.size(), 1U);
  return solution.shortages.empty() ? Shortage{} : solution.shortages[0];
}

TEST(Shortage, NamesTheFirstDemandThatCannotBeMet) {
  Model model = one_shop(20, {0, 9});
  model.goods.push_back(good(3, {need(15, 10), need(2, 10), need(7, 40)}, {pack(0, 100, 1)}));
  const Shortage shortage = only_shortage(model);
  EXPECT_EQ(shortage.demand, 2U);
  EXPECT_EQ(shortage.why, Why::does_not_keep);
  EXPECT_EQ(shortage.missing, 40 * unit);
  EXPECT_EQ(shortage.before, StopId{0});
  EXPECT_EQ(shortage.after, StopId{1});
}

TEST(Shortage, SaysThatNobodyOffersIt) {
  Model model = one_shop(5, {0});
  model.goods.push_back(good(3, {need(1, 10)}, {}));
  EXPECT_EQ(only_shortage(model).why, Why::no_offer);
}

TEST(Shortage, SaysThatNoStopIsInTime) {
  Model model = one_shop(5, {3});
  model.goods.push_back(good(3, {need(1, 10)}, {pack(0, 10, 1)}));
  const Shortage shortage = only_shortage(model);
  EXPECT_EQ(shortage.why, Why::no_stop);
  EXPECT_FALSE(shortage.before.has_value());
  EXPECT_EQ(shortage.after, StopId{0});
}

TEST(Shortage, SaysThatItWouldKeepOnlyFrozen) {
  Model model = one_shop(9, {0});
  Good meat = good(2, {fresh(7, 10)}, {pack(0, 10, 1)});
  meat.keeps_frozen = 90;
  model.goods.push_back(meat);
  EXPECT_EQ(only_shortage(model).why, Why::must_be_fresh);
}

TEST(Shortage, SaysHowMuchALimitLeavesMissing) {
  Model model = one_shop(9, {0});
  Offer offer = pack(0, 10, 1);
  offer.cost.limit = 3;
  model.goods.push_back(good(20, {need(3, 20), need(7, 25)}, {offer}));
  const Shortage shortage = only_shortage(model);
  EXPECT_EQ(shortage.why, Why::limit);
  EXPECT_EQ(shortage.demand, 1U);
  EXPECT_EQ(shortage.missing, 15 * unit);
}

TEST(Shortage, SaysWhichPlaceIsTooSmall) {
  Model model = one_shop(9, {0});
  Good milk = good(20, {need(7, 2000)}, {pack(0, 1000, 1)});
  milk.cool_place = Place::fridge;
  milk.room_cool = 1000;
  model.goods.push_back(milk);
  model.room[static_cast<std::size_t>(Place::fridge)].assign(10, 1'500'000);
  const Shortage shortage = only_shortage(model);
  EXPECT_EQ(shortage.why, Why::room);
  EXPECT_EQ(shortage.place, Place::fridge);
  EXPECT_EQ(shortage.missing, 500 * unit);
}

} // namespace
} // namespace manciple::purchase
