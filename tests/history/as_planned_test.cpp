#include "history/as_planned.hpp"
#include "march.hpp"

#include <gtest/gtest.h>

namespace manciple::history {
namespace {

using measure::Rational;
using Days = std::vector<text::Date>;

// Two stops at a shop that sells cans in sixes and onions by weight.
class AsPlannedTest : public testing::Test {
protected:
  AsPlannedTest() {
    kitchen.shops.emplace_back();
    auto& offers = kitchen.shops.front().offers;
    offers.resize(2);
    offers[0].food = *kitchen.foods.find("canned chickpea");
    offers[0].inside = 6;
    offers[1].food = *kitchen.foods.find("onion");
    offers[1].by_weight = true;
    for (const unsigned day : {1U, 6U}) {
      purchase::StopMade& stop = shopping.visits.emplace_back();
      stop.date = march(day);
      stop.goods = 1200;
      stop.tax = 60;
      stop.off = 200;
      stop.credit = 100;
    }
    line(0, 0, 2, 1000);
    line(0, 1, 3, 200);
    line(1, 1, 5, 1200);
  }
  void line(std::size_t visit, std::size_t offer, int packs, kitchen::Cents cost) {
    purchase::Line& made = shopping.lines.emplace_back();
    made.visit = visit;
    made.offer = offer;
    made.food = kitchen.shops.front().offers[offer].food;
    made.packs = packs;
    made.cost = cost;
    made.amount = 100 * packs;
    made.to_freeze = 10;
  }

  kitchen::Kitchen kitchen;
  purchase::Shopping shopping;
};

TEST_F(AsPlannedTest, ALineOfTheListIsALineOfTheReceipt) {
  const auto receipts = as_planned(kitchen, shopping);
  ASSERT_EQ(receipts.size(), 2U);
  const auto& bought = receipts.front().bought;
  ASSERT_EQ(bought.size(), 2U);
  EXPECT_EQ(bought[0].what.text, "canned chickpea");
  EXPECT_EQ(bought[0].what.containers, 12); // two packs of six
  EXPECT_EQ(bought[0].amount, 200);
  EXPECT_EQ(bought[0].paid, 1000);
  EXPECT_EQ(bought[0].frozen, 10);
  EXPECT_EQ(bought[1].what.containers, std::nullopt); // steps of a scale are no packs
  EXPECT_EQ(receipts.back().bought.size(), 1U);
}

TEST_F(AsPlannedTest, WhatIsPaidIsWhatTheStopCosts) {
  const kitchen::Receipt receipt = as_planned(kitchen, shopping).front();
  EXPECT_EQ(receipt.paid(), 1200 + 60 - 200 - 100);
  EXPECT_EQ(receipt.sum(), receipt.total);
}

TEST_F(AsPlannedTest, OfADayAreOnlyItsStops) {
  const auto receipts = as_planned(kitchen, shopping, march(6));
  ASSERT_EQ(receipts.size(), 1U);
  EXPECT_EQ(receipts.front().date, march(6));
  EXPECT_TRUE(as_planned(kitchen, shopping, march(2)).empty());
}

// Trips on the 1st, twice on the 6th, and on the 13th.
class WithoutReceipt : public testing::Test {
protected:
  WithoutReceipt() {
    kitchen.plan.emplace();
    for (const unsigned day : {1U, 6U, 6U, 13U}) {
      kitchen.plan->trips.emplace_back().date = march(day);
    }
  }
  void receipt(unsigned day) { kitchen.receipts.emplace_back().date = march(day); }

  kitchen::Kitchen kitchen;
};

TEST_F(WithoutReceipt, AreThePastDaysOfShopping) {
  EXPECT_EQ(days_without_receipt(kitchen, march(13)), (Days{march(1), march(6)}));
  EXPECT_EQ(days_without_receipt(kitchen, march(14)), (Days{march(1), march(6), march(13)}));
  receipt(6);
  EXPECT_EQ(days_without_receipt(kitchen, march(13)), Days{march(1)});
}

TEST_F(WithoutReceipt, AreNotThoseBeforeACount) {
  kitchen.on_hand.date = march(6); // in the morning, before the shopping
  EXPECT_EQ(days_without_receipt(kitchen, march(13)), Days{march(6)});
}

TEST_F(WithoutReceipt, AreThoseThatArePlannedAnewWhateverElseWasBoughtThen) {
  receipt(6);
  EXPECT_EQ(days_without_receipt(kitchen, march(14), march(6)),
            (Days{march(1), march(6), march(13)}));
}

} // namespace
} // namespace manciple::history
