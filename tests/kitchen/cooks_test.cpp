#include "kitchen/cooks.hpp"

#include "kitchen/kitchen.hpp"

#include <gtest/gtest.h>

namespace manciple::kitchen {
namespace {

constexpr text::Date a_tuesday{std::chrono::year(2027) / 3 / 2};
constexpr text::Date a_saturday{std::chrono::year(2027) / 3 / 6};

CookRule cooked_by(const std::string& who) {
  CookRule out;
  out.who = {who};
  return out;
}

TEST(CookRules, HoldOnTheirDaysOfTheWeekAndForTheirMeals) {
  CookRule rule = cooked_by("Ada");
  EXPECT_TRUE(rule.holds(a_tuesday, "dinner"));
  rule.on = {true, false, false, false, false, false, true}; // Sunday and Saturday
  EXPECT_FALSE(rule.holds(a_tuesday, "dinner"));
  EXPECT_TRUE(rule.holds(a_saturday, "dinner"));
  rule.slots = {"breakfast"};
  EXPECT_FALSE(rule.holds(a_saturday, "dinner"));
  EXPECT_TRUE(rule.holds(a_saturday, "breakfast"));
  rule.dates = {a_tuesday}; // whatever weekday that is
  EXPECT_TRUE(rule.holds(a_tuesday, "breakfast"));
  EXPECT_FALSE(rule.holds(a_saturday, "breakfast"));
}

TEST(Shifts, HaveAsManyHandsAsHaveTimeAndAlwaysOne) {
  const Shift shift{0, 1110, {{"Ada", 0, 1440}, {"Ben", 1080, 1100}}};
  EXPECT_EQ(shift.hands(1079), 1);
  EXPECT_EQ(shift.hands(1080), 2);
  EXPECT_EQ(shift.hands(1099), 2);
  EXPECT_EQ(shift.hands(1100), 1);
  EXPECT_EQ(Shift{}.hands(600), 1);
}

// Breakfast at 7:30, which Ben makes, and dinner at 18:30, which Ada makes.
class ShiftsTest : public testing::Test {
protected:
  ShiftsTest() {
    kitchen.household.slots = {{"breakfast", 450}, {"dinner", 1110}};
    kitchen.household.cooks = {cooked_by("Ben"), cooked_by("Ada")};
    kitchen.household.cooks[0].slots = {"breakfast"};
    kitchen.household.cooks[1].slots = {"dinner"};
    kitchen.plan.emplace();
    meal("dinner");
    meal("breakfast");
  }
  void meal(const std::string& slot) {
    Meal& made = kitchen.plan->meals.emplace_back();
    made.date = a_tuesday;
    made.slot = slot;
    made.dishes.resize(1);
  }
  // As "0-450 Ben".
  std::vector<std::string> of_the_day() {
    std::vector<std::string> out;
    for (const Shift& shift : shifts(kitchen, a_tuesday)) {
      std::string said = std::to_string(shift.from) + "-" + std::to_string(shift.until);
      for (const Cook& cook : shift.cooks) {
        said += " " + cook.name;
      }
      out.push_back(said);
    }
    return out;
  }

  using Words = std::vector<std::string>;
  Kitchen kitchen;
};

TEST_F(ShiftsTest, GoFromMealToMealAndTheLastToMidnight) {
  EXPECT_EQ(of_the_day(), (Words{"0-450 Ben", "450-1440 Ada"}));
  kitchen.plan->meals.back().dishes.clear(); // nothing for breakfast
  EXPECT_EQ(of_the_day(), (Words{"0-1440 Ada"}));
}

TEST_F(ShiftsTest, OfADayWithoutMealsAreOfThoseWhoCookAnyMeal) {
  kitchen.plan->meals.clear();
  kitchen.household.cooks.push_back(cooked_by("Cy"));
  EXPECT_EQ(of_the_day(), (Words{"0-1440 Cy"}));
}

TEST_F(ShiftsTest, WhatThePlanSaysOfAMealGoesFirst) {
  kitchen.plan->cooks = {cooked_by("Cy")};
  kitchen.plan->cooks.front().slots = {"dinner"};
  EXPECT_EQ(of_the_day(), (Words{"0-450 Ben", "450-1440 Cy"}));
}

TEST_F(ShiftsTest, WhoIsAwayDoesNotCookAndIsNamedOnce) {
  kitchen.household.cooks.push_back(cooked_by("Ada"));
  kitchen.plan->away.push_back({"Ben", a_tuesday, a_tuesday, {}});
  EXPECT_EQ(of_the_day(), (Words{"0-450 Ada", "450-1440 Ada"}));
}

} // namespace
} // namespace manciple::kitchen
