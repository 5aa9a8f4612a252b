#include "foods/book.hpp"
#include "foods/diets.hpp"
#include "foods/kinds.hpp"

#include <gtest/gtest.h>

namespace manciple::foods {
namespace {

const Food& food(const char* name) {
  static Book book;
  return book.get(*book.find(name));
}

TEST(DietClasses, AreKnownOfNearlyEveryFoodThatIsEaten) {
  Book book;
  std::vector<std::string> unknown;
  int eaten = 0;
  for (const std::string& name : book.food_names()) {
    const Food& one = book.get(*book.find(name));
    if (one.is_household()) {
      continue;
    }
    ++eaten;
    if (!one.classes) {
      unknown.push_back(name);
    } else {
      EXPECT_FALSE(one.classes->source.empty()) << name;
    }
  }
  EXPECT_GE(eaten, 1570);
  EXPECT_EQ(unknown, (std::vector<std::string>{"food coloring", "herbal tea bag"}));
}

TEST(DietClasses, WhateverStandsWithTheMeatIsMeatOrPoultry) {
  Book book;
  for (const std::string& name : book.food_names()) {
    const Food& one = book.get(*book.find(name));
    if (one.department == Department::meat) {
      EXPECT_TRUE(holds(one, DietClass::meat) == Holds::yes ||
                  holds(one, DietClass::poultry) == Holds::yes)
          << name;
    }
    const bool fish = one.department == Department::fish;
    const auto has = [&](Allergen of) { return holds(one, of) == Holds::yes; };
    EXPECT_TRUE(!fish || has(Allergen::fish) || has(Allergen::crustaceans) ||
                has(Allergen::molluscs))
        << name;
  }
}

// The SR28 group of a number is the one thing here that comes from outside: 05 poultry, 10 pork, 13
// beef, 17 lamb, veal and game. (USDA SR28, FD_GROUP.)
TEST(DietClasses, AgreeWithTheFoodGroupsOfTheTables) {
  Book book;
  int compared = 0;
  for (const std::string& name : book.food_names()) {
    const Food& one = book.get(*book.find(name));
    if (!one.usda || one.department != Department::meat) {
      continue;
    }
    const int group = *one.usda / 1000;
    const auto is = [&](DietClass of) { return holds(one, of) == Holds::yes; };
    if (group == 5) {
      EXPECT_TRUE(is(DietClass::poultry)) << name;
      ++compared;
    } else if (group == 10) {
      EXPECT_TRUE(is(DietClass::pork)) << name;
      ++compared;
    } else if (group == 13) {
      EXPECT_TRUE(is(DietClass::beef)) << name;
      ++compared;
    } else if (group == 17) {
      EXPECT_TRUE(is(DietClass::lamb) || is(DietClass::game) || is(DietClass::beef)) << name;
      ++compared;
    }
  }
  EXPECT_GE(compared, 50);
}

TEST(DietClasses, ANarrowerClassIsOfTheWiderOne) {
  EXPECT_EQ(holds(food("bacon"), DietClass::meat), Holds::yes);
  EXPECT_EQ(holds(food("lard"), DietClass::animal_fat), Holds::yes);
  // Meat of a kind that is not said may be pork.
  EXPECT_EQ(holds(food("hot dog"), DietClass::pork), Holds::read_the_label);
  EXPECT_EQ(holds(food("ground beef"), DietClass::pork), Holds::no);
}

TEST(DietWords, StandForClasses) {
  EXPECT_EQ(classes_called("Fowl"), std::vector<AnyClass>{DietClass::poultry});
  EXPECT_EQ(classes_called("shellfish"),
            (std::vector<AnyClass>{Allergen::crustaceans, Allergen::molluscs}));
  EXPECT_EQ(diet_called("nut-free"),
            (std::vector<AnyClass>{Allergen::tree_nuts, Allergen::peanut}));
  EXPECT_EQ(diet_called("no pork"), std::vector<AnyClass>{DietClass::pork});
  EXPECT_TRUE(diet_called("no wishes").empty());
  EXPECT_TRUE(classes_called("wishes").empty());
}

TEST(Kinds, TellVegetablesFromFruitAndStarch) {
  for (const char* name : {"carrot", "spinach", "tomato", "frozen pea", "canned tomato", "mushroom",
                           "onion", "green bean"}) {
    Book book;
    if (const auto id = book.find(name)) {
      EXPECT_TRUE(is_of_kind(book.get(*id), "vegetables")) << name;
    }
  }
  EXPECT_FALSE(is_of_kind(food("potato"), "vegetables"));
  EXPECT_FALSE(is_of_kind(food("banana"), "vegetables"));
  EXPECT_TRUE(is_of_kind(food("banana"), "fruit"));
  EXPECT_TRUE(is_of_kind(food("banana"), "fruit and vegetables"));
  EXPECT_TRUE(is_of_kind(food("brown lentil"), "pulses"));
  EXPECT_FALSE(is_of_kind(food("potato chip"), "vegetables"));
}

} // namespace
} // namespace manciple::foods
