// A month's sums, worked by hand.
#include "house.hpp"

#include "review/review.hpp"

namespace manciple {
namespace {

using measure::Rational;

class ReviewTest : public testing::Test {
protected:
  review::Review of_plan() {
    house.sources = {};
    house.diagnostics = {};
    done = cli::reviewed(house.root() + "/plans/p.yaml", house.sources, house.diagnostics).done;
    EXPECT_TRUE(done) << house.said();
    return done ? review::review(done->kitchen, done->resolved, done->past) : review::Review{};
  }

  House house;
  std::optional<cli::Done> done;
};

TEST_F(ReviewTest, WhatWasPaidIsWhatWasEatenThrownAwayAndIsThere) {
  house.recipe("stew", "1 lb onions, 1 lb ground beef");
  house.plan("2027-03-02: {dinner: stew}, 2027-03-09: {dinner: {dish: stew, eaten by: [Ada]}}",
             "changes: {2027-03-04: {thrown away: 1/2 lb onions}}\nas of: 2027-03-10\n");
  house.write(
      "plans/receipts/2027-03-01-corner.yaml",
      "shop: corner\nlines: [\"3 lb onions, 3.00\", \"1 lb ground beef, 5.00\"]\ntax: 0.08\n");
  house.write("plans/receipts/2027-03-06-corner.yaml",
              "shop: corner\nlines: [\"1 lb ground beef, 6.00\", \"1 lb onions, 1.50\"]\n");
  const review::Review review = of_plan();
  EXPECT_EQ(review.paid, 808 + 750);
  EXPECT_EQ(review.by_shop.begin()->second, std::pair(2, kitchen::Cents{1558}));
  EXPECT_EQ(review.by_department.at(foods::Department::meat), 1100);
  // Two pounds of onions at 1.00 and the beef; half a stew on the 9th, for one of two.
  EXPECT_EQ(review.by_meal.at("dinner"), Rational(100 + 500 + 50 + 300));
  EXPECT_EQ(review.by_person.at("Ada"), Rational(300 + 350));
  EXPECT_EQ(review.by_person.at("Ben"), Rational(300));
  EXPECT_EQ(review.thrown_away, 50);
  EXPECT_EQ(review.still_there, 300 + 100 + 150); // half the beef, a pound of each onions
  const auto& prices = review.prices;
  ASSERT_EQ(prices.size(), 2U);
  EXPECT_EQ(done->kitchen.food(prices[1].food).name, "onion");
  EXPECT_EQ(prices[1].lowest, 0U);
  const std::string words = review::in_words(done->kitchen, review);
  EXPECT_NE(words.find("onion: usually 1.00/lb; lowest 1.00/lb (3 lb for 3.00, Corner Mon 1 Mar)"),
            std::string::npos)
      << words;
}

TEST_F(ReviewTest, AStapleIsUsedAsFastAsTwoCountsSay) {
  house.plan("2027-03-30: {dinner: 1 lb onions}", "staples: [7 lb onions per week]\n");
  house.write("plans/on-hand.yaml", "date: 2027-03-01\non hand: [40 lb onions]\n");
  // Three weeks: 21 lb by the plan, so 19 should be there; there are 13: two pounds more a week.
  house.write("plans/on-hand/2027-03-22.yaml", "on hand: [13 lb onions]\n");
  const review::Review review = of_plan();
  ASSERT_EQ(review.rates.size(), 1U);
  EXPECT_EQ(review.weeks, 3);
  EXPECT_EQ(review.rates[0].planned, Rational(7) * measure::decimal("453.59237"));
  EXPECT_EQ(review.rates[0].used, Rational(9) * measure::decimal("453.59237"));
  ASSERT_EQ(review.differences.size(), 1U);
  EXPECT_EQ(review::in_words(done->kitchen, review.differences[0]),
            "expected 19 lb, counted 13 lb: 6 lb less");
}

TEST_F(ReviewTest, WhatWasThrownAwayIsNoUseOfAStaple) {
  house.plan("2027-03-30: {dinner: 1 lb onions}", "staples: [7 lb onions per week]\n");
  house.write("plans/on-hand.yaml", "date: 2027-03-01\non hand: [40 lb onions]\n");
  house.write("plans/on-hand/2027-03-22.yaml",
              "on hand: [13 lb onions]\nthrown away: [2 lb onions]\neaten: [1 lb onions]\n");
  const review::Review review = of_plan();
  ASSERT_EQ(review.rates.size(), 1U);
  // 21 lb by the plan, a pound besides and three pounds that nobody knows of.
  EXPECT_EQ(review.rates[0].used * 3, Rational(25) * measure::decimal("453.59237"));
  ASSERT_EQ(review.differences.size(), 1U);
  EXPECT_EQ(review::in_words(done->kitchen, review.differences[0]),
            "expected 19 lb, counted 13 lb: 6 lb less (2 lb thrown away, 1 lb eaten, 3 lb "
            "missing)");
}

TEST_F(ReviewTest, AShopSavesWhatTheSameWouldCostAtTheOthers) {
  house.recipe("stew", "2 lb onions, 1 lb carrots");
  house.write("plans/stores/corner.yaml",
              "prices: {onions: 3 lb bag 4.00, carrots: 2.00/lb, butter: 1 lb pack 5.00}\n");
  house.write("plans/stores/depot.yaml",
              "a stop costs: 3.00\nmembership: 36.50\ncash back: 10 %\n"
              "prices: {onions: {offer: 2 lb bag 3.00, member price: 2.00}, carrots: 5 lb "
              "bag 6.00}\n");
  house.write("plans/household.yaml", "member of: [depot]\nleftovers are worth: 50 %\n"
                                      "people: [{name: Ada}, {name: Ben}]\n");
  house.plan_with_trip("2027-03-01: {dinner: stew}, 2027-03-10: {dinner: stew}", "[corner, depot]",
                       "as of: 2027-03-05\n");
  house.write("plans/receipts/2027-03-01-depot.yaml",
              "shop: depot\nlines: [\"2 lb onions, 2.00\", \"5 lb carrots, 6.00\"]\n");
  house.write("plans/receipts/2027-03-01-corner.yaml",
              "shop: corner\nlines: [\"1 lb butter, 5.00\"]\n");
  const review::Review review = of_plan();
  ASSERT_EQ(review.savings.size(), 2U);
  const review::ShopSaving& corner = review.savings[0];
  EXPECT_EQ(corner.compared, 0U);
  EXPECT_EQ(corner.only_here, 1U);
  const review::ShopSaving& depot = review.savings[1];
  // A bag of 3 lb for 4.00 of which a third is left, worth half: 3.33; carrots 10.00.
  EXPECT_EQ(depot.goods, Rational(400) * 5 / 6 - 200 + 1000 - 600);
  EXPECT_EQ(depot.cash_back, 80);
  EXPECT_EQ(depot.stop_costs, 300);
  EXPECT_EQ(depot.membership, Rational(4 * 10)); // four days of a year
  EXPECT_EQ(depot.by_member_prices, Rational(100));
  EXPECT_EQ(depot.in_all(), depot.goods + 80 - 300 - 40);
}

} // namespace
} // namespace manciple
