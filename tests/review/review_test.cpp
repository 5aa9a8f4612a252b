// A month's sums, worked by hand.
#include "house.hpp"

#include "review/review.hpp"

namespace manciple {
namespace {

using measure::Rational;

class ReviewTest : public testing::Test {
protected:
  review::Review of_plan(std::optional<review::LaterCount> later = {}) {
    house.sources = {};
    house.diagnostics = {};
    done = cli::reviewed(house.root() + "/plans/p.yaml", house.sources, house.diagnostics).done;
    EXPECT_TRUE(done) << house.said();
    return done ? review::review(done->kitchen, done->resolved, done->past, later)
                : review::Review{};
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
  EXPECT_NE(words.find("onion: usually 1.00/lb; least 1.00/lb (3 lb for 3.00, Corner Mon 1 Mar)"),
            std::string::npos)
      << words;
}

TEST_F(ReviewTest, AStapleIsUsedAsFastAsTwoCountsSay) {
  house.plan("2027-03-30: {dinner: 1 lb onions}",
             "staples: [7 lb onions per week]\nas of: 2027-03-22\n");
  house.write("plans/on-hand.yaml", "date: 2027-03-01\non hand: [40 lb onions]\n");
  // Three weeks: 21 lb by the plan, so 19 should be there; there are 13: two pounds more a week.
  (void)of_plan();
  const auto food = done->kitchen.foods.find("onion");
  const review::Review review = of_plan(review::LaterCount{
      *text::parse_date("2027-03-22"), {{*food, Rational(13) * measure::decimal("453.59237")}}});
  ASSERT_EQ(review.rates.size(), 1U);
  EXPECT_EQ(review.weeks, 3);
  EXPECT_EQ(review.rates[0].planned, Rational(7) * measure::decimal("453.59237"));
  EXPECT_EQ(review.rates[0].used, Rational(9) * measure::decimal("453.59237"));
}

} // namespace
} // namespace manciple
