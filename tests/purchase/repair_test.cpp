#include <gtest/gtest.h>

#include "purchase/repair.hpp"

namespace manciple::purchase {
namespace {

constexpr Money dollar = 10'000;

/// A plan that costs, and spends at two stops.
Plan spends(Money cost, Money first, Money second) {
  return {{fine(cost), 1}, fine(cost), {}, {first, second}, {}};
}
/// The same thing at one stop or at the other.
PlanSet either(Money cost) {
  PlanSet set;
  set.plans = {spends(cost, cost, 0), spends(cost, 0, cost)};
  return set;
}
Joint reach(Money first, Money second) {
  Joint joint;
  joint.least_spend = {first, second};
  return joint;
}
std::vector<Money> spent(const std::vector<PlanSet>& goods, const std::vector<std::size_t>& plan) {
  std::vector<Money> sum(2, 0);
  for (GoodId good = 0; good < goods.size(); ++good)
    for (std::size_t row = 0; row < 2; ++row)
      sum[row] += goods[good].plans[plan[good]].spend[row];
  return sum;
}

TEST(Repair, MovesAPurchaseToTheStopThatNeedsIt) {
  const std::vector<PlanSet> goods{either(4 * dollar), either(6 * dollar)};
  const auto plan = repair(goods, reach(4 * dollar, 6 * dollar), {0, 0});
  EXPECT_EQ(spent(goods, plan), (std::vector<Money>{4 * dollar, 6 * dollar}));
}

TEST(Repair, ExchangesTwoThatNoSingleStepWouldImprove) {
  const std::vector<PlanSet> goods{either(5 * dollar), either(4 * dollar), either(dollar)};
  // At first 5 and 5; what is wanted is 4 and 6: two goods have to change places.
  const auto plan = repair(goods, reach(4 * dollar, 6 * dollar), {0, 1, 1});
  EXPECT_EQ(spent(goods, plan), (std::vector<Money>{4 * dollar, 6 * dollar}));
}

TEST(Repair, TakesTheCheaperPlanWhereNothingIsShort) {
  PlanSet set;
  set.plans = {spends(2 * dollar, dollar, 0), spends(3 * dollar, dollar, 0)};
  EXPECT_EQ(repair({set}, reach(dollar, 0), {1}), std::vector<std::size_t>{0});
}

} // namespace
} // namespace manciple::purchase
