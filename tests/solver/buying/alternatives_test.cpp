#include <gtest/gtest.h>

#include "buying/solve.hpp"
#include "solver/buying/build.hpp"
#include "solver/buying/small_model.hpp"

namespace manciple::buying {
namespace {

const ItemId only_item{0};

Model two_shops(Money at_the_second = dollar) {
  Model model = one_shop(9, {0});
  model.shops.resize(2);
  model.stops.push_back({noon(0), ShopId(1), 2 * dollar, false});
  model.items.push_back(item({need(2, 300)}, {pack(0, 300, 3 * dollar), pack(0, 100, 15'000),
                                              pack(1, 300, at_the_second)}));
  return model;
}

TEST(Alternatives, SayWhatEachOfferWouldCost) {
  const Model model = two_shops(2 * dollar);
  const Solution solution = solve(model);
  ASSERT_EQ(solution.total, 3 * dollar);
  const Alternatives found = alternatives(model, solution, only_item);
  ASSERT_EQ(found.only.size(), 3U);
  EXPECT_EQ(found.only[0].free_stops, 3 * dollar);
  EXPECT_EQ(found.only[1].free_stops, 45'000);
  EXPECT_EQ(found.only[2].free_stops, 4 * dollar);
}

TEST(Alternatives, SayWhatOnePackElsewhereWouldCost) {
  const Model model = two_shops(2 * dollar);
  const Alternatives found = alternatives(model, solve(model), only_item);
  ASSERT_EQ(found.also.size(), 2U);
  EXPECT_EQ(found.also[0].offer, OfferId(1));
  EXPECT_EQ(found.also[0].free_stops, 45'000);
  EXPECT_EQ(found.also[1].stop, StopId(1));
  EXPECT_EQ(found.also[1].free_stops, 4 * dollar);
  EXPECT_EQ(found.also[1].fixed_stops, 4 * dollar);
}

TEST(Alternatives, SayWhatToDoWhenTheShopHasNone) {
  const Model model = two_shops();
  const Solution solution = solve(model);
  const Alternatives found = alternatives(model, solution, only_item);
  ASSERT_EQ(found.without.size(), 1U);
  ASSERT_TRUE(found.without[0].free_stops.has_value());
  EXPECT_GE(*found.without[0].free_stops, solution.total);
}

TEST(Alternatives, NeverBeatTheBestList) {
  int counted = 0;
  for (std::uint64_t seed = 1; seed <= 40; ++seed) {
    SCOPED_TRACE(seed);
    Dice dice(seed);
    const Model model = make_small(dice, Features{});
    const Solution solution = solve(model);
    ASSERT_EQ(solution.status, Status::optimal);
    const Alternatives found = alternatives(model, solution, only_item);
    for (const auto* list : {&found.only, &found.also, &found.without}) {
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
  }
  EXPECT_GT(counted, 60);
}

} // namespace
} // namespace manciple::buying
