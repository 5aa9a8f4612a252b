#include "foods/classes.hpp"

#include "foods/book.hpp"

#include <gtest/gtest.h>

namespace manciple::foods {
namespace {

bool is_called(Book& book, std::string_view name, Class what) {
  return is(book.get(book.find(name).value()), what);
}

TEST(Classes, ListNamesOfFoodsOnly) {
  Book book;
  for (const std::string_view name : names_in_classes()) {
    const auto id = book.find(name);
    ASSERT_TRUE(id) << name;
    EXPECT_EQ(book.get(*id).name, name);
  }
}

TEST(Classes, AreThoseOfAFoodWhateverItIsCalled) {
  Book book;
  book.speak(measure::System::metric);
  EXPECT_EQ(book.get(book.find("ground beef").value()).name, "beef mince");
  EXPECT_TRUE(is_called(book, "ground beef", Class::minced));
  EXPECT_TRUE(is_called(book, "prawns", Class::shellfish));
  EXPECT_TRUE(is_called(book, "double cream", Class::milk));
  EXPECT_TRUE(is_called(book, "fresh coriander", Class::herb));
}

TEST(Classes, TellRawFromReadyToEat) {
  Book book;
  EXPECT_TRUE(is_raw_animal(book.get(book.find("whole chicken").value())));
  EXPECT_FALSE(is_raw_animal(book.get(book.find("deli turkey").value())));
  EXPECT_FALSE(is_raw_animal(book.get(book.find("canned tuna").value())));
}

} // namespace
} // namespace manciple::foods
