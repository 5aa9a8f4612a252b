#include "purchase/lower.hpp"

#include "house.hpp"

namespace manciple::purchase {
namespace {

constexpr text::Date monday{std::chrono::year(2027) / 3 / 1};

// Ten days with a trip at noon of the first to a shop that sells a kilogram of onions for 1.00; a
// stop is worth 1.50.
class LowerTest : public testing::Test {
protected:
  LowerTest() {
    onion = *kitchen.foods.find("onion");
    plan().from = plan().begins = monday;
    plan().until = monday + std::chrono::days(9);
    plan().extra.resize(1);
    plan().trips.push_back({monday, {{kitchen::ShopId{0}, false}}, 720, {}, {}});
    shop().offers.emplace_back();
    shop().offers.front().food = onion;
    shop().offers.front().size = 1000;
    shop().offers.front().price = 100;
  }
  kitchen::Plan& plan() { return kitchen.plan ? *kitchen.plan : kitchen.plan.emplace(); }
  kitchen::Shop& shop() {
    return kitchen.shops.empty() ? kitchen.shops.emplace_back() : kitchen.shops.front();
  }
  void use(const Rational& grams, int day) {
    resolve::Use& made = resolved.uses.emplace_back();
    made.food = onion;
    made.amount = grams;
    made.date = monday + std::chrono::days(day);
    made.clock = 1110;
    made.reason = resolve::OfExtra{0};
  }
  Lowered lowered() {
    text::Diagnostics diagnostics;
    Lowered out = lower(kitchen, resolved, diagnostics);
    EXPECT_EQ(diagnostics.errors(), 0U);
    EXPECT_EQ(out.model.items.size(), 1U);
    return out;
  }

  static constexpr buying::ItemId item{};
  kitchen::Kitchen kitchen;
  resolve::Resolved resolved;
  foods::FoodId onion{};
};

TEST_F(LowerTest, WhatIsNeededIsRoundedDownAndWhatAPackHoldsUp) {
  EXPECT_EQ(to_model_down({1, 3}), 333);
  EXPECT_EQ(to_model_up({1, 3}), 334);
  EXPECT_EQ(to_model_down(7), to_model_up(7));
  EXPECT_EQ(from_model(to_model_up({7, 2})), Rational(7, 2));
}

// Three thirds of a gram are a gram: the sums 333.3, 666.7 and 1000 are rounded, not the parts.
TEST_F(LowerTest, SumsAreRoundedSoThatNothingIsLostByTheEnd) {
  for (const int day : {1, 2, 3}) {
    use({1, 3}, day);
  }
  const Lowered out = lowered();
  std::vector<buying::Amount> amounts;
  for (const buying::Demand& demand : out.model.items[item].demands) {
    amounts.push_back(demand.amount);
  }
  EXPECT_EQ(amounts, (std::vector<buying::Amount>{333, 333, 334}));
}

TEST_F(LowerTest, UsesOfOneMomentAreOneDemand) {
  use(100, 1);
  use(200, 2);
  use(50, 1);
  use({1, 10'000}, 3); // too little to be a demand of its own
  const Lowered out = lowered();
  const auto& demands = out.model.items[item].demands;
  ASSERT_EQ(demands.size(), 2U);
  EXPECT_EQ(demands.front().amount, 150'000);
  EXPECT_EQ(demands.front().at, 1440 + 1110);
  using Uses = std::vector<std::size_t>;
  EXPECT_EQ(out.uses[item].front(), (Uses{0, 2}));
  EXPECT_EQ(out.uses[item].back(), (Uses{1, 3}));
}

TEST_F(LowerTest, DaysAreCountedFromATripBeforeThePlan) {
  use(100, 1);
  plan().trips.front().date = monday - std::chrono::days(2);
  const Lowered out = lowered();
  EXPECT_EQ(out.first, monday - std::chrono::days(2));
  EXPECT_EQ(out.model.last_day, 11);
  EXPECT_EQ(out.model.stops.front().at, 720);
  EXPECT_EQ(out.model.items[item].demands.front().day, 3);
}

// In hundredths of a cent for 1000 g, of which the usual price is 100 cents: a half for what is
// left, a quarter for what is thrown away, twice for what lacks, 20 times for what is missing, and
// for the first gram of that 20 packs and the stop.
TEST_F(LowerTest, WhatIsLeftOrMissingCountsByTheUsualPrice) {
  use(100, 1);
  const buying::Item of = lowered().model.items[item];
  EXPECT_EQ(of.salvage, 5'000);
  EXPECT_EQ(of.waste, 2'500);
  EXPECT_EQ(of.lacking, 20'000);
  EXPECT_EQ(of.missing, 200'000);
  EXPECT_EQ(of.missing_once, 20 * 10'000 + 15'000);
}

TEST_F(LowerTest, APriceCountsWithItsTaxAndWithoutWhatComesBack) {
  use(100, 1);
  shop().taxes = {{foods::Department::produce, {1, 10}}};
  shop().cash_back = Rational(1, 20);
  const buying::Offer of = lowered().model.items[item].offers.front();
  EXPECT_EQ(of.till.packs.each, 11'000); // 1.10
  EXPECT_EQ(of.cost.each, 10'500);       // 5 cents of 1.00 come back
}

TEST(Lower, SumsTooLargeForHundredthsOfACentAreReckonedInCents) {
  // 20 times 12705.41 / 2 for each of four pieces, and 20 times the pack; no trip is in time.
  House house;
  house.write("recipes/foods.yaml", "dorb: {department: household}\n");
  house.write("plans/stores/corner.yaml", "shop: Corner\nprices: {dorb: 2 pack 12705.41}\n");
  house.write("plans/p.yaml", "plan: P\nfrom: 2027-03-01\nuntil: 2027-03-03\n"
                              "meals: {2027-03-03: {dinner: 4 dorb}}\ntrips: []\n");
  const auto compiled = house.good();
  EXPECT_EQ(compiled.shopping.lowered.per_cent, 1);
  EXPECT_EQ(compiled.shopping.account.missing, Rational(50'821'640 + 25'410'820));
}

TEST(Lower, APriceBeyondWhatIsSolvedIsRefusedAtItsLine) {
  // In cents 20 x 500,000.00 a piece x 1000 is the most that a rate may be.
  House house;
  house.write("recipes/foods.yaml", "dorb: {department: household}\n");
  house.plan("2027-03-02: {dinner: 2 dorb}");
  house.write("plans/stores/corner.yaml", "shop: Corner\nprices: {dorb: 2 pack 1000000.00}\n");
  EXPECT_TRUE(house.compile()) << house.said();
  house.write("plans/stores/corner.yaml", "shop: Corner\nprices:\n  dorb: 2 pack 1000000.02\n");
  EXPECT_FALSE(house.compile()) << house.said();
  EXPECT_NE(house.said().find("corner.yaml:3:9: error: this price is too large to solve exactly"),
            std::string::npos)
      << house.said();
}

} // namespace
} // namespace manciple::purchase
