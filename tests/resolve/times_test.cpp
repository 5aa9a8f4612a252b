#include "resolve/errors.hpp"
#include "resolve/makings.hpp"

#include <gtest/gtest.h>

namespace manciple::resolve {
namespace {

using measure::Unit;

// A recipe that serves four.
class TimesTest : public testing::Test {
protected:
  TimesTest() {
    kitchen.recipes.resize(1);
    kitchen.recipes.front().name = "Dough";
    kitchen.recipes.front().slug = "dough";
    kitchen.recipes.front().serves = 4;
  }
  void makes(const Rational& number, const foods::Measure& measure) {
    kitchen.recipes.front().makes.push_back({number, measure});
  }
  std::optional<Rational> times(const Rational& number, const foods::Measure& measure) {
    kitchen::Ingredient line;
    line.target = RecipeId{0};
    line.amount = {number, measure};
    return times_of(kitchen, line, diagnostics);
  }

  const foods::Measure tortilla{Unit::each, "tortilla"};
  kitchen::Kitchen kitchen;
  text::Diagnostics diagnostics;
};

TEST_F(TimesTest, ServingsAreOfThoseThatItServes) {
  EXPECT_EQ(times(6, {Unit::each, "serving"}), Rational(3, 2));
}

TEST_F(TimesTest, AMeasureIsOfWhatItMakesInAnyUnitOfThatKind) {
  makes(8, {Unit::us_cup, {}});
  EXPECT_EQ(times(2, {Unit::us_cup, {}}), Rational(1, 4));
  EXPECT_EQ(times(1, {Unit::us_quart, {}}), Rational(1, 2)); // four cups
}

TEST_F(TimesTest, OfSeveralThingsThatItMakesTheOneOfTheSameKindIsTaken) {
  makes(12, tortilla);
  makes(600, {Unit::gram, {}});
  EXPECT_EQ(times(3, tortilla), Rational(1, 4));
  EXPECT_EQ(times(300, {Unit::gram, {}}), Rational(1, 2));
  EXPECT_EQ(diagnostics.errors(), 0U);
}

TEST_F(TimesTest, WhatItDoesNotSayIsAnErrorThatSaysWhatToAdd) {
  makes(600, {Unit::gram, {}});
  EXPECT_EQ(times(3, tortilla), std::nullopt);
  EXPECT_EQ(times(1, {Unit::us_cup, {}}), std::nullopt);
  ASSERT_EQ(diagnostics.errors(), 2U);
  EXPECT_TRUE(diagnostics.said(errors::cannot_scale));
  EXPECT_NE(diagnostics.all()[0].what.find("does not say what it makes in pieces"),
            std::string::npos);
  EXPECT_EQ(diagnostics.all()[1].fix, "add 'makes: 8 cups' to recipes/dough.yaml");
}

} // namespace
} // namespace manciple::resolve
