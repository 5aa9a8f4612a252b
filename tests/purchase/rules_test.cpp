#include "purchase/rules.hpp"

#include <gtest/gtest.h>

namespace manciple::purchase {
namespace {

TEST(UsingUp, IsForATenthOfWhatThereWasAndNoScraps) {
  foods::Book book;
  const foods::Food& onion = book.get(*book.find("onion"));
  EXPECT_TRUE(is_worth_using_up(onion, 100, 1000));
  EXPECT_FALSE(is_worth_using_up(onion, 99, 1000));
  EXPECT_FALSE(is_worth_using_up(onion, 20, 100)); // grams: scraps, though a fifth
}

} // namespace
} // namespace manciple::purchase
