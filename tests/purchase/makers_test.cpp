#include "house.hpp"

namespace manciple {
namespace {

class MakersTest : public testing::Test {
protected:
  void SetUp() override {
    house.household("", "[milk]");
    house.recipe("toast", "1 loaf french bread");
    house.write("plans/stores/corner.yaml",
                "shop: Corner\nprices: {french bread: {offer: loaf 1.99, "
                "allergens: {contains: [wheat, milk]}}}\n");
    house.write("plans/stores/market.yaml",
                "shop: Market\nprices: {french bread: {offer: loaf 2.99, "
                "allergens: {contains: [wheat]}}}\n");
  }
  std::string shop_of_the_bread() {
    const emit::Compiled compiled = house.good();
    EXPECT_EQ(compiled.shopping.lines.size(), 1U);
    return compiled.kitchen.shop(compiled.shopping.visits.front().shop).name;
  }

  House house;
};

TEST_F(MakersTest, WhatSomebodyMustNotHaveIsBoughtOfAnotherMaker) {
  house.plan_with_trip("2027-03-02: {dinner: toast}", "[corner, market]");
  EXPECT_EQ(shop_of_the_bread(), "Market");
  EXPECT_TRUE(house.said("P013"));
}

TEST_F(MakersTest, WhoDoesNotEatOfItMattersNot) {
  house.plan_with_trip("2027-03-02: {dinner: {dish: toast, eaten by: [Ada]}}", "[corner, market]");
  EXPECT_EQ(shop_of_the_bread(), "Corner");
  EXPECT_FALSE(house.said("P013"));
}

TEST_F(MakersTest, WhereThereIsNoOtherItIsStillToFind) {
  house.write("plans/stores/market.yaml",
              "shop: Market\nwalk: [produce]\nprices: {onion: 1.00/lb}\n");
  house.write("plans/stores/corner.yaml",
              "shop: Corner\nwalk: [bakery]\nprices: {french bread: {offer: loaf 1.99, "
              "allergens: {contains: [wheat, milk]}}}\n");
  house.plan_with_trip("2027-03-02: {dinner: toast}", "[corner, market]");
  const emit::Compiled compiled = house.good();
  for (const purchase::Line& line : compiled.shopping.lines) {
    EXPECT_FALSE(line.cost); // another one, of which no price is known
  }
  EXPECT_TRUE(house.said("P013"));
}

} // namespace
} // namespace manciple
