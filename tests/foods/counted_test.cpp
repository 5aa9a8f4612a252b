#include "foods/counted.hpp"

#include "foods/book.hpp"

#include <gtest/gtest.h>

namespace manciple::foods {
namespace {

using measure::Rational;
using measure::System;

const Food& food(std::string_view name) {
  static Book book;
  return book.get(*book.find(name));
}
std::string seen(std::string_view name, int grams, System system = System::us) {
  return as_seen(food(name), grams, system);
}

// Weights of pieces: SR28, over 90 % edible for an onion (110 g) and 89 % for a carrot (61 g).
TEST(Counted, WhatIsWeighedIsCountedToo) {
  EXPECT_EQ(seen("onion", 1043), "9 onions (2.3 lb)");
  EXPECT_EQ(seen("carrot", 274, System::metric), "4 carrots (275 g)");
  EXPECT_EQ(seen("apple", 300), "1 1/2 apples (10.5 oz)");
}

TEST(Counted, APartOfAPieceIsAtLeastAQuarter) {
  EXPECT_EQ(seen("romaine lettuce", 60), "1/4 head romaine lettuce");
  EXPECT_EQ(seen("romaine lettuce", 350), "1/2 head romaine lettuce");
  EXPECT_EQ(part_of(Rational(1, 10)), "about 1/4");
  EXPECT_EQ(part_of(Rational(19, 20)), "nearly all");
}

TEST(Counted, CookCountsClovesStalksAndSprigs) {
  EXPECT_EQ(seen("garlic", 80), "23 cloves garlic");
  EXPECT_EQ(seen("celery", 180), "4 stalks celery");
  EXPECT_EQ(seen("cilantro", 8), "3 sprigs cilantro");
  EXPECT_EQ(seen("cilantro", 40), "1/2 bunch cilantro");
}

TEST(Counted, WhatNobodyCountsIsWeighedByHalfAnOunce) {
  EXPECT_EQ(seen("parmesan cheese", 51), "2 oz parmesan cheese");
  EXPECT_EQ(seen("cremini mushroom", 300), "10.5 oz cremini mushrooms");
  EXPECT_EQ(seen("parmesan cheese", 51, System::metric), "50 g parmesan cheese");
}

TEST(Counted, MeatIsWeighedInTheKitchen) {
  EXPECT_EQ(seen("boneless chicken breast", 680), "1.5 lb boneless chicken breasts");
}

// A cup of milk is 244 g (SR28 01077), of broth some 240 g.
TEST(Counted, WhatIsPouredIsToldByTheCup) {
  EXPECT_EQ(seen("whole milk", 800), "3 1/4 cups whole milk");
  EXPECT_EQ(seen("whole milk", 30), "2 tbsp whole milk");
  EXPECT_EQ(seen("heavy cream", 160), "2/3 cup heavy cream");
  EXPECT_EQ(seen("beef broth", 482), "2 cups beef broth");
  EXPECT_EQ(seen("whole milk", 311, System::metric), "300 ml whole milk");
  EXPECT_EQ(seen("whole milk", 3900), "1 gal whole milk");
}

TEST(Counted, ACanIsNotCannedTwice) {
  EXPECT_EQ(seen("canned crushed tomato", 397), "1/2 can crushed tomatoes");
}

TEST(Counted, HowManyPiecesTheScaleWillHold) {
  EXPECT_EQ(pieces_in(food("jalapeno pepper"), 45)->words, "3");
  EXPECT_TRUE(pieces_in(food("jalapeno pepper"), 45)->several);
  EXPECT_EQ(pieces_in(food("broccoli"), 1000)->words, "1 bunch");
  EXPECT_FALSE(pieces_in(food("russet potato"), 45)); // a fifth of one
  EXPECT_FALSE(pieces_in(food("deli ham"), 283));
  EXPECT_FALSE(pieces_in(food("cremini mushroom"), 450));
}

TEST(Counted, ATraceIsNotSeen) {
  EXPECT_FALSE(is_seen(food("romaine lettuce"), 20));
  EXPECT_TRUE(is_seen(food("romaine lettuce"), 100));
  EXPECT_FALSE(is_seen(food("cumin"), 2));
}

} // namespace
} // namespace manciple::foods
