#include "purchase/rules.hpp"

#include <gtest/gtest.h>

namespace manciple::purchase {
namespace {

class RulesTest : public testing::Test {
protected:
  RulesTest() {
    corner.slug = "corner";
    market.slug = "market";
    rule.food = egg;
  }
  void ruled() { kitchen.household.buying = {rule}; }

  static constexpr foods::FoodId egg{0};
  static constexpr foods::FoodId onion{1};
  kitchen::Kitchen kitchen;
  kitchen::Shop corner;
  kitchen::Shop market;
  kitchen::BuyingRule rule;
};

TEST_F(RulesTest, WithoutARuleAFoodIsBoughtAnywhere) {
  EXPECT_TRUE(may_buy(kitchen, egg, corner));
  EXPECT_EQ(preference(kitchen, egg, corner), 0);
}

TEST_F(RulesTest, OnlyAtMeansNowhereElse) {
  rule.only_at = {{"market", {}}};
  ruled();
  EXPECT_TRUE(may_buy(kitchen, egg, market));
  EXPECT_FALSE(may_buy(kitchen, egg, corner));
  EXPECT_TRUE(may_buy(kitchen, onion, corner)); // of which it says nothing
}

TEST_F(RulesTest, NeverAtMeansAnywhereElse) {
  rule.never_at = {{"market", {}}};
  ruled();
  EXPECT_FALSE(may_buy(kitchen, egg, market));
  EXPECT_TRUE(may_buy(kitchen, egg, corner));
}

TEST_F(RulesTest, APriceCountsATenthMoreWhereItIsNotPreferred) {
  rule.prefer = {{"market", {}}};
  ruled();
  EXPECT_EQ(preference(kitchen, egg, market), 0);
  EXPECT_EQ(preference(kitchen, egg, corner), Rational(1, 10));
  EXPECT_EQ(preference(kitchen, onion, corner), 0);
  EXPECT_TRUE(may_buy(kitchen, egg, corner));
}

// From three quarters of a usual can of 400 g to five. Our own choice.
TEST_F(RulesTest, ACanOfNearlyTheUsualSizeIsAUsualOne) {
  EXPECT_FALSE(is_usual_container(299, 400));
  EXPECT_TRUE(is_usual_container(300, 400));
  EXPECT_TRUE(is_usual_container(500, 400));
  EXPECT_FALSE(is_usual_container(501, 400));
}

TEST(UsingUp, IsForATenthOfWhatThereWasAndNoScraps) {
  foods::Book book;
  const foods::Food& onion = book.get(*book.find("onion"));
  EXPECT_TRUE(is_worth_using_up(onion, 100, 1000));
  EXPECT_FALSE(is_worth_using_up(onion, 99, 1000));
  EXPECT_FALSE(is_worth_using_up(onion, 20, 100)); // grams: scraps, though a fifth
}

} // namespace
} // namespace manciple::purchase
