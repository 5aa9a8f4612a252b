#include <gtest/gtest.h>

#include <numeric>

#include "purchase/balance.hpp"
#include "purchase/dice.hpp"

namespace manciple::purchase {
namespace {

constexpr Money dollar = 10'000;

/// A plan that costs, and spends by stop.
Plan spends(Money cost, std::vector<Money> spend) {
  return {{fine(cost), 1}, fine(cost), {}, std::move(spend), {}};
}
/// The same thing at any of the stops.
PlanSet anywhere(Money cost, std::size_t stops) {
  PlanSet set;
  for (std::size_t stop = 0; stop < stops; ++stop) {
    std::vector<Money> spend(stops, 0);
    spend[stop] = cost;
    set.plans.push_back(spends(cost, spend));
  }
  return set;
}
Joint reach(std::vector<Money> least) {
  Joint joint;
  joint.least_spend = std::move(least);
  return joint;
}
std::vector<std::size_t> all_rows(const Joint& joint) {
  std::vector<std::size_t> rows(joint.least_spend.size());
  std::iota(rows.begin(), rows.end(), std::size_t{0});
  return rows;
}
std::vector<Money> spent(const std::vector<PlanSet>& goods, const std::vector<std::size_t>& plan) {
  std::vector<Money> sum(goods[0].plans[0].spend.size(), 0);
  for (GoodId good = 0; good < goods.size(); ++good)
    for (std::size_t row = 0; row < sum.size(); ++row)
      sum[row] += goods[good].plans[plan[good]].spend[row];
  return sum;
}

TEST(Balance, ExchangesWhatNoSingleStepWouldImprove) {
  const std::vector<PlanSet> goods{anywhere(5 * dollar, 2), anywhere(4 * dollar, 2),
                                   anywhere(dollar, 2)};
  const Joint joint = reach({4 * dollar, 6 * dollar});
  // At first 5 and 5.
  const auto plan = balance(goods, joint, all_rows(joint), {0, 1, 1});
  EXPECT_EQ(spent(goods, plan), (std::vector<Money>{4 * dollar, 6 * dollar}));
}

TEST(Balance, SharesOutToTheCent) {
  for (std::uint64_t seed = 1; seed <= 50; ++seed) {
    SCOPED_TRACE(seed);
    Dice dice(seed);
    std::vector<PlanSet> goods;
    Money sum = 0;
    for (int good = 0; good < 80; ++good) {
      goods.push_back(anywhere(100 * dice.pick(50, 900), 4));
      sum += goods.back().plans[0].spend[0];
    }
    // All is bought at the first stop; in the end there is less than a cent a stop to spare.
    const Joint joint = reach(std::vector<Money>(4, sum / 400 * 100));
    const auto plan = balance(goods, joint, all_rows(joint), std::vector<std::size_t>(80, 0));
    for (const Money row : spent(goods, plan))
      EXPECT_GE(row, joint.least_spend[0]);
  }
}

TEST(Balance, TakesNothingThatCostsMoreOrNeedsMoreRoom) {
  PlanSet dearer;
  dearer.plans = {spends(2 * dollar, {2 * dollar, 0}), spends(3 * dollar, {0, 3 * dollar})};
  PlanSet larger = anywhere(2 * dollar, 2);
  dearer.plans[0].room = dearer.plans[1].room = larger.plans[0].room = {1};
  larger.plans[1].room = {2};
  Joint joint = reach({0, 2 * dollar});
  joint.room = {10};
  const std::vector<std::size_t> first{0, 0};
  EXPECT_EQ(balance({dearer, larger}, joint, all_rows(joint), first), first);
}

TEST(Balance, LeavesOtherStopsWhatTheyHave) {
  const std::vector<PlanSet> goods{anywhere(2 * dollar, 3), anywhere(2 * dollar, 3)};
  const Joint joint = reach({2 * dollar, 2 * dollar, 0});
  // The second good stays at the third stop, which is not among those that are looked at.
  const auto plan = balance(goods, joint, {0, 1}, {0, 2});
  EXPECT_EQ(spent(goods, plan)[2], 2 * dollar);
}

} // namespace
} // namespace manciple::purchase
