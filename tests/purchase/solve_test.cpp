#include <gtest/gtest.h>

#include <stdexcept>

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

TEST(Solve, BuysWholePacksThatCoverTheDemand) {
  Model model = one_shop(10, {0});
  model.goods.push_back(good(30, {need(3, 700)}, {pack(0, 500, 2 * dollar)}));
  const Solution solution = solved(model);
  EXPECT_EQ(solution.total, 4 * dollar);
  EXPECT_EQ(solution.goods[0].purchases[0].packs, 2);
  EXPECT_EQ(solution.goods[0].kept, 300 * unit);
}

TEST(Solve, TakesTheSmallPackNowBecauseTheBigOneIsCheaperLater) {
  Model model = one_shop(20, {0, 7});
  Offer small = pack(0, 250, 2 * dollar);
  Offer big = pack(0, 1000, 3 * dollar);
  Offer big_early = pack(0, 1000, 9 * dollar);
  big.first_day = 5; // on sale from then on
  big_early.last_day = 4;
  model.goods.push_back(good(30, {need(2, 250), need(9, 900)}, {small, big, big_early}));
  const Solution solution = solved(model);
  EXPECT_EQ(solution.total, 5 * dollar);
  ASSERT_EQ(solution.goods[0].purchases.size(), 2U);
  EXPECT_EQ(solution.goods[0].purchases[0].offer, 0U);
  EXPECT_EQ(solution.goods[0].purchases[1].offer, 1U);
}

TEST(Solve, BuysAgainWhatDoesNotKeep) {
  Model model = one_shop(20, {0, 7, 14});
  model.goods.push_back(good(6, {need(2, 100), need(8, 100), need(15, 100)},
                             {pack(0, 100, dollar), pack(0, 300, dollar + 1)}));
  EXPECT_EQ(solved(model).total, 3 * dollar);
}

TEST(Solve, FreezesWhatWouldNotKeepUntilItsUse) {
  Model model = one_shop(20, {0, 14});
  Good meat = good(2, {need(1, 400), need(12, 600)}, {pack(0, 1000, 8 * dollar)});
  meat.keeps_frozen = 90;
  model.goods.push_back(meat);
  const Solution solution = solved(model);
  EXPECT_EQ(solution.total, 8 * dollar);
  EXPECT_EQ(solution.goods[0].purchases[0].frozen, 600 * unit);
}

TEST(Solve, DoesNotServeAFreshDemandFromTheFreezer) {
  Model model = one_shop(20, {0, 11});
  Good meat = good(2, {need(1, 400), fresh(12, 600)}, {pack(0, 1000, 8 * dollar)});
  meat.keeps_frozen = 90;
  model.goods.push_back(meat);
  const Solution solution = solved(model);
  EXPECT_EQ(solution.total, 16 * dollar);
}

TEST(Solve, KeepsToTheLongestAgeOfADemand) {
  Model model = one_shop(20, {0, 5, 9});
  model.stops[2].cost = 3 * dollar;
  Demand salad = need(10, 100);
  salad.longest_age = 2;
  model.goods.push_back(good(14, {need(6, 100), salad}, {pack(0, 200, 2 * dollar)}));
  const Solution solution = solved(model);
  // Day 9 serves the salad; what day 6 needs is bought on day 0 or 5.
  EXPECT_EQ(solution.total, 7 * dollar);
}

TEST(Solve, OpensANewPackWhenTheOpenedOneIsNoLongerGood) {
  Model model = one_shop(30, {0});
  Good sauce = good(365, {need(1, 100), need(2, 100), need(20, 100)}, {pack(0, 400, dollar)});
  model.goods.push_back(sauce);
  EXPECT_EQ(solved(model).total, dollar);
  model.goods[0].keeps_opened = 5;
  model.goods[0].waste = dollar;
  const Solution solution = solved(model);
  EXPECT_EQ(solution.goods[0].purchases[0].packs, 2);
  // 200 are thrown away on day 7, six days after the first use, 300 on day 26.
  ASSERT_EQ(solution.goods[0].wastes.size(), 2U);
  EXPECT_EQ(solution.goods[0].wastes[0].amount, 200 * unit);
  EXPECT_EQ(solution.goods[0].wastes[0].day, 7);
  EXPECT_EQ(solution.goods[0].wastes[1].amount, 300 * unit);
  EXPECT_EQ(solution.goods[0].wastes[1].day, 26);
}

TEST(Solve, OpensTheDaysPacksInTheOrderThatWastesLeast) {
  Model model = one_shop(30, {0});
  Good cans = good(365, {need(1, 100), need(20, 400)}, {});
  cans.offers = {pack(0, 400, 3 * dollar), pack(0, 100, dollar)};
  cans.keeps_opened = 3;
  model.goods.push_back(cans);
  EXPECT_EQ(solved(model).total, 4 * dollar);
}

TEST(Solve, PrefersLeftoversThatKeepToCheaperOnesThatRot) {
  Model model = one_shop(10, {0});
  Good flour = good(365, {need(3, 600)}, {pack(0, 1000, 2 * dollar), pack(0, 600, 19'000)});
  flour.salvage = dollar; // a kilogram
  flour.salvage_cap = 500 * unit;
  flour.salvage_days = 7;
  model.goods.push_back(flour);
  // 400 g left are worth 0.40: the big pack costs 1.60.
  EXPECT_EQ(solved(model).total, 16'000);
  model.goods[0].keeps_cool = 12; // not good a week after the plan
  model.goods[0].waste = dollar;
  EXPECT_EQ(solved(model).total, 19'000);
}

TEST(Solve, LimitsWhatIsKeptToItsCap) {
  Model model = one_shop(10, {0});
  Good flour = good(365, {need(3, 100)}, {pack(0, 1000, 2 * dollar)});
  flour.salvage = dollar;
  flour.salvage_cap = 500 * unit;
  model.goods.push_back(flour);
  const Solution solution = solved(model);
  EXPECT_EQ(solution.total, 15'000);
  EXPECT_EQ(solution.goods[0].kept, 900 * unit);
  EXPECT_EQ(solution.goods[0].salvaged, 500 * unit);
}

TEST(Solve, TakesTwoForLess) {
  Model model = one_shop(10, {0});
  Offer offer = pack(0, 500, 3 * dollar);
  offer.cost.table = {3 * dollar, 5 * dollar, 8 * dollar, 10 * dollar};
  model.goods.push_back(good(30, {need(3, 900)}, {offer, pack(0, 900, 52'000)}));
  EXPECT_EQ(solved(model).total, 5 * dollar);
}

TEST(Solve, WeighsToTheSmallestStep) {
  Model model = one_shop(10, {0});
  Offer offer = pack(0, 50, 1000);
  offer.by_weight = true;
  model.goods.push_back(good(30, {need(3, 730)}, {offer}));
  const Solution solution = solved(model);
  EXPECT_EQ(solution.goods[0].purchases[0].packs, 15);
  EXPECT_EQ(solution.total, 15'000);
}

TEST(Solve, KeepsToTheLimitPerVisit) {
  Model model = one_shop(10, {0, 2});
  Offer offer = pack(0, 100, dollar);
  offer.cost.limit = 3;
  model.goods.push_back(good(30, {need(3, 500)}, {offer}));
  const Solution solution = solved(model);
  EXPECT_EQ(solution.stops.size(), 2U);
  EXPECT_EQ(solution.total, 5 * dollar);
}

TEST(Solve, BuysOnlyOnTheDaysOfASale) {
  Model model = one_shop(20, {0, 7});
  Offer sale = pack(0, 100, 5000);
  sale.last_day = 6;
  model.goods.push_back(good(10, {need(9, 100), need(15, 100)}, {pack(0, 100, dollar), sale}));
  EXPECT_EQ(solved(model).total, 15'000);
}

TEST(Solve, DropsAStopThatDoesNotPay) {
  Model model = one_shop(10, {0});
  model.shops.resize(2);
  model.stops.push_back({0, 1, 2 * dollar, false});
  model.goods.push_back(good(30, {need(3, 100)}, {pack(0, 100, 3 * dollar), pack(1, 100, 15'000)}));
  EXPECT_EQ(solved(model).total, 3 * dollar);
  model.goods.push_back(model.goods[0]);
  EXPECT_EQ(solved(model).total, 5 * dollar);
  EXPECT_EQ(solved(model).stops, std::vector<StopId>{1});
}

TEST(Solve, MakesAStopThatIsAlwaysMade) {
  Model model = one_shop(10, {0, 5});
  model.stops[1].always = true;
  model.stops[1].cost = 4 * dollar;
  model.goods.push_back(good(30, {need(3, 100)}, {pack(0, 100, dollar)}));
  const Solution solution = solved(model);
  EXPECT_EQ(solution.total, 5 * dollar);
  EXPECT_EQ(solution.stops, (std::vector<StopId>{0, 1}));
}

TEST(Solve, BreaksTiesByFewerStopsThenFewerPacks) {
  Model model = one_shop(10, {0, 1});
  model.goods.push_back(
      good(30, {need(3, 400), need(4, 400)}, {pack(0, 200, dollar), pack(0, 400, 2 * dollar)}));
  const Solution solution = solved(model);
  EXPECT_EQ(solution.stops.size(), 1U);
  ASSERT_EQ(solution.goods[0].purchases.size(), 1U);
  EXPECT_EQ(solution.goods[0].purchases[0].offer, 1U);
}

TEST(Solve, UsesTheOlderFoodFirst) {
  Model model = one_shop(20, {0, 5});
  Offer early = pack(0, 300, dollar);
  Offer late = pack(0, 300, dollar);
  early.last_day = 0;
  late.first_day = 5;
  early.cost.limit = late.cost.limit = 1;
  model.goods.push_back(good(30, {need(1, 200), need(6, 200)}, {early, late}));
  const Solution solution = solved(model);
  const std::vector<Serving>& servings = solution.goods[0].servings;
  ASSERT_EQ(servings.size(), 3U);
  EXPECT_EQ(servings[1].purchase, 0U);
  EXPECT_EQ(servings[1].amount, 100 * unit);
  EXPECT_EQ(servings[2].purchase, 1U);
}

TEST(Solve, HasNothingToDoWithoutDemands) {
  Model model = one_shop(5, {0});
  EXPECT_EQ(solved(model).total, 0);
  model.goods.push_back(good(3, {}, {}));
  EXPECT_EQ(solved(model).total, 0);
}

TEST(Solve, SaysWhatItHasProvenWhenTheNodesRunOut) {
  Model model = one_shop(10, {0});
  model.goods.push_back(good(30, {need(3, 100)}, {pack(0, 100, dollar)}));
  Options options;
  options.nodes = 0;
  const Solution solution = solve(model, options);
  EXPECT_EQ(solution.status == Status::feasible || solution.status == Status::optimal, true);
  EXPECT_LE(solution.bound, solution.total);
  EXPECT_EQ(check(model, solution), std::vector<std::string>{});
}

TEST(Solve, RefusesAModelThatIsOutOfRange) {
  Model model = one_shop(10, {0});
  model.goods.push_back(good(30, {need(11, 100)}, {}));
  EXPECT_THROW(solve(model), std::invalid_argument);
  model.goods[0].demands = {need(3, 0)};
  EXPECT_THROW(solve(model), std::invalid_argument);
  model.goods[0].demands = {need(3, 1)};
  model.goods[0].offers = {pack(7, 100, 1)};
  EXPECT_THROW(solve(model), std::invalid_argument);
}

} // namespace
} // namespace manciple::purchase
