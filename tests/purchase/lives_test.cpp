#include "purchase/lives.hpp"

#include <gtest/gtest.h>

namespace manciple::purchase {
namespace {

using foods::Department;
using foods::Sourced;

constexpr text::Date first{std::chrono::year(2027) / 3 / 1};
constexpr int a_month = 31;

Sourced<int> days(int count) {
  return {count, "common practice no source"};
}

// Two days in the fridge, four months in the freezer.
foods::Food meat() {
  foods::Food out;
  out.department = Department::meat;
  out.stored = foods::Place::fridge;
  out.keeps.fridge = days(2);
  out.keeps.freezer = days(120);
  out.freezes = true;
  return out;
}

// Two weeks in the fridge, a week once it is opened.
foods::Food carton() {
  foods::Food out;
  out.department = Department::dairy;
  out.stored = foods::Place::fridge;
  out.keeps.fridge = days(14);
  out.keeps.opened = days(7);
  return out;
}

TEST(Lives, MeatIsFrozenAtHomeAndVegetablesAreNot) {
  foods::Food food = meat();
  EXPECT_EQ(keeping_of(food, a_month).place, buying::Place::fridge);
  EXPECT_EQ(keeping_of(food, a_month).life.cool, 2);
  EXPECT_EQ(keeping_of(food, a_month).life.frozen, 120);
  food.department = Department::produce;
  EXPECT_EQ(keeping_of(food, a_month).life.frozen, std::nullopt);
  food.freezes_for_cooking = true; // herbs
  EXPECT_EQ(keeping_of(food, a_month).life.frozen, 120);
  food.freezes = false;
  EXPECT_EQ(keeping_of(food, a_month).life.frozen, std::nullopt);
}

TEST(Lives, OpeningStartsAClockThatEndsBeforeThePlanAndThePack) {
  foods::Food food = carton();
  EXPECT_EQ(keeping_of(food, a_month).life.opened, 7);
  EXPECT_EQ(keeping_of(food, 8).life.opened, 7);
  EXPECT_EQ(keeping_of(food, 7).life.opened, std::nullopt); // the plan is over by then
  food.keeps.fridge = days(7);
  EXPECT_EQ(keeping_of(food, a_month).life.opened, std::nullopt);
  food = carton();
  food.department = Department::produce; // a bag of onions is never opened
  EXPECT_EQ(keeping_of(food, a_month).life.opened, std::nullopt);
}

TEST(Lives, WhatIsNotKnownToSpoilIsSaid) {
  foods::Food food;
  food.department = Department::other;
  EXPECT_FALSE(keeping_of(food, a_month).known);
  EXPECT_GE(keeping_of(food, a_month).life.cool, 365);
  food.department = Department::household;
  EXPECT_TRUE(keeping_of(food, a_month).known); // soap
}

TEST(Lives, OfALotAreCountedFromThePlansFirstDay) {
  kitchen::StockLot lot;
  lot.place = foods::Place::fridge;
  lot.use_by = first + std::chrono::days(3);
  EXPECT_EQ(keeping_of(lot, meat(), first, a_month)->life.cool, 3);
  lot.use_by = first;
  EXPECT_EQ(keeping_of(lot, meat(), first, a_month)->life.cool, 0);
  lot.use_by = first - std::chrono::days(1);
  EXPECT_FALSE(keeping_of(lot, meat(), first, a_month));
}

TEST(Lives, WhatWasThawedIsNotFrozenAgain) {
  kitchen::StockLot lot;
  lot.place = foods::Place::fridge;
  lot.use_by = first + std::chrono::days(1);
  EXPECT_EQ(keeping_of(lot, meat(), first, a_month)->life.frozen, 120);
  lot.thawed = true;
  EXPECT_EQ(keeping_of(lot, meat(), first, a_month)->life.frozen, std::nullopt);
}

TEST(Lives, WhatIsOpenGoesByItsDateAlone) {
  kitchen::StockLot lot;
  lot.place = foods::Place::fridge;
  lot.use_by = first + std::chrono::days(5);
  EXPECT_EQ(keeping_of(lot, carton(), first, a_month)->life.opened, 7);
  lot.opened = first - std::chrono::days(2);
  EXPECT_EQ(keeping_of(lot, carton(), first, a_month)->life.opened, std::nullopt);
}

// In microlitres. A cup is 236.5882365 ml: 240 g of it in that take 236588.2365 / 240 = 985.78 a
// gram, rounded up. What has no figure takes a millilitre and a half: common practice, no source.
TEST(Lives, RoomIsWhatAGramOfTheFoodTakes) {
  foods::Food food;
  food.pieces = {{"piece", 10, true, ""}};
  EXPECT_EQ(room_cool(food), 1500);
  food.volumes = {{foods::Form::plain, measure::Unit::us_cup, 240, ""}};
  EXPECT_EQ(room_cool(food), 986);
  EXPECT_EQ(room_frozen(food), 986);
  // A lemon is frozen as the juice that it gives: a third of its weight.
  food.keeps.frozen_juice = days(120);
  food.yields = {{foods::Form::juice, {1, 3}, ""}};
  EXPECT_EQ(room_frozen(food), 329); // 985.78 / 3 is 328.59
  EXPECT_EQ(room_cool(food), 986);
}

} // namespace
} // namespace manciple::purchase
