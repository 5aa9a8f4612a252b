#include "emit/boxes.hpp"

#include <gtest/gtest.h>

namespace manciple::emit {
namespace {

constexpr text::Date monday{std::chrono::year(2027) / 3 / 1};

// Four nights. A soup of two litres is made on the first day and eaten on the third.
class BoxesTest : public testing::Test {
protected:
  BoxesTest() {
    compiled.kitchen.plan.emplace();
    compiled.kitchen.plan->from = monday;
    compiled.kitchen.plan->until = day(3);
    compiled.kitchen.recipes.resize(1);
    soup().makes = {{2, {measure::Unit::liter, {}}}};
    making(0, 0).consumers.push_back({resolve::DishRef{}, 1, day(2)});
  }
  static text::Date day(int number) { return monday + std::chrono::days(number); }
  kitchen::Recipe& soup() { return compiled.kitchen.recipes.front(); }
  resolve::Making& making(std::uint32_t recipe, int on) {
    resolve::Making& made = compiled.resolved.makings.emplace_back();
    made.id = resolve::MakingId(static_cast<std::uint32_t>(compiled.resolved.makings.size() - 1));
    made.recipe = kitchen::RecipeId(recipe);
    made.times = made.needed = 1;
    made.date = day(on);
    return made;
  }
  resolve::Making& first() { return compiled.resolved.makings.front(); }

  using Nights = std::vector<double>;
  [[nodiscard]] Nights litres(foods::Place place) const {
    return litres_of_boxes(compiled).at(place);
  }
  Compiled compiled;
};

TEST_F(BoxesTest, TakeRoomFromTheDayOfCookingToTheDayOfEating) {
  EXPECT_EQ(litres(foods::Place::fridge), (Nights{2, 2, 0, 0}));
  EXPECT_EQ(litres(foods::Place::freezer), (Nights{0, 0, 0, 0}));
}

TEST_F(BoxesTest, StandWhereEachPartIsKept) {
  first().times = first().needed = measure::Rational(3, 2);
  first().consumers.push_back({resolve::DishRef{}, {1, 2}, day(9), false, true});
  EXPECT_EQ(litres(foods::Place::fridge), (Nights{2, 2, 0, 0}));
  EXPECT_EQ(litres(foods::Place::freezer), (Nights{1, 1, 1, 1})); // past the plan's end
  soup().keeps_pantry = 30;
  EXPECT_EQ(litres(foods::Place::pantry), (Nights{2, 2, 0, 0}));
}

TEST_F(BoxesTest, WhatWasMadeBeforeThePlanIsThereFromItsFirstNight) {
  first().date = day(-3);
  EXPECT_EQ(litres(foods::Place::fridge), (Nights{2, 2, 0, 0}));
}

// A litre a kilogram. Common practice, no source.
TEST_F(BoxesTest, WithoutAVolumeAreWhatGoesIn) {
  soup().makes.clear();
  first().times = first().needed = 2;
  const auto use = [&](std::string_view food, const measure::Rational& amount) {
    resolve::Use& made = compiled.resolved.uses.emplace_back();
    made.food = *compiled.kitchen.foods.find(food);
    made.amount = amount;
    made.reason = resolve::OfMaking{first().id, 0};
  };
  use("onion", 3000); // for both times
  use("paper towel", 4);
  EXPECT_EQ(litres(foods::Place::fridge), (Nights{1.5, 1.5, 0, 0}));
}

TEST_F(BoxesTest, HoldTheRecipesThatGoIntoThem) {
  compiled.kitchen.recipes.resize(2); // a stew of nothing but half of the soup
  making(1, 1).consumers.push_back({resolve::DishRef{}, 1, day(2)});
  first().consumers = {{resolve::MakingId{1}, {1, 2}, day(1)}};
  EXPECT_EQ(litres(foods::Place::fridge), (Nights{1, 1, 0, 0}));
}

} // namespace
} // namespace manciple::emit
