// Figures in a household's own file of foods.
#include "foods/errors.hpp"
#include "foods/own_file.hpp"

#include <gtest/gtest.h>

namespace manciple::foods {
namespace {

int keeps_cut(const std::string& keeps) {
  OwnFile own("leek pie: {department: produce, keeps: {" + keeps + "}}\n");
  EXPECT_EQ(own.diagnostics.errors(), 0U) << own.said();
  return own.food("leek pie").keeps.once_cut();
}

TEST(OwnFoods, OnceCutAFoodKeepsAsLongAsOpenedUnlessItSays) {
  EXPECT_EQ(keeps_cut("fridge: [9 days, x]"), 0);
  EXPECT_EQ(keeps_cut("opened: [5 days, x]"), 5);
  EXPECT_EQ(keeps_cut("opened: [1 day, x]"), 0); // not worth cutting ahead
  EXPECT_EQ(keeps_cut("opened: [5 days, x], cut: [2 days, x]"), 2);
  EXPECT_EQ(keeps_cut("opened: [1 day, x], cut: [2 days, x]"), 1);
  EXPECT_EQ(keeps_cut("cut: [3 days, x]"), 3);
  EXPECT_EQ(keeps_cut("opened: [5 days, x], cut: [when used, x]"), 0);
}

TEST(OwnFoods, WhatAHouseDoesNotChangeOfAFoodStays) {
  OwnFile own("onion: {keeps: {opened: [9 days, our kitchen]}}\n"
              "leg of lamb: {roasts: {7 lb: [25 min/lb at 325 F, our oven]}}\n");
  EXPECT_EQ(own.diagnostics.errors(), 0U) << own.said();
  EXPECT_EQ(own.food("onion").keeps.once_cut(), 2);
  const auto& roasts = own.food("leg of lamb").roasts;
  ASSERT_EQ(roasts.size(), 2U);
  EXPECT_EQ(roasts[0].pounds, 7);
  EXPECT_EQ(roasts[0].minutes_a_pound, 25);
  EXPECT_EQ(roasts[0].source, "our oven");
  EXPECT_EQ(roasts[1].pounds, 9);
  EXPECT_EQ(roasts[1].minutes_a_pound, 15);
}

TEST(OwnFoods, RoastingTimesAreByWeight) {
  OwnFile own(
      "goose: {roasts: {12 lb: [16 min/lb at 350 F, x], 8.5 lb: [20 min/lb at 350 F, x]}}\n");
  EXPECT_EQ(own.diagnostics.errors(), 0U) << own.said();
  const auto& roasts = own.food("goose").roasts;
  ASSERT_EQ(roasts.size(), 2U);
  EXPECT_EQ(roasts[0].pounds, Rational(17, 2));
  EXPECT_EQ(roasts[0].fahrenheit, 350);
  EXPECT_EQ(roasts[1].minutes_a_pound, 16);
}

TEST(OwnFoods, WhatCannotBeReadIsAnError) {
  for (const std::string wrong :
       {"keeps: {opened: [when used, x]}", "keeps: {cut: [soon, x]}", "keeps: {cut: [2 days]}",
        "roasts: {7: [20 min/lb at 350 F, x]}", "roasts: {7 lb: [20 min/lb, x]}",
        "roasts: {7 lb: [20 min/lb at 350 C, x]}", "roasts: {7 lb: [20 min/lb at 350 F hot, x]}",
        "roasts: {7 lb: [20 min/lb at 900 F, x]}", "roasts: {7 lb each: [20 min/lb at 350 F, x]}",
        "roasts: {7 lb: [0 min/lb at 350 F, x]}"}) {
    const OwnFile own("goose: {" + wrong + "}\n");
    EXPECT_TRUE(own.diagnostics.said(errors::bad_figure)) << wrong;
  }
}

// Onions and garlic turn sharp, apples brown, leaves wilt. Common practice, no source.
TEST(OwnFoods, TheReferenceKnowsWhatIsNotCutAhead) {
  Book book;
  const auto days = [&](const char* name) {
    return book.get(book.find(name).value()).keeps.once_cut();
  };
  for (const char* name : {"apple", "potato", "celery root", "romaine lettuce", "kale",
                           "cavolo nero", "tomato", "mushroom", "basil"}) {
    EXPECT_EQ(days(name), 0) << name;
  }
  for (const char* name : {"onion", "garlic", "leek"}) {
    EXPECT_EQ(days(name), 2) << name;
  }
  EXPECT_GT(days("carrot"), 3);
  // Whatever they are called.
  book.speak(measure::System::metric);
  EXPECT_EQ(days("eggplant"), 0);
  EXPECT_EQ(days("arugula"), 0);
}

} // namespace
} // namespace manciple::foods
