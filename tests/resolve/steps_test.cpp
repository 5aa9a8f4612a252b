#include "resolve/steps.hpp"

#include "house.hpp"

namespace manciple {
namespace {

using measure::Rational;

// How many times a recipe that serves 2 is made for so many who eat.
Rational made(const std::string& ingredients, const std::string& eaters,
              const std::string& says = "") {
  House house;
  house.recipe("stew", ingredients, says);
  house.plan("2027-03-02: {dinner: stew for " + eaters + "}");
  const auto compiled = house.good();
  return compiled.resolved.makings.at(0).times;
}

TEST(Steps, WhatIsCountedStaysWhole) {
  EXPECT_EQ(made("3 eggs", "2"), 1);
  EXPECT_EQ(made("3 eggs", "1"), Rational(2, 3));
  EXPECT_EQ(made("1 egg", "1"), 1);
  EXPECT_EQ(made("8 eggs, 6 slices white bread", "1.2"), Rational(2, 3));
}

TEST(Steps, WhatIsCountedIsRoundedWhereThatIsLittle) {
  House house;
  house.recipe("stew", "8 eggs, 6 slices white bread, 1 cup milk");
  house.plan("2027-03-02: {dinner: stew for 1.5}");
  const auto compiled = house.good();
  EXPECT_EQ(compiled.resolved.makings.at(0).times, Rational(3, 4));
  const auto& kitchen = compiled.kitchen;
  const auto times = [&](std::size_t ingredient) {
    const kitchen::Recipe& recipe = kitchen.recipe(compiled.resolved.makings.at(0).recipe);
    return resolve::times_of_ingredient(kitchen, recipe, recipe.ingredients[ingredient],
                                        Rational(3, 4));
  };
  EXPECT_EQ(times(0), Rational(6, 8));
  EXPECT_EQ(times(1), Rational(5, 6)); // five slices
  EXPECT_EQ(times(2), Rational(3, 4));
}

TEST(Steps, AnOnionIsTakenInQuartersAndACanInHalves) {
  EXPECT_EQ(made("1 onion", "1.4"), Rational(3, 4));
  EXPECT_EQ(made("1 can black beans", "1"), Rational(1, 2));
  EXPECT_EQ(made("1 can black beans", "1.4"), 1);
}

TEST(Steps, WhatIsMeasuredIsMadeInQuartersAndThirds) {
  EXPECT_EQ(made("1 cup milk", "1.3"), Rational(2, 3));
  EXPECT_EQ(made("1 cup milk", "3"), Rational(3, 2));
  EXPECT_EQ(made("1 cup milk", "0.1"), Rational(1, 4));
}

TEST(Steps, ClovesAndSpicesDoNotCount) {
  EXPECT_EQ(made("1 clove garlic, 1 cup milk", "1"), Rational(1, 2));
}

TEST(Steps, ALittleLessForAllIsEnough) {
  EXPECT_EQ(made("1 egg", "2.1"), 1);
  EXPECT_EQ(made("1 egg", "2.1", "give: 0 %\n"), Rational(5, 3)); // two eggs, and less of the rest
  EXPECT_EQ(made("1 egg", "2.6"), Rational(5, 3));
}

TEST(Steps, ARecipeMaySayInWhichPartsItIsMade) {
  EXPECT_EQ(made("1 cup milk", "1.3", "made in: whole\n"), 1);
  EXPECT_EQ(made("1 cup milk", "2.6", "made in: halves\n"), Rational(3, 2));
  EXPECT_EQ(made("1 egg", "1.3", "made in: exactly\n"), Rational(13, 20));
}

TEST(Steps, EatersShareWhatIsMadeAndTheRestIsLeft) {
  House house;
  house.recipe("stew", "1 egg");
  house.plan("2027-03-02: {dinner: stew for 2.1}");
  auto compiled = house.good();
  EXPECT_EQ(compiled.resolved.makings.at(0).consumers.at(0).times, 1);
  EXPECT_EQ(compiled.resolved.makings.at(0).left(), 0);

  house.plan("2027-03-02: {dinner: stew for 1}");
  compiled = house.good();
  EXPECT_EQ(compiled.resolved.makings.at(0).consumers.at(0).times, Rational(1, 2));
  EXPECT_EQ(compiled.resolved.makings.at(0).left(), Rational(1, 2));
}

// Brown sugar and baking powder stand where flour does, and are none.
TEST(Steps, WhatIsBakedFromFlourCanDoWithoutNothing) {
  House house;
  const auto gives = [&](const std::string& ingredients, const std::string& on) {
    house.recipe("stew", ingredients,
                 "method: [{do: Cook, hands on: 5 min, then: 30 min, on: " + on + "}]\n");
    house.plan("2027-03-02: {dinner: stew}");
    const auto compiled = house.good();
    return resolve::give_of(compiled.kitchen,
                            compiled.kitchen.recipe(compiled.resolved.makings.at(0).recipe));
  };
  EXPECT_EQ(gives("1 lb carrots, 1 tbsp brown sugar", "oven"), Rational(1, 10));
  EXPECT_EQ(gives("1 lb all-purpose flour, 1 tbsp brown sugar", "oven"), 0);
  EXPECT_EQ(gives("1 lb cake mix, 2 eggs", "oven"), 0);
  EXPECT_EQ(gives("1 lb all-purpose flour, 2 eggs", "burner"), Rational(1, 10));
}

} // namespace
} // namespace manciple
