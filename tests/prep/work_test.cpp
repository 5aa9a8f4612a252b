#include "prep/work.hpp"

#include "measure/units.hpp"

#include <gtest/gtest.h>

namespace manciple::prep {
namespace {

using foods::Form;
using foods::Rational;

Rational in_grams(const Rational& pounds) {
  return pounds * measure::facts(measure::Unit::pound).factor;
}

// Minutes a pound: 10 minced, 6 diced, 5 grated, 4 sliced, 3 for the rest. Common practice, no
// source.
TEST(Cutting, TakesMinutesByThePoundTheFinerTheLonger) {
  EXPECT_EQ(cutting_minutes(Form::minced, in_grams(1)), 10);
  EXPECT_EQ(cutting_minutes(Form::diced, in_grams(2)), 12);
  EXPECT_EQ(cutting_minutes(Form::grated, in_grams(1)), 5);
  EXPECT_EQ(cutting_minutes(Form::sliced, in_grams({5, 2})), 10);
  EXPECT_EQ(cutting_minutes(Form::peeled, in_grams(1)), 3);
  EXPECT_EQ(cutting_minutes(Form::diced, in_grams({11, 10})), 7); // 6.6, begun minutes count
}

TEST(Cutting, TakesAMinuteAtLeastAndTenHoursAtMost) {
  EXPECT_EQ(cutting_minutes(Form::chopped, 1), 1);
  EXPECT_EQ(cutting_minutes(Form::minced, in_grams(60)), 600);
  EXPECT_EQ(cutting_minutes(Form::minced, in_grams(1'000'000)), 600);
}

// Four minutes to set out and clear away, and two a bag. Common practice, no source.
TEST(Portioning, TakesTimeByTheBag) {
  EXPECT_EQ(portioning_minutes(3), 10);
  EXPECT_EQ(portioning_minutes(0), portioning_minutes(1)); // what is frozen is in a bag
}

// USDA FSIS, "The Big Thaw": in the fridge 24 hours for every 4 to 5 pounds, and overnight for what
// is small.
TEST(Thawing, TakesADayForFourPounds) {
  EXPECT_EQ(thawing_days(in_grams({1, 4})), 1);
  EXPECT_EQ(thawing_days(in_grams(4)), 1);
  EXPECT_EQ(thawing_days(in_grams(4) + 1), 2);
  EXPECT_EQ(thawing_days(in_grams(12)), 3);
  EXPECT_EQ(thawing_days(in_grams(40)), 7); // no longer, whatever it weighs
}

} // namespace
} // namespace manciple::prep
