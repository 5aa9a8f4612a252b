#include "house.hpp"
#include "prep/eaten_hot.hpp"

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
  EXPECT_EQ(cooked(compiled, "roast"), "17:00-18:00"); // five minutes with the door open
}

TEST_F(OneOven, TellsWhatWaitsLongForItsMeal) {
  house.recipe("roast", "1 lb onion", baked("55", "325"));
  house.recipe("roots", "1 lb onion", baked("40", "425"));
  house.plan("2027-03-02: {dinner: [roast, roots]}");
  EXPECT_EQ(cooked(house.good(), "roast"), "16:40-17:40");
  EXPECT_TRUE(house.said("S002"));
  EXPECT_NE(house.said().find("keep it hot (135 F or above)"), std::string::npos) << house.said();
  house.household("measures: metric\n", "[]", "{burner: 4, oven: 2}");
  (void)house.compile();
  EXPECT_NE(house.said().find("keep it hot (57 °C or above)"), std::string::npos) << house.said();
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

TEST(DayOfCooking, AnOvenIsHotWhenSomethingGoesIn) {
  House house;
  house.recipe("pizza", "1 lb onion", baked("20", "470"));
  house.plan("2027-03-02: {dinner: pizza}");
  EXPECT_EQ(house.good().prep.cooking.at(0).steps.at(0).preheat, 20); // 20 F a minute from 70 F
  // At 7:30 it takes what the dish before it has left, and no more.
  house.recipe("buns", "1 lb onion", baked("20", "470"));
  house.plan("2027-03-02: {dinner: [pizza, buns]}");
  const auto both = house.good();
  EXPECT_EQ(both.prep.cooking.at(0).steps.at(0).preheat +
                both.prep.cooking.at(1).steps.at(0).preheat,
            20);
}

TEST(DayOfCooking, KeepsOutOfTheWayOfASession) {
  House house;
  house.household("", "[]", "{burner: 4, oven: 1}");
  house.recipe("cake", "2 cups all-purpose flour, 1 cup granulated sugar",
               "make ahead: yes\nkeeps: {fridge: 4 days}\n" + baked("60", "350"));
  house.recipe("roast", "1 lb onion", baked("60", "350"));
  house.plan("2027-03-07: {dinner: roast}, 2027-03-08: {dinner: cake}",
             "prep: [{every: Sunday, from: \"17:00\", until: \"18:20\"}]\n");
  const auto compiled = house.good();
  const prep::Cooking& roast = compiled.prep.cooking.at(0);
  int in_the_oven = 0;
  for (const prep::Task& task : compiled.prep.sessions.at(0).tasks) {
    if (task.appliance == "oven" && task.kind == prep::Task::Kind::cook) {
      const int from = 17 * 60 + task.start;
      const int until = from + task.hands_on + task.then;
      EXPECT_TRUE(until <= roast.start || from >= roast.done) << task.what;
      ++in_the_oven;
    }
  }
  EXPECT_EQ(in_the_oven, 1);
}

TEST(DayOfCooking, WhatStandsOvernightIsBegunInTheEvening) {
  House house;
  house.recipe("oats", "1 lb onion", "marinate: 8 h\nmethod: [{do: Layer, hands on: 8 min}]\n");
  house.plan("2027-03-10: {breakfast: oats}");
  const auto compiled = house.good();
  const prep::Cooking& first = compiled.prep.cooking.at(0);
  EXPECT_TRUE(first.ahead);
  EXPECT_EQ(text::print_date(first.date), "2027-03-09");
  EXPECT_EQ(cooked(compiled, "oats"), "19:52-20:00");
  EXPECT_TRUE(compiled.prep.cooking.at(1).steps.empty());
}

TEST(DayOfCooking, WhoeverMustAvoidSomethingGetsTheirDishFirst) {
  House house;
  house.household("", "[egg]");
  house.recipe("plain", "1 lb onion", "method: [{do: Fry, hands on: 5 min, on: burner}]\n");
  house.recipe("omelet", "2 eggs", "method: [{do: Fry, hands on: 15 min, on: burner}]\n");
  house.plan("2027-03-02: {dinner: [{dish: plain, eaten by: [Ben]}, {dish: omelet, eaten by: "
             "[Ada]}]}");
  const auto compiled = house.good();
  EXPECT_EQ(cooked(compiled, "plain"), "18:11-18:16");
  EXPECT_EQ(cooked(compiled, "omelet"), "18:16-18:30");
  EXPECT_EQ(compiled.prep.cooking.at(0).first_for, "Ben must not have egg");
}

TEST(DayOfCooking, WhatARecipeMayContainIsKeptAwayToo) {
  House house;
  house.household("", "[egg]");
  house.recipe("plain", "1 lb onion", "method: [{do: Fry, hands on: 5 min, on: burner}]\n");
  house.recipe("relish", "2 lb onions",
               "may contain: [egg]\nmethod: [{do: Fry, hands on: 15 min, on: burner}]\n");
  house.plan("2027-03-02: {dinner: [{dish: plain, eaten by: [Ben]}, {dish: relish, eaten by: "
             "[Ada]}]}");
  const auto compiled = house.good();
  EXPECT_EQ(compiled.prep.cooking.at(0).first_for, "Ben must not have egg");
}

TEST(DayOfCooking, SaysWhichDishWouldMakeRoom) {
  House house;
  house.household("", "[]", "{burner: 4, oven: 1}");
  house.recipe("roast", "1 lb onion", baked("55", "325"));
  house.recipe("roots", "1 lb onion", "keeps: {fridge: 3 days}\n" + baked("40", "425"));
  house.plan("2027-03-02: {dinner: [roast, roots]}");
  (void)house.good();
  EXPECT_NE(house.said().find("make roots the day before or in a session, and everything else is "
                              "on time"),
            std::string::npos)
      << house.said();
}

TEST(DayOfCooking, MealsHaveTheirHourByTheDay) {
  House house;
  house.write("plans/household.yaml",
              "people: [{name: Ada}]\nmeals: {breakfast: {at: \"07:00\", weekends: \"09:00\", "
              "Sun: \"10:00\"}}\n");
  house.recipe("eggs", "2 eggs", "method: [{do: Fry, hands on: 10 min, on: burner}]\n");
  house.plan(
      "2027-03-05: {breakfast: eggs}, 2027-03-06: {breakfast: eggs}, 2027-03-07: {breakfast: "
      "eggs}");
  const auto compiled = house.good();
  EXPECT_EQ(compiled.prep.cooking.at(0).ready, 7 * 60);
  EXPECT_EQ(compiled.prep.cooking.at(1).ready, 9 * 60);
  EXPECT_EQ(compiled.prep.cooking.at(2).ready, 10 * 60);
}

TEST(DayOfCooking, APackedLunchIsMadeTheEveningBefore) {
  House house;
  house.write("plans/household.yaml",
              "people: [{name: Ada}]\nmeals: {lunch: {at: \"12:00\", packed: "
              "weekdays}}\n");
  house.recipe("wraps", "2 eggs",
               "keeps: {fridge: 2 days}\nmethod: [{do: Roll, hands on: 10 min}]\n");
  house.recipe("soup", "1 lb onion",
               "keeps: {fridge: 2 days}\nmethod: [{do: Simmer, hands on: 10 min, on: burner}]\n");
  house.plan("2027-03-05: {lunch: wraps}, 2027-03-06: {lunch: soup}"); // a Friday and a Saturday
  const auto compiled = house.good();
  EXPECT_EQ(text::print_date(compiled.prep.cooking.at(0).date), "2027-03-04");
  EXPECT_EQ(cooked(compiled, "wraps"), "19:54-20:00");
  EXPECT_EQ(text::print_date(compiled.prep.cooking.at(1).date), "2027-03-06");
  EXPECT_FALSE(house.said("S003"));
  EXPECT_TRUE(std::any_of(compiled.prep.reminders.begin(), compiled.prep.reminders.end(),
                          [](const auto& r) { return r.kind == prep::Reminder::Kind::pack; }));
  house.plan("2027-03-05: {lunch: soup}");
  (void)house.good();
  EXPECT_TRUE(house.said("S003"));
}

// A cake is eaten when it is cold; what is fried of the same things is not.
TEST(Cooking, PancakesAreEatenHot) {
  House house;
  const auto hot = [&](const std::string& on) {
    house.recipe("stew", "1 cup all-purpose flour, 2 tbsp granulated sugar, 2 eggs",
                 "method: [{do: Cook, hands on: 15 min, on: " + on + "}]\n");
    house.plan("2027-03-02: {dinner: stew}");
    const auto compiled = house.good();
    return prep::is_eaten_hot(compiled.kitchen,
                              compiled.kitchen.recipe(compiled.resolved.makings.at(0).recipe));
  };
  EXPECT_TRUE(hot("burner"));
  EXPECT_FALSE(hot("oven"));
}

} // namespace
} // namespace manciple
