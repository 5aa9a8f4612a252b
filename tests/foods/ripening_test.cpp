#include "foods/ripening.hpp"

#include "all_foods.hpp"

#include <gtest/gtest.h>

namespace manciple::foods {
namespace {

Food known(std::string_view name) {
  Book book;
  return book.get(*book.find(name));
}

// FSIS storage data: avocados 4 days, peaches 5 days, in the fridge and ripe; tomatoes "until ripe,
// then 7 days". Ripening and holding: common practice, no source.
TEST(Ripening, ProlongsHowLongFruitKeepsThatIsBoughtHard) {
  EXPECT_EQ(keeps_ripe(known("avocado")), 4);
  EXPECT_EQ(keeps_hard(known("avocado")), 7 + 4 + 4);
  EXPECT_EQ(keeps_hard(known("peach")), 2 + 5);
  EXPECT_EQ(keeps_from_shop(known("tomato")), 3 + 7);
  EXPECT_EQ(keeps_from_shop(known("banana")), 5); // ripened and put into the fridge it is no longer
  EXPECT_EQ(keeps_hard(known("apple")), std::nullopt);
  EXPECT_EQ(keeps_from_shop(known("egg")), known("egg").keeps.fridge->value);
}

TEST(Ripening, IsOfFruitThatIsKnownToKeepOnceRipe) {
  int ripening = 0;
  for (const Food& food : all_foods()) {
    if (food.ripens) {
      EXPECT_TRUE(keeps_hard(food)) << food.name;
      EXPECT_GE(*keeps_from_shop(food), *keeps_ripe(food)) << food.name;
      ++ripening;
    } else {
      EXPECT_FALSE(food.keeps.hard) << food.name;
    }
  }
  EXPECT_GE(ripening, 12);
}

} // namespace
} // namespace manciple::foods
