#include "purchase/shortfall.hpp"

#include "house.hpp"

namespace manciple::purchase {
namespace {

constexpr text::Date the_first{std::chrono::year(2027) / 3 / 1};
constexpr buying::Amount a_pound = 453'592; // in thousandths of a gram

// A pound of ground beef that is missing on the evening of the 4th. The corner shop, which sells it
// on the 1st and on the 6th, says that it keeps for ten days.
class ShortfallTest : public testing::Test {
protected:
  ShortfallTest() {
    kitchen.plan.emplace();
    kitchen.plan->extra.resize(1);
    kitchen.shops.emplace_back().name = "Corner";
    model().shops.resize(1);
    shopping.lowered.foods.push_back(*kitchen.foods.find("ground beef"));
    shopping.lowered.uses.resize(1);
    shopping.solution.items.resize(1);
    model().items.resize(1);
    item().missing = 20;
    item().lacking = 2;
    item().offers.emplace_back().life.cool = 10;
    stop(0);
    stop(5);
    demand(3);
  }
  buying::Model& model() { return shopping.lowered.model; }
  buying::Item& item() { return model().items.front(); }
  buying::Offer& offer() { return item().offers.front(); }
  void stop(int day) {
    shopping.lowered.stops.emplace_back(kitchen.plan->trips.size(), 0);
    kitchen.plan->trips.push_back(
        {the_first + std::chrono::days(day), {{kitchen::ShopId{0}, false}}, 720, {}, {}});
    model().stops.push_back({day * buying::minutes_per_day + 720, buying::ShopId(0)});
  }
  void demand(int day, buying::Amount missing = a_pound, buying::Amount lacking = 0) {
    shopping.solution.items.front().shorts.push_back(
        {buying::DemandId(item().demands.size()), lacking, missing});
    item().demands.push_back({day * buying::minutes_per_day + 1110, day, missing + lacking});
    shopping.lowered.uses.front().push_back({resolved.uses.size()});
    resolve::Use& use = resolved.uses.emplace_back();
    use.date = the_first + std::chrono::days(day);
    use.reason = resolve::OfExtra{0};
  }
  // The warning, as "P001: what is wrong"; empty where there is none.
  [[nodiscard]] std::string said() const {
    text::Diagnostics diagnostics;
    explain_shortfalls(kitchen, resolved, shopping, diagnostics);
    if (diagnostics.all().empty()) {
      return {};
    }
    EXPECT_EQ(diagnostics.all().size(), 1U);
    const text::Diagnostic& one = diagnostics.all().front();
    return std::string(one.code.number) + ": " + one.what + "; " + one.fix;
  }
  [[nodiscard]] std::string code() const { return said().substr(0, 4); }

  kitchen::Kitchen kitchen;
  resolve::Resolved resolved;
  Shopping shopping;
};

TEST_F(ShortfallTest, HasNoOfferOrNoTripInTime) {
  model().stops.front().shop = buying::ShopId(1); // which does not sell it
  EXPECT_EQ(code(), "P002");
  EXPECT_NE(said().find("the first stop that sells it is Corner on Sat 6 Mar"), std::string::npos)
      << said();
  item().offers.clear();
  EXPECT_EQ(code(), "P001");
}

TEST_F(ShortfallTest, DoesNotKeepUntilItsDay) {
  offer().life.cool = 3; // the 1st, and three days
  EXPECT_EQ(code(), "P006");
  offer().life.cool = 2;
  EXPECT_EQ(code(), "P003");
  EXPECT_NE(said().find("bought at Corner on Mon 1 Mar, it is good for 2 days"), std::string::npos)
      << said();
}

TEST_F(ShortfallTest, MustBeFreshAndWouldKeepOnlyFrozen) {
  offer().life.cool = 2;
  offer().life.frozen = 120;
  EXPECT_EQ(code(), "P006");
  item().demands.front().takes_frozen = false;
  EXPECT_EQ(code(), "P004");
}

TEST_F(ShortfallTest, IsOfShopsThatSellTooLittleOrOfTooLittleRoom) {
  EXPECT_EQ(code(), "P006");
  offer().limit = 1;
  EXPECT_EQ(code(), "P005");
}

TEST_F(ShortfallTest, OfAGarnishIsWorthNoStop) {
  item().missing = item().lacking;
  EXPECT_EQ(code(), "P012");
}

TEST_F(ShortfallTest, IsToldOfTheFirstUseWithAllThatIsToBeFound) {
  demand(2);
  EXPECT_NE(said().find("by Wed 3 Mar"), std::string::npos) << said();
  EXPECT_NE(said().find("still to find: 2 lb"), std::string::npos) << said();
}

TEST_F(ShortfallTest, IsNotWhatADishCanDoWithout) {
  shopping.solution.items.front().shorts.front() = {buying::DemandId(0), a_pound / 10, 0};
  EXPECT_EQ(said(), "");
}

void plan_what_nobody_sells(House& house) {
  house.write("plans/stores/corner.yaml", "shop: Corner\nwalk: [produce]\nprices: {}\n");
  house.recipe("stew", "1 lb salmon fillet");
  house.plan("2027-03-02: {dinner: stew}");
}

TEST(Shortfalls, WhatCannotBeMetIsSaidAtItsLine) {
  House house;
  plan_what_nobody_sells(house);
  EXPECT_EQ(house.good().shopping.shortfalls.size(), 1U);
  EXPECT_NE(house.said().find("recipes/stew.yaml:3:15: warning: "), std::string::npos)
      << house.said();
}

// Not only the nine tenths that would do.
TEST(Shortfalls, AllThatTheDishAsksForIsToBeFound) {
  House house;
  plan_what_nobody_sells(house);
  const auto compiled = house.good();
  EXPECT_EQ(compiled.shopping.shortfalls.at(0).to_find(), compiled.resolved.uses.at(0).amount);
  EXPECT_NE(house.said().find("still to find: 1 lb by"), std::string::npos) << house.said();
}

} // namespace
} // namespace manciple::purchase
