#include "foods/swaps.hpp"

#include "foods/book.hpp"
#include "foods/convert.hpp"

#include <gtest/gtest.h>

#include <map>

namespace manciple::foods {
namespace {

TEST(Swaps, AreFoodsOfTheReferenceThatAreMeasuredAlikeAndHoldNoOtherAllergens) {
  Book book;
  std::map<int, const Food*> first;
  for (const Swap& swap : usual_swaps) {
    const auto id = book.find(swap.food);
    ASSERT_TRUE(id) << swap.food;
    const Food& food = book.get(*id);
    EXPECT_EQ(food.name, swap.food);
    const Food*& other = first.try_emplace(swap.group, &food).first->second;
    EXPECT_EQ(basis(food), basis(*other)) << swap.food;
    ASSERT_EQ(food.allergens.has_value(), other->allergens.has_value()) << swap.food;
    if (food.allergens) {
      EXPECT_EQ(food.allergens->contains, other->allergens->contains) << swap.food;
    }
  }
}

} // namespace
} // namespace manciple::foods
