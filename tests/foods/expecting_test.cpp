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
  }
}

TEST(Expecting, ARecordGoesBeforeAName) {
  Food food;
  food.name = "hot dog bun";
  EXPECT_TRUE(is(food, Caution::ready_meat));
  food.expecting = Cautions{};
  EXPECT_FALSE(is(food, Caution::ready_meat));
  food.expecting->classes = {Caution::soft_cheese};
  EXPECT_TRUE(is(food, Caution::soft_cheese));
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
