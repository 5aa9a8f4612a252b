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

// The loaf that is bought has a maker who says that it is free of milk; of the one that has to be
// there before the shopping is, nobody knows what is in it.
TEST_F(MakersTest, ALabelIsReadOfWhatIsStillToFind) {
  house.write("plans/stores/corner.yaml", "shop: Corner\nprices: {french bread: {offer: loaf 1.99, "
                                          "allergens: {contains: [wheat]}}}\n");
  house.plan("2027-03-02: {dinner: toast}");
  EXPECT_TRUE(house.good().resolved.labels.empty());
  house.plan("2027-03-01: {breakfast: toast}, 2027-03-02: {dinner: toast}");
  const emit::Compiled compiled = house.good();
  EXPECT_EQ(compiled.shopping.shortfalls.size(), 1U);
  ASSERT_EQ(compiled.resolved.labels.size(), 1U);
  EXPECT_EQ(compiled.resolved.labels[0].what, "milk");
}

// The ciabatta of the shop is free of milk; of the one in the house nobody knows, and both are
// eaten in the place of another bread.
TEST_F(MakersTest, ALabelIsReadOfTheFoodThatServes) {
  house.household("any of these: [{french bread: 1, ciabatta: 1}]\n", "[milk]");
  house.write("plans/stores/corner.yaml",
              "shop: Corner\nprices: {french bread: loaf 9.99, ciabatta: {offer: loaf 0.99, "
              "allergens: {contains: [wheat]}}}\n");
  house.plan("2027-03-02: {dinner: toast}");
  const auto is_of_ciabatta = [](const emit::Compiled& compiled) {
    const auto& labels = compiled.resolved.labels;
    return std::any_of(labels.begin(), labels.end(), [&](const resolve::LabelCheck& label) {
      return compiled.kitchen.food(label.food).name == "ciabatta";
    });
  };
  EXPECT_FALSE(is_of_ciabatta(house.good()));
  house.write("plans/on-hand.yaml", "date: 2027-03-01\non hand: [1 loaf ciabatta]\n");
  EXPECT_TRUE(is_of_ciabatta(house.good()));
}

} // namespace
} // namespace manciple
