// Figures that are easily taken wrong, each against its source.
#include "foods/book.hpp"

#include <gtest/gtest.h>

namespace manciple::foods {
namespace {

const Food& reference_food(std::string_view name) {
  static Book book;
  return book.get(*book.find(name));
}

double cup(std::string_view name, Form form) {
  const VolumeWeight* v = reference_food(name).volume(form);
  const Rational cups = measure::facts(measure::Unit::us_cup).factor;
  return v == nullptr ? 0 : to_double(v->grams * cups / measure::facts(v->unit).factor);
}

// USDA SR release 26 (and before it) weighs a cup of chopped kale at 67 g, from memory; the 16 g of
// SR28 11233.1 are "1" pieces, loosely packed".
TEST(Figures, ChoppedGreensAreNotWeighedAsLooseLeaves) {
  EXPECT_DOUBLE_EQ(cup("kale", Form::chopped), 67);
  EXPECT_DOUBLE_EQ(cup("kale", Form::torn), 16);
  // SR28 2044.2: 2 tablespoons of chopped basil are 5.3 g; SR28 has leaves of cilantro only.
  EXPECT_NEAR(cup("cilantro", Form::chopped), 42.4, 0.01);
  EXPECT_DOUBLE_EQ(cup("cilantro", Form::leaves), 16);
}

// SR28 5091.1 weighs "thigh with skin" at 193 g and has no refuse: what lies in the tray. 5096.1,
// without skin and bone, is 149 g.
TEST(Figures, AChickenThighIsWeighedWithItsBone) {
  const Piece* thigh = reference_food("chicken thigh").piece("thigh");
  ASSERT_NE(thigh, nullptr);
  EXPECT_TRUE(thigh->as_purchased);
  EXPECT_EQ(thigh->grams, 193);
}

// USDA Food Buying Guide, cauliflower, trimmed head: 0.62 lb of a pound, from memory. The 39 % of
// SR28 are of a head with all its leaves, as it is cut in the field.
TEST(Figures, ACauliflowerIsBoughtTrimmed) {
  EXPECT_EQ(reference_food("cauliflower").yield(Form::plain)->share, Rational(62, 100));
}

// FSIS storage data, row 153: shucked oysters keep 3 to 10 days in the fridge; the least of it.
TEST(Figures, OystersAreNotKeptForLong) {
  EXPECT_EQ(reference_food("oyster").keeps.fridge->value, 3);
}

// FSIS storage data, row 195, has 14 to 18 days for bread with preservatives, and row 461 has 5 for
// wholemeal: white bread is put nearer to its neighbour. Common practice, no source.
TEST(Figures, WhiteBreadKeepsAboutAsLongAsBrown) {
  for (const char* name : {"white bread", "hamburger bun", "hot dog bun", "bagel", "naan"}) {
    EXPECT_LE(reference_food(name).keeps.pantry->value, 7) << name;
  }
  EXPECT_EQ(reference_food("whole wheat bread").keeps.pantry->value, 5);
}

// SR28 12061.2 and 12061.3, 9266.1.
TEST(Figures, ACupOfSlicedOrSliveredAlmondsAndOfPineappleChunksIsKnown) {
  EXPECT_DOUBLE_EQ(cup("almond", Form::sliced), 92);
  EXPECT_DOUBLE_EQ(cup("almond", Form::slivered), 108);
  EXPECT_DOUBLE_EQ(cup("pineapple", Form::cubed), 165);
}

TEST(Figures, APackOfRomaineHoldsHearts) {
  const Food& romaine = reference_food("romaine lettuce");
  EXPECT_EQ(romaine.count_as, "head");
  EXPECT_EQ(romaine.in_packs, "heart");
  EXPECT_LT(romaine.piece("heart")->grams, romaine.piece("head")->grams / 2);
}

// What is only like another food is not that food.
TEST(Figures, FoodsThatAreTakenForOthersAreTheirOwn) {
  EXPECT_EQ(reference_food("chicken tender").department, Department::meat); // raw, not breaded
  EXPECT_TRUE(reference_food("chicken tender").allergens->contains.empty());
  EXPECT_EQ(reference_food("stock cube").piece("cube")->grams, 10); // of no one kind
  for (const auto& [one, other] : std::initializer_list<std::pair<const char*, const char*>>{
           {"stock cube", "chicken stock cube"},
           {"passata", "tomato puree"},
           {"arborio rice", "sushi rice"},
           {"puy lentil", "brown lentil"},
           {"sugar snap pea", "snow pea"},
           {"wine", "white wine"},
           {"brandy", "whiskey"},
           {"muesli", "granola"},
           {"dark brown sugar", "light brown sugar"}}) {
    EXPECT_NE(reference_food(one).name, reference_food(other).name);
  }
}

} // namespace
} // namespace manciple::foods
