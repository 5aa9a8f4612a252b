#include "foods/expecting.hpp"

#include "all_foods.hpp"

#include <gtest/gtest.h>

namespace manciple::foods {
namespace {

// The name decides only where no record speaks: of a food of the reference the record does.
TEST(Expecting, NoFoodOfTheReferenceIsJudgedByItsName) {
  for (const Food& food : all_foods()) {
    if (!food.expecting) {
      for (int c = 0; c < static_cast<int>(caution_words().size()); ++c) {
        EXPECT_FALSE(is(food, static_cast<Caution>(c))) << food.name;
      }
    } else {
      EXPECT_FALSE(food.expecting->source.empty()) << food.name;
    }
    for (const Class what : {Class::cold_cut, Class::sprout}) {
      EXPECT_EQ(may_be(food, what), is(food, what)) << food.name;
    }
  }
}

TEST(Expecting, ARecordGoesBeforeAName) {
  Food food;
  food.name = "brie tart";
  EXPECT_TRUE(is(food, Caution::soft_cheese));
  food.expecting = Cautions{};
  EXPECT_FALSE(is(food, Caution::soft_cheese));
  food.expecting->classes = {Caution::high_mercury};
  EXPECT_TRUE(is(food, Caution::high_mercury));
}

// Of what no record describes, somebody who is expecting is warned by its name; that it is one, and
// thus an error for everybody, is not known.
TEST(Expecting, WhatMayBeAColdCutIsNotKnownToBeOne) {
  Food food;
  food.name = "smoked salmon slices";
  EXPECT_TRUE(may_be(food, Class::cold_cut));
  EXPECT_FALSE(is(food, Class::cold_cut));
  EXPECT_FALSE(may_be(food, Class::sprout));
  food.safety = SafetyClasses{};
  EXPECT_FALSE(may_be(food, Class::cold_cut));
  food.name = "radish sprouts";
  EXPECT_FALSE(may_be(food, Class::sprout));
  food.safety.reset();
  EXPECT_TRUE(may_be(food, Class::sprout));
}

TEST(Expecting, LiverwurstIsBoth) {
  Book book;
  const Food& liverwurst = book.get(book.find("liverwurst").value());
  EXPECT_TRUE(is(liverwurst, Caution::high_vitamin_a));
  EXPECT_TRUE(may_be(liverwurst, Class::cold_cut));
}

TEST(Expecting, EveryWordIsRead) {
  for (const std::string_view word : caution_words()) {
    ASSERT_TRUE(parse_caution(word)) << word;
    EXPECT_EQ(name(*parse_caution(word)), word);
  }
  EXPECT_FALSE(parse_caution("hard cheese"));
}

} // namespace
} // namespace manciple::foods
