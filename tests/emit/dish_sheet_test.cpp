#include "emit/dish_sheet.hpp"

#include "house.hpp"

#include <gtest/gtest.h>

namespace manciple::emit {
namespace {

const Taken* find(const DishSheet& sheet, std::string_view name) {
  for (const Taken& one : sheet.taken) {
    if (one.name == name) {
      return &one;
    }
  }
  return nullptr;
}

class DishSheets : public ::testing::Test {
protected:
  void SetUp() override {
    house.write("recipes/stew.yaml",
                "name: Stew\nserves: 4\ningredients:\n  - 2 large onions, diced\n  - 1 lb ground "
                "beef\n  - 1-2 tsp salt\n  - 1 cup all-purpose flour\nmethod:\n  - {do: Brown the "
                "beef, hands on: 10 min, on: burner}\n  - {do: Add the onions and simmer, hands "
                "on: 2 min, then: 30 min, on: burner}\n  - {do: Stir in the salt and the rest, "
                "hands on: 1 min}\n");
  }
  House house;
};

TEST_F(DishSheets, HaveTheAmountsOfThisMaking) {
  // For two, of a recipe for four: half of everything.
  house.plan("2027-03-02: {dinner: stew}");
  const Compiled compiled = house.good();
  const DishSheet sheet = dish_sheet(compiled, compiled.resolved.makings.at(0));
  ASSERT_EQ(compiled.resolved.makings.at(0).times, measure::Rational(1, 2));
  ASSERT_NE(find(sheet, "ground beef"), nullptr);
  EXPECT_EQ(find(sheet, "ground beef")->amount, "8 oz");
  EXPECT_EQ(find(sheet, "salt")->amount, "1/2 to 1 tsp");
  const Taken* onion = find(sheet, "onion");
  ASSERT_NE(onion, nullptr);
  EXPECT_EQ(onion->amount, "1 large");
  EXPECT_EQ(onion->how, "diced");
}

TEST_F(DishSheets, StandInTheOrderOfUseWithTheStepThatTakesThem) {
  house.plan("2027-03-02: {dinner: stew}");
  const Compiled compiled = house.good();
  const DishSheet sheet = dish_sheet(compiled, compiled.resolved.makings.at(0));
  std::vector<std::string> order;
  for (const Taken& one : sheet.taken) {
    order.push_back(one.name);
  }
  EXPECT_EQ(order, (std::vector<std::string>{"ground beef", "onion", "salt", "all-purpose flour"}));
  ASSERT_EQ(sheet.steps.size(), 3U);
  EXPECT_EQ(find(sheet, "onion")->step, 1U);
  EXPECT_EQ(find(sheet, "all-purpose flour")->step, 2U) << "the rest";
  EXPECT_EQ(sheet.steps[1].then, 30);
  EXPECT_EQ(sheet.steps[1].on, "burner");
  ASSERT_TRUE(sheet.steps[2].clock);
  EXPECT_LE(*sheet.steps[2].clock, 18 * 60 + 30);
}

TEST_F(DishSheets, NeverCutALeafAndKnowItByItsShortName) {
  house.write(
      "recipes/broth.yaml",
      "name: Broth\nserves: 4\ningredients:\n  - 3 bay leaves\n  - 3 carrots\nmethod:\n  - "
      "{do: Cut the carrots, hands on: 5 min}\n  - {do: Add the bay and simmer, hands on: 1 "
      "min, then: 30 min, on: burner}\n");
  house.plan("2027-03-02: {dinner: broth}");
  const Compiled compiled = house.good();
  const DishSheet sheet = dish_sheet(compiled, compiled.resolved.makings.at(0));
  ASSERT_EQ(compiled.resolved.makings.at(0).times, measure::Rational(1, 2));
  const Taken* leaf = find(sheet, "bay leaf");
  ASSERT_NE(leaf, nullptr);
  EXPECT_EQ(leaf->amount, "1");
  EXPECT_EQ(leaf->step, 1U);
  ASSERT_NE(find(sheet, "carrots"), nullptr);
  EXPECT_EQ(find(sheet, "carrots")->amount, "1 1/2");
}

TEST_F(DishSheets, SayFromWhichBoxAndWhatWasCutBefore) {
  house.write("recipes/stock.yaml",
              "name: Stock\nserves: 4\nmakes: 4 cups\ningredients: [1 lb onions]\nmethod:\n  - "
              "{do: Simmer, hands on: 5 min, then: 60 min, on: burner}\nkeeps: {fridge: 3 days, "
              "freezer: 2 months}\n");
  house.write("recipes/soup.yaml",
              "name: Soup\nserves: 2\ningredients:\n  - 2 cups stock\n  - 1 lb ground "
              "beef\nmethod:\n  - {do: Heat the stock, hands on: 5 min, on: burner}\n");
  house.plan("2027-03-02: {dinner: soup}, 2027-03-20: {dinner: soup}",
             "prep:\n  - {date: 2027-03-01, from: \"13:00\", until: \"17:00\", cooks: 1}\n");
  const Compiled compiled = house.good();
  bool fridge = false;
  bool freezer = false;
  for (const resolve::Making& making : compiled.resolved.makings) {
    if (compiled.kitchen.recipe(making.recipe).name != "Soup") {
      continue;
    }
    const DishSheet sheet = dish_sheet(compiled, making);
    const Taken* stock = find(sheet, "Stock");
    ASSERT_NE(stock, nullptr);
    EXPECT_EQ(stock->from, "made on Mon 1 Mar");
    fridge = fridge || stock->place == foods::Place::fridge;
    freezer = freezer || stock->place == foods::Place::freezer;
  }
  EXPECT_TRUE(fridge);
  EXPECT_TRUE(freezer);
}

TEST_F(DishSheets, SayTheOvenAsItsDialDoes) {
  house.household("measures: metric\n");
  house.recipe("roast", "1 kg potatoes",
               "method:\n  - {do: Roast, hands on: 5 min, then: 40 min, on: oven, at: 200 C}\n");
  house.plan("2027-03-02: {dinner: roast}");
  const Compiled compiled = house.good();
  const DishSheet sheet = dish_sheet(compiled, compiled.resolved.makings.at(0));
  ASSERT_EQ(sheet.steps.size(), 1U);
  EXPECT_EQ(sheet.steps[0].on, "oven, 200 °C");
}

} // namespace
} // namespace manciple::emit
