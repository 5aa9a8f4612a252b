#include "house.hpp"

namespace manciple {
namespace {

std::string baked(const std::string& minutes, const std::string& degrees) {
  return "method: [{do: Bake, hands on: 5 min, then: " + minutes +
         " min, on: oven, at: " + degrees + " F}]\n";
}

// When the dish of that name is cooked, as "start-done".
std::string cooked(const emit::Compiled& compiled, const std::string& name) {
  for (const prep::Cooking& cook : compiled.prep.cooking) {
    if (compiled.kitchen.recipe(compiled.resolved.making(cook.making).recipe).name == name) {
      return text::print_clock(cook.start) + "-" + text::print_clock(cook.done);
    }
  }
  return "never";
}

class OneOven : public ::testing::Test {
protected:
  void SetUp() override { house.household("", "[]", "{burner: 4, oven: 2}"); }
  House house;
};

TEST_F(OneOven, TakesTwoDishesAtOneTemperature) {
  house.recipe("roast", "1 lb onion", baked("55", "400"));
  house.recipe("roots", "1 lb onion", baked("40", "410"));
  house.plan("2027-03-02: {dinner: [roast, roots]}"); // at 18:30
  const auto compiled = house.good();
  EXPECT_EQ(cooked(compiled, "roast"), "17:30-18:30");
  EXPECT_EQ(cooked(compiled, "roots"), "17:45-18:30");
}

TEST_F(OneOven, HasOneTemperatureAtATimeAndTheQuickDishComesLast) {
  house.recipe("roast", "1 lb onion", baked("55", "325"));
  house.recipe("roots", "1 lb onion", baked("20", "425"));
  house.plan("2027-03-02: {dinner: [roast, roots]}");
  const auto compiled = house.good();
  EXPECT_EQ(cooked(compiled, "roots"), "18:05-18:30");
  EXPECT_EQ(cooked(compiled, "roast"), "17:05-18:05");
}

TEST_F(OneOven, TellsWhatWaitsLongForItsMeal) {
  house.recipe("roast", "1 lb onion", baked("55", "325"));
  house.recipe("roots", "1 lb onion", baked("40", "425"));
  house.plan("2027-03-02: {dinner: [roast, roots]}");
  EXPECT_EQ(cooked(house.good(), "roast"), "16:45-17:45");
  EXPECT_TRUE(house.said("S002"));
  // A cake may.
  house.recipe("roast", "1 cup all-purpose flour, 1/2 cup granulated sugar", baked("55", "325"));
  (void)house.compile();
  EXPECT_FALSE(house.said("S002"));
}

TEST(DayOfCooking, HandsDoOneThingAtATime) {
  House house;
  const std::string fried = "method: [{do: Fry, hands on: 15 min, on: burner}]\n";
  house.recipe("cakes", "1 lb onion", fried);
  house.recipe("greens", "1 lb onion", fried);
  house.plan("2027-03-02: {dinner: [cakes, greens]}");
  const auto compiled = house.good();
  const std::set<std::string> both{cooked(compiled, "cakes"), cooked(compiled, "greens")};
  EXPECT_EQ(both, (std::set<std::string>{"18:00-18:15", "18:15-18:30"}));
}

TEST(DayOfCooking, EachMealHasItsTime) {
  House house;
  const std::string fried = "method: [{do: Fry, hands on: 15 min, on: burner}]\n";
  house.recipe("cakes", "1 lb onion", fried);
  house.recipe("greens", "1 lb onion", fried);
  house.plan("2027-03-02: {breakfast: cakes, dinner: greens}"); // breakfast is at 7:30
  const auto compiled = house.good();
  EXPECT_EQ(cooked(compiled, "cakes"), "07:15-07:30");
  EXPECT_EQ(cooked(compiled, "greens"), "18:15-18:30");
}

TEST(DayOfCooking, WhatGoesIntoADishIsMadeBefore) {
  House house;
  house.recipe(
      "sauce", "1 lb onion",
      "makes: 2 cups\nmethod: [{do: Simmer, hands on: 5 min, then: 20 min, on: burner}]\n");
  house.recipe("stew", "2 cups sauce", "method: [{do: Fry, hands on: 10 min, on: burner}]\n");
  house.plan("2027-03-02: {dinner: stew}");
  const auto compiled = house.good();
  EXPECT_EQ(cooked(compiled, "stew"), "18:20-18:30");
  EXPECT_EQ(cooked(compiled, "sauce"), "17:55-18:20");
}

} // namespace
} // namespace manciple
