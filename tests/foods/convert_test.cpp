#include "foods/convert.hpp"

#include "all_foods.hpp"

#include <gtest/gtest.h>

namespace manciple::foods {
namespace {

using measure::Unit;

// Every measure that a food's own record knows it by.
std::vector<std::pair<Measure, Form>> measures_of(const Food& food) {
  std::vector<std::pair<Measure, Form>> out;
  for (const VolumeWeight& v : food.volumes) {
    out.emplace_back(Measure{Unit::us_cup, {}}, v.form);
  }
  for (const Piece& p : food.pieces) {
    out.emplace_back(Measure{Unit::each, p.name}, Form::plain);
  }
  return out;
}

TEST(Conversions, GoThereAndBackExactlyForEveryFoodAndMeasure) {
  int tried = 0;
  for (const Food& food : all_foods()) {
    for (const auto& [measure, form] : measures_of(food)) {
      const Rational number(7, 3);
      const auto bought = as_purchased(food, {number, measure, form, false});
      if (!bought) { // how much of it is left or comes of it is not known
        EXPECT_FALSE(bought.error().fix.empty()) << food.name;
        continue;
      }
      EXPECT_GT(bought->amount, 0) << food.name;
      const auto back = measured(food, bought->amount, measure, form);
      ASSERT_TRUE(back) << food.name << ": " << back.error().what;
      EXPECT_EQ(back->amount, number) << food.name << ", " << name(form);
      ++tried;
    }
  }
  EXPECT_GT(tried, 1500);
}

TEST(Conversions, AddUpForEveryFoodAndMeasure) {
  for (const Food& food : all_foods()) {
    for (const auto& [measure, form] : measures_of(food)) {
      const auto of = [&, measure = measure, form = form](const Rational& number) {
        const auto bought = as_purchased(food, {number, measure, form, false});
        return bought ? bought->amount : Rational(0);
      };
      EXPECT_EQ(of(Rational(1, 3)) + of(Rational(5, 4)), of(Rational(1, 3) + Rational(5, 4)))
          << food.name;
    }
  }
}

TEST(Conversions, SixteenTablespoonsOfAnythingAreACupOfIt) {
  for (const Food& food : all_foods()) {
    for (const VolumeWeight& v : food.volumes) {
      const auto spoons = as_purchased(food, {16, {Unit::us_tablespoon, {}}, v.form, false});
      const auto cup = as_purchased(food, {1, {Unit::us_cup, {}}, v.form, false});
      ASSERT_EQ(spoons.has_value(), cup.has_value());
      if (cup) {
        EXPECT_EQ(spoons->amount, cup->amount) << food.name << ", " << name(v.form);
      }
    }
  }
}

TEST(Conversions, WhatIsTrimmedHasToBeBoughtToo) {
  int tried = 0;
  for (const Food& food : all_foods()) {
    const Yield* edible = food.yield(Form::plain);
    for (const Piece& p : food.pieces) {
      const auto bought = as_purchased(food, {1, {Unit::each, p.name}, Form::plain, false});
      if (basis(food) == measure::Dimension::mass && edible != nullptr && !p.as_purchased) {
        ASSERT_TRUE(bought) << food.name << ", " << p.name;
        EXPECT_EQ(bought->amount * edible->share, p.grams) << food.name << ", " << p.name;
        ++tried;
      }
    }
  }
  EXPECT_GT(tried, 400);
}

TEST(Conversions, DryGrainsAndPulsesGainWeightWhenTheyAreCooked) {
  Book book;
  for (const char* name : {"white rice", "brown rice", "dried black beans", "brown lentils",
                           "quinoa", "rolled oats", "spaghetti"}) {
    const Food& food = book.get(*book.find(name));
    const Yield* cooked = food.yield(Form::cooked);
    ASSERT_NE(cooked, nullptr) << name;
    EXPECT_GT(cooked->share, 2) << name;
    EXPECT_LT(cooked->share, 7) << name;
  }
}

TEST(Conversions, WithoutAFigureThereIsAnErrorThatSaysWhatToAdd) {
  Book book;
  const auto oil =
      as_purchased(book.get(*book.find("coconut oil")), {1, {Unit::each, {}}, Form::plain, false});
  ASSERT_FALSE(oil);
  EXPECT_NE(oil.error().fix.find("recipes/foods.yaml"), std::string::npos) << oil.error().fix;
}

} // namespace
} // namespace manciple::foods
