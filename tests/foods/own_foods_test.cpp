// Figures in a household's own file of foods.
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

// Onions and garlic turn sharp, apples brown, leaves wilt. Common practice, no source.
TEST(OwnFoods, TheReferenceKnowsWhatIsNotCutAhead) {
  Book book;
  const auto days = [&](const char* name) {
    return book.get(book.find(name).value()).keeps.once_cut();
  };
  for (const char* name : {"apple", "potato", "romaine lettuce", "tomato", "mushroom", "basil"}) {
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
