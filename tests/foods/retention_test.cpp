// What cooking leaves of vitamins, from rows of USDA SR28: raw and cooked, by dry weight.
#include "foods/retention.hpp"

#include "foods/book.hpp"

#include <gtest/gtest.h>

namespace manciple::foods {
namespace {

const Food& of(Book& book, std::string_view name) {
  return book.get(book.find(name).value());
}

TEST(Retention, IsOfDryWeight) {
  Book book;
  // 11090: 89.2 mg in 100 - 89.30 g; 11091: 64.9 mg in 100 - 89.25 g.
  EXPECT_NEAR(retained(of(book, "broccoli"), Nutrient::vitamin_c), (64.9 / 10.75) / (89.2 / 10.7),
              1e-6);
  // 11352: 19.7 mg in 100 - 79.25 g; 11365: 13.0 mg in 100 - 76.98 g.
  EXPECT_NEAR(retained(of(book, "potato"), Nutrient::vitamin_c), (13.0 / 23.02) / (19.7 / 20.75),
              1e-6);
}

TEST(Retention, IsNeverMoreThanAllAndOnlyOfWhatHeatDestroys) {
  Book book;
  EXPECT_EQ(retained(of(book, "asparagus"), Nutrient::folate), 1);
  EXPECT_EQ(retained(of(book, "broccoli"), Nutrient::calcium), 1);
  EXPECT_EQ(retained(of(book, "olive oil"), Nutrient::vitamin_c), 1);
}

TEST(Retention, LeavesOutRowsThatAreNotOfLikeSamples) {
  Book book;
  EXPECT_EQ(retained(of(book, "kale"), Nutrient::folate), 1); // 141 ug raw, 13 cooked
  EXPECT_NEAR(retained(of(book, "kale"), Nutrient::vitamin_c), .62, .01);
}

TEST(Retention, LeavesFiguresOfFormsAlone) {
  Book book;
  const Food& tomato = of(book, "tomato");
  ASSERT_TRUE(tomato.nutrients);
  const auto heated_tomato = heated(tomato, Form::plain);
  ASSERT_TRUE(heated_tomato);
  EXPECT_LT(*(*heated_tomato)[Nutrient::folate], *(*tomato.nutrients)[Nutrient::folate]);
  EXPECT_EQ((*heated_tomato)[Nutrient::protein], (*tomato.nutrients)[Nutrient::protein]);
  const Food& lemon = of(book, "lemon");
  ASSERT_NE(lemon.nutrients_of(Form::juice), nullptr);
  EXPECT_EQ((*heated(lemon, Form::juice))[Nutrient::vitamin_c],
            (*lemon.nutrients_of(Form::juice))[Nutrient::vitamin_c]);
}

} // namespace
} // namespace manciple::foods
