#include "purchase/small_stops.hpp"

#include "house.hpp"

namespace manciple::purchase {
namespace {

// Beef for 100.00 at the corner; an onion for 0.50 at a stop that costs 2.00.
std::string said_of_a_small_stop(const std::string& corner) {
  House house;
  house.household("a stop costs: 2.00\n");
  house.write("plans/stores/corner.yaml", "shop: Corner\nprices: {" + corner + "}\n");
  house.write("plans/stores/far.yaml", "shop: Far\nprices: {onion: 1 lb bag 0.50}\n");
  house.recipe("stew", "20 lb ground beef, 1 lb onion");
  house.plan_with_trip("2027-03-02: {dinner: stew}", "[corner, far]");
  (void)house.good();
  return house.said();
}

TEST(SmallStops, OfASmallStopItIsSaidWhatLeavingItOutWouldMean) {
  const std::string dearer = said_of_a_small_stop("ground beef: 5.00/lb, onion: 1 lb bag 4.00");
  EXPECT_NE(dearer.find("Far on Mon 1 Mar is a stop for $0.50 of onion, less than the $2.00"),
            std::string::npos)
      << dearer;
  // 4.00 for 0.50 and the 2.00 of the stop.
  EXPECT_NE(dearer.find("the list would cost $1.50 more in all"), std::string::npos) << dearer;
  const std::string only = said_of_a_small_stop("ground beef: 5.00/lb");
  EXPECT_NE(only.find("no other stop has all of that in time"), std::string::npos) << only;
}

// Two stops for which 0.50 is paid, at 2.00 each, and nothing else is sold anywhere.
class SmallStopTest : public testing::Test {
protected:
  SmallStopTest() {
    kitchen.plan.emplace().trips.resize(1);
    kitchen.shops.emplace_back().name = "Corner";
    for (std::size_t v = 0; v < 2; ++v) {
      StopMade& stop = shopping.visits.emplace_back();
      stop.goods = 50;
      stop.stop_cost = 200;
      shopping.lines.emplace_back();
      shopping.lines.back().visit = v;
      shopping.lines.back().cost = 50;
      shopping.lines.back().food = *kitchen.foods.find("onion");
      shopping.solution.stops.emplace_back(v);
      model().stops.push_back({0, buying::ShopId(0), 20'000});
    }
    model().shops.resize(1);
    shopping.visits[1].goods = 200;
  }
  buying::Model& model() { return shopping.lowered.model; }
  std::size_t told() {
    text::Diagnostics diagnostics;
    tell_small_stops(kitchen, shopping, diagnostics, {});
    return diagnostics.all().size();
  }

  kitchen::Kitchen kitchen;
  Shopping shopping;
};

TEST_F(SmallStopTest, IsOneForLessThanItCosts) {
  EXPECT_EQ(told(), 1U);
  shopping.visits[1].goods = 199;
  EXPECT_EQ(told(), 2U);
}

TEST_F(SmallStopTest, IsNotTheOnlyOneNorOneThatIsAlwaysMade) {
  model().stops.front().always = true;
  EXPECT_EQ(told(), 0U);
  model().stops.front().always = false;
  shopping.visits.pop_back();
  EXPECT_EQ(told(), 0U);
}

TEST_F(SmallStopTest, IsNotOneOfWhichAPriceIsUnknown) {
  shopping.lines.front().cost.reset();
  EXPECT_EQ(told(), 0U);
}

} // namespace
} // namespace manciple::purchase
