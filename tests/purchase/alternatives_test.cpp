#include <gtest/gtest.h>

#include "purchase/build.hpp"
#include "purchase/small_model.hpp"

namespace manciple::purchase {
namespace {

Model two_shops() {
  Model model = one_shop(9, {0});
  model.shops.resize(2);
  model.stops.push_back({0, 1, 2 * dollar, false});
  model.goods.push_back(good(
      20, {need(2, 300)}, {pack(0, 300, 3 * dollar), pack(0, 100, 15'000), pack(1, 300, dollar)}));
  return model;
}

TEST(Alternatives, SayWhatEachOfferWouldCost) {
  Model model = two_shops();
  model.goods[0].offers[2].cost.unit = 2 * dollar;
  const Solution solution = solve(model);
  ASSERT_EQ(solution.total, 3 * dollar);
  const Alternatives found = alternatives(model, solution, 0);
  ASSERT_EQ(found.only.size(), 3U);
  EXPECT_EQ(found.only[0].free_stops, 3 * dollar);
  EXPECT_EQ(found.only[1].free_stops, 45'000);
  EXPECT_EQ(found.only[2].free_stops, 4 * dollar);
  EXPECT_EQ(found.only[2].fixed_stops, std::nullopt); // its shop is not visited
}

TEST(Alternatives, SayWhatOnePackElsewhereWouldCost) {
  const Model model = two_shops();
  Model dear = model;
  dear.goods[0].offers[2].cost.unit = 2 * dollar;
  const Alternatives found = alternatives(dear, solve(dear), 0);
  ASSERT_EQ(found.also.size(), 2U);
  EXPECT_EQ(found.also[0].offer, 1U);
  EXPECT_EQ(found.also[0].free_stops, 45'000);
  EXPECT_EQ(found.also[1].stop, StopId{1});
  EXPECT_EQ(found.also[1].free_stops, 4 * dollar);
  EXPECT_EQ(found.also[1].fixed_stops, 4 * dollar);
}

TEST(Alternatives, SayWhatToDoWhenTheShopHasNone) {
  const Model model = two_shops();
  const Solution solution = solve(model);
  const Alternatives found = alternatives(model, solution, 0);
  ASSERT_EQ(found.without.size(), 1U);
  EXPECT_EQ(found.without[0].free_stops.has_value(), true);
  EXPECT_GE(*found.without[0].free_stops, solution.total);
}

TEST(Alternatives, NeverBeatTheOptimum) {
  int counted = 0;
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    SCOPED_TRACE(seed);
    Dice dice(seed);
    const Model model = make_small(dice, Features{});
    const Solution solution = solve(model);
    if (solution.status != Status::optimal)
      continue;
    const Alternatives found = alternatives(model, solution, 0);
    for (const auto* list : {&found.only, &found.also, &found.without})
      for (const Alternative& alternative : *list) {
        ++counted;
        EXPECT_TRUE(alternative.proven);
        if (alternative.free_stops) {
          EXPECT_GE(*alternative.free_stops, solution.total);
        }
        if (alternative.fixed_stops) {
          EXPECT_TRUE(alternative.free_stops &&
                      *alternative.free_stops <= *alternative.fixed_stops);
        }
      }
  }
  EXPECT_GT(counted, 100);
}

} // namespace
} // namespace manciple::purchase
