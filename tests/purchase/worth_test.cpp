#include "purchase/worth.hpp"

#include "emit/emit.hpp"
#include "house.hpp"
#include "purchase/usual_price.hpp"

namespace manciple {
namespace {

measure::Rational price_of(const emit::Compiled& compiled, std::string_view food) {
  auto kitchen = compiled.kitchen;
  return purchase::replacement_price(kitchen, *kitchen.foods.find(food)).value_or(-1);
}

// Eggs at 3.00 a dozen, of which twelve are in the house.
void omelet(House& house) {
  house.write("plans/on-hand.yaml",
              "date: 2027-03-01\non hand: [\"12 eggs, fridge, until 28 Mar\"]\n");
  house.recipe("omelet", "6 eggs, 1 lb onion");
  house.plan("2027-03-02: {dinner: omelet}");
}

TEST(Worth, WhatWasInTheHouseCostsAMealWhatItWouldCostAgain) {
  House house;
  omelet(house);
  const auto compiled = house.good();
  EXPECT_EQ(compiled.worth.dishes[0][0], 100); // a pound of onions
  EXPECT_EQ(compiled.worth.replaced.dishes[0][0], 100 + 150);
  EXPECT_TRUE(compiled.worth.unknown.empty());
}

TEST(Worth, AllPartsMakeWhatIsBoughtAndWhatIsInTheHouse) {
  House house;
  omelet(house);
  const auto compiled = house.good();
  EXPECT_EQ(compiled.worth.total(), 100);
  EXPECT_EQ(compiled.worth.replaced.total(), 100 + 300);
  EXPECT_EQ(compiled.worth.replaced.kept + compiled.worth.replaced.wasted, 150);
}

TEST(Worth, WhatHasNoKnownPriceIsNamedAndNotCountedAsNothing) {
  House house;
  house.write(
      "plans/on-hand.yaml",
      "date: 2027-03-01\non hand: [\"1 lb butter, fridge\", \"12 eggs, fridge, until 28 Mar\"]\n");
  house.recipe("omelet", "6 eggs, 2 tbsp butter");
  house.plan("2027-03-02: {dinner: omelet}");
  const auto compiled = house.good();
  EXPECT_EQ(compiled.worth.replaced.dishes[0][0], 150);
  ASSERT_EQ(compiled.worth.unknown_in[0][0].size(), 1U);
  EXPECT_EQ(compiled.kitchen.food(*compiled.worth.unknown_in[0][0].begin()).name, "butter");
  const std::string money = emit::money_markdown(compiled);
  EXPECT_NE(money.find("| omelet | 0.00 | at least 1.50 |"), std::string::npos) << money;
  EXPECT_NE(money.find("no shop's price is known: butter."), std::string::npos) << money;
}

TEST(Worth, ALineWithoutAPriceCountsAsMuchAsElsewhere) {
  House house;
  house.write("plans/stores/corner.yaml", "shop: Corner\nprices:\n  egg: 12 large ?\n");
  house.write("plans/stores/far.yaml", "shop: Far\nprices: {egg: 12 large 6.00}\n");
  house.recipe("omelet", "6 eggs");
  house.plan("2027-03-02: {dinner: omelet}");
  const auto compiled = house.good();
  EXPECT_EQ(compiled.worth.dishes[0][0], 0);
  EXPECT_EQ(compiled.worth.replaced.dishes[0][0], 300);
}

TEST(Worth, AReplacementIsBoughtAtTheRegularPriceOfAShopOfTheTripsWithoutTax) {
  House house;
  house.write("plans/stores/corner.yaml",
              "shop: Corner\ntax: {produce: 10 %}\nprices: {onion: {offer: 1.00/lb, "
              "sale: {price: 0.50, until: 2027-03-31}}}\n");
  house.write("plans/stores/far.yaml", "shop: Far\nprices: {onion: 0.10/lb, egg: 12 large 6.00}\n");
  house.recipe("stew", "1 lb onion");
  house.plan("2027-03-02: {dinner: stew}");
  const auto compiled = house.good();
  EXPECT_EQ(price_of(compiled, "onion") * measure::Rational(45359237, 100000), 100);
  EXPECT_GT(price_of(compiled, "egg"), 0); // sold only where no trip goes
  EXPECT_EQ(price_of(compiled, "butter"), -1);
}

} // namespace
} // namespace manciple
