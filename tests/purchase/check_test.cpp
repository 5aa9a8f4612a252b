#include <gtest/gtest.h>

#include <functional>

#include "purchase/build.hpp"
#include "purchase/check.hpp"

namespace manciple::purchase {
namespace {

/// Meat bought twice, partly frozen, partly left; and rice.
Model sample() {
  Model model = one_shop(20, {0, 8});
  model.shops[0].credit = dollar;
  Good meat = good(2, {need(1, 400), need(6, 300), fresh(9, 500)}, {pack(0, 400, 3 * dollar)});
  meat.keeps_frozen = 90;
  meat.cool_place = Place::fridge;
  meat.room_cool = meat.room_frozen = 1000;
  meat.waste = dollar;
  meat.salvage = dollar;
  meat.salvage_cap = 1000 * unit;
  model.goods.push_back(meat);
  model.goods.push_back(good(300, {need(3, 200)}, {pack(0, 1000, 2 * dollar)}));
  model.room[static_cast<std::size_t>(Place::freezer)].assign(21, 2'000'000);
  return model;
}

void expect_caught(const char* what, const std::function<void(Solution&)>& spoil) {
  const Model model = sample();
  Solution solution = solve(model);
  ASSERT_EQ(check(model, solution), std::vector<std::string>{});
  spoil(solution);
  EXPECT_FALSE(check(model, solution).empty()) << what;
}

TEST(Check, CatchesWhatIsWrong) {
  expect_caught("total", [](Solution& s) { s.total_fine += 1; });
  expect_caught("rounded total", [](Solution& s) { s.total += 1; });
  expect_caught("bound", [](Solution& s) { s.bound = s.total + 1; });
  expect_caught("paid", [](Solution& s) { s.paid -= 1; });
  expect_caught("credit", [](Solution& s) { s.credit[0] = 0; });
  expect_caught("off", [](Solution& s) { s.off[0] = 1; });
  expect_caught("stop not made", [](Solution& s) { s.stops.pop_back(); });
  expect_caught("packs", [](Solution& s) { s.goods[0].purchases[0].packs += 1; });
  expect_caught("cost", [](Solution& s) { s.goods[0].purchases[0].cost -= 1; });
  expect_caught("offer", [](Solution& s) { s.goods[0].purchases[0].offer = 5; });
  expect_caught("unserved", [](Solution& s) { s.goods[0].servings.pop_back(); });
  expect_caught("served too little", [](Solution& s) { s.goods[0].servings[0].amount -= 1; });
  expect_caught("frozen flag", [](Solution& s) {
    s.goods[0].servings[0].frozen = !s.goods[0].servings[0].frozen;
  });
  expect_caught("frozen amount", [](Solution& s) { s.goods[0].purchases[0].frozen += 1; });
  expect_caught("kept", [](Solution& s) {
    s.goods[1].purchases[0].kept -= 1;
    s.goods[1].kept -= 1;
  });
  expect_caught("salvage", [](Solution& s) {
    s.goods[0].salvage_value += 1;
    s.total_fine -= 1;
  });
  expect_caught("the fresh demand from the freezer", [](Solution& s) {
    for (Serving& serving : s.goods[0].servings)
      if (serving.demand == 2)
        serving.purchase = 0;
  });
}

TEST(Check, CatchesNewerFoodUsedBeforeOlder) {
  Model model = one_shop(20, {0, 5});
  Offer early = pack(0, 300, dollar);
  Offer late = pack(0, 300, dollar);
  early.last_day = 0;
  late.first_day = 5;
  early.cost.limit = late.cost.limit = 1;
  model.goods.push_back(good(30, {need(6, 200), need(8, 300)}, {early, late}));
  Solution solution = solve(model);
  ASSERT_EQ(check(model, solution), std::vector<std::string>{});
  // The same purchases, but the newer pack first.
  solution.goods[0].servings = {{1, 0, 200 * unit, false}, {0, 1, 300 * unit, false}};
  EXPECT_FALSE(check(model, solution).empty());
}

TEST(Check, CatchesAnOverfullFreezer) {
  const Model model = sample();
  Solution solution = solve(model);
  Model small = model;
  small.room[static_cast<std::size_t>(Place::freezer)].assign(21, 100'000);
  EXPECT_FALSE(check(small, solution).empty());
}

} // namespace
} // namespace manciple::purchase
