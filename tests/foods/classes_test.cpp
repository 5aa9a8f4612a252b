#include "foods/classes.hpp"

#include "all_foods.hpp"
#include "foods/errors.hpp"
#include "foods/own_file.hpp"

#include <gtest/gtest.h>

namespace manciple::foods {
namespace {

bool is_called(Book& book, std::string_view name, Class what) {
  return is(book.get(book.find(name).value()), what);
}

Food food_of(Department department, std::string name) {
  Food food;
  food.name = std::move(name);
  food.department = department;
  return food;
}

TEST(Classes, EveryWordIsRead) {
  for (const std::string_view word : safety_class_words()) {
    ASSERT_TRUE(parse_safety_class(word)) << word;
    EXPECT_EQ(name(*parse_safety_class(word)), word);
  }
  EXPECT_EQ(parse_safety_class("raw poultry"), Class::poultry);
  EXPECT_EQ(parse_safety_class("honey"), Class::honey);
  EXPECT_FALSE(parse_safety_class("bread")); // its department says so
}

TEST(Classes, EveryRecordThatSaysHasASource) {
  int count = 0;
  for (const Food& food : all_foods()) {
    if (food.safety) {
      EXPECT_FALSE(food.safety->source.empty()) << food.name;
      ++count;
    }
  }
  EXPECT_GT(count, 400);
}

TEST(Classes, AreThoseOfAFoodWhateverItIsCalled) {
  Book book;
  book.speak(measure::System::metric);
  EXPECT_EQ(book.get(book.find("ground beef").value()).name, "beef mince");
  EXPECT_TRUE(is_called(book, "ground beef", Class::minced));
  EXPECT_TRUE(is_called(book, "prawns", Class::shellfish));
  EXPECT_TRUE(is_called(book, "double cream", Class::milk));
  EXPECT_TRUE(is_called(book, "fresh coriander", Class::herb));
  EXPECT_EQ(book.get(book.find("almond flour").value()).name, "ground almond");
  EXPECT_TRUE(is_called(book, "almond flour", Class::flour));
}

TEST(Classes, TellRawFromReadyToEat) {
  Book book;
  EXPECT_TRUE(is_raw_animal(book.get(book.find("whole chicken").value())));
  EXPECT_FALSE(is_raw_animal(book.get(book.find("deli turkey").value())));
  EXPECT_FALSE(is_raw_animal(book.get(book.find("canned tuna").value())));
}

TEST(Classes, ANarrowClassIsOfTheWiderOne) {
  Book book;
  EXPECT_TRUE(is_called(book, "ground turkey", Class::poultry));
  EXPECT_TRUE(is_called(book, "ground turkey", Class::minced));
  EXPECT_TRUE(is_called(book, "ground turkey", Class::meat));
  EXPECT_FALSE(is_called(book, "beef steak", Class::minced));
  EXPECT_TRUE(is_called(book, "salami", Class::ready_meat));
  EXPECT_FALSE(is_called(book, "cooked chicken", Class::cold_cut));
  EXPECT_TRUE(is_called(book, "basil", Class::aromatic));
  EXPECT_FALSE(is_called(book, "garlic", Class::herb));
}

// What must get as hot as raw meat and fish in the middle is raw: but hot dogs are cooked and
// heated again, and salt cod is cured.
TEST(Classes, WhatMustBeCookedThroughIsRaw) {
  int count = 0;
  for (const Food& food : all_foods()) {
    const bool sold_raw =
        food.department == Department::meat || food.department == Department::fish;
    if (sold_raw && food.safe_at && food.safe_at->value.fahrenheit >= 145 &&
        food.name != "hot dog" && food.name != "salt cod") {
      EXPECT_TRUE(is_raw_animal(food)) << food.name;
      ++count;
    }
  }
  EXPECT_GT(count, 100);
}

TEST(Classes, WhatIsLikeAnotherIsOfItsClass) {
  Book book;
  for (const auto& [one, other, what] :
       std::initializer_list<std::tuple<const char*, const char*, Class>>{
           {"coconut milk", "light coconut milk", Class::milk},
           {"whole milk", "lactose-free milk", Class::milk},
           {"whole milk", "chocolate milk", Class::milk},
           {"whole milk", "eggnog", Class::milk},
           {"kefir", "drinking yogurt", Class::milk},
           {"cream cheese", "cream cheese with herbs", Class::milk},
           {"queso fresco", "paneer", Class::milk},
           {"sour cream", "sour cream dip", Class::milk},
           {"plain yogurt", "tzatziki", Class::milk},
           {"chocolate chip", "mini chocolate chip", Class::sugar},
           {"granulated sugar", "sugar cube", Class::sugar},
           {"granulated sugar", "vanilla sugar", Class::sugar},
           {"agave syrup", "date syrup", Class::sugar},
           {"agave syrup", "rice syrup", Class::sugar},
           {"maple syrup", "pancake syrup", Class::sugar},
           {"ginger root", "galangal", Class::aromatic},
           {"ginger root", "turmeric root", Class::aromatic},
           {"curry leaf", "lime leaf", Class::aromatic},
           {"lemon balm", "lemongrass", Class::aromatic},
           {"stir-fry chicken", "chicken kiev", Class::poultry},
       }) {
    EXPECT_TRUE(is_called(book, one, what)) << one;
    EXPECT_TRUE(is_called(book, other, what)) << other;
  }
}

TEST(Classes, AnOilIsNoVinegar) {
  Book book;
  EXPECT_TRUE(is_called(book, "olive oil", Class::oil));
  EXPECT_FALSE(is_called(book, "white vinegar", Class::oil));
  EXPECT_TRUE(is_called(book, "white vinegar", Class::acid));
}

TEST(Classes, WhereNoRecordSaysTheDepartmentDoes) {
  Food food = food_of(Department::meat, "kangaroo steak");
  EXPECT_TRUE(is_assumed(food));
  EXPECT_TRUE(is(food, Class::meat));
  EXPECT_FALSE(is(food, Class::poultry));
  food.safety = SafetyClasses{};
  EXPECT_FALSE(is_assumed(food));
  EXPECT_FALSE(is(food, Class::meat));
  EXPECT_TRUE(is(food_of(Department::fish, "bream"), Class::fish));
  EXPECT_TRUE(is(food_of(Department::grains, "fonio"), Class::starch));
  EXPECT_TRUE(is(food_of(Department::baking, "chestnut flour"), Class::flour));
  EXPECT_FALSE(is(food_of(Department::produce, "flour"), Class::flour));
  EXPECT_TRUE(is(food_of(Department::oils, "fig vinegar"), Class::acid));
  EXPECT_FALSE(is_assumed(food_of(Department::oils, "fig oil")));
}

TEST(Classes, AFoodOfOnesOwnSaysThem) {
  OwnFile own("kangaroo mince:\n  department: meat\n"
              "  safety: {classes: [minced meat], source: our butcher}\n"
              "whole chicken:\n  safety: {classes: [cold cut], source: smoked by us}\n");
  EXPECT_EQ(own.diagnostics.errors(), 0U) << own.said();
  EXPECT_TRUE(is(own.food("kangaroo mince"), Class::minced));
  EXPECT_TRUE(is(own.food("kangaroo mince"), Class::meat));
  EXPECT_FALSE(is(own.food("whole chicken"), Class::poultry));
  EXPECT_TRUE(is(own.food("whole chicken"), Class::ready_meat));
}

TEST(Classes, AFoodOfOnesOwnKeepsThoseThatItDoesNotChange) {
  OwnFile own("whole chicken: {keeps: {fridge: [1 day, our kitchen]}}\n"
              "farm eggs: {department: dairy, aliases: [egg]}\n");
  EXPECT_EQ(own.diagnostics.errors(), 0U) << own.said();
  EXPECT_TRUE(is(own.food("whole chicken"), Class::poultry));
  // It stands for all eggs of the house.
  EXPECT_EQ(own.food("egg").name, "farm eggs");
  EXPECT_TRUE(is(own.food("egg"), Class::egg));
}

TEST(Classes, AFoodInAMeasureItIsNotKnownByIsStillThatFood) {
  Book book;
  const auto by_volume = [&](std::string_view name) {
    const Food& known = book.get(book.find(name).value());
    return book.get(book.as_written(name, measure::Dimension::volume, {}, &known));
  };
  const Food ham = by_volume("ham");
  EXPECT_EQ(ham.name, "ham (by volume)");
  EXPECT_TRUE(is(ham, Class::cold_cut));
  EXPECT_FALSE(is(ham, Class::meat));
  EXPECT_TRUE(is(by_volume("quail egg"), Class::egg));
  EXPECT_FALSE(may_be(by_volume("hot dog bun"), Class::cold_cut));
  EXPECT_TRUE(is(by_volume("stilton cheese"), Caution::soft_cheese));
}

TEST(Classes, AWordForNoneIsAnError) {
  const OwnFile own("leek: {safety: {classes: [raw poltry], source: x}}\n");
  EXPECT_TRUE(own.diagnostics.said(errors::unknown_word));
  EXPECT_NE(own.said().find("raw poultry"), std::string::npos) << own.said();
}

} // namespace
} // namespace manciple::foods
