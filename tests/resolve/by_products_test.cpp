#include "emit/emit.hpp"
#include "house.hpp"

#include <algorithm>

namespace manciple {
namespace {

using measure::Rational;
using resolve::ByProduct;

constexpr std::string_view pound_and_simmer =
    "made in: exactly\nmethod: [{do: Simmer, hands on: 10 min, then: 1 h, on: burner}]\n";

std::string further(const std::string& more) {
  return std::string(pound_and_simmer) + more;
}

// How much of a food is to be bought or taken from what is in the house, as purchased.
Rational used(emit::Compiled& compiled, std::string_view food) {
  const auto id = compiled.kitchen.foods.find(food);
  Rational sum = 0;
  for (const resolve::Use& use : compiled.resolved.uses) {
    sum += use.food == id ? use.amount : Rational(0);
  }
  return sum;
}

// On the day of that making: how often the recipe is made.
Rational made(const emit::Compiled& compiled, std::string_view recipe) {
  Rational sum = 0;
  for (const resolve::Making& making : compiled.resolved.makings) {
    sum += compiled.kitchen.recipe(making.recipe).name == recipe ? making.times : Rational(0);
  }
  return sum;
}

const ByProduct& only(const emit::Compiled& compiled) {
  EXPECT_EQ(compiled.resolved.by_products.size(), 1U);
  return compiled.resolved.by_products.at(0);
}

bool still_to_find(const emit::Compiled& compiled, std::string_view food) {
  return std::any_of(compiled.shopping.shortfalls.begin(), compiled.shopping.shortfalls.end(),
                     [&](const purchase::Shortfall& one) {
                       const auto id = compiled.resolved.uses[one.use].food;
                       return one.missing > 0 && compiled.kitchen.food(id).name == food;
                     });
}

// A roast on the 2nd that leaves a bone, and a soup that asks for one.
class ABone : public ::testing::Test {
protected:
  void SetUp() override {
    house.recipe("roast", "2 lb onion",
                 further("gives: {what: 1 roast bone, keeps: {fridge: 3 days, freezer: 2 "
                         "months}}\n"));
    house.recipe("soup", "1 lb onion, 1 roast bone", further("keeps: {fridge: 4 days}\n"));
  }
  void plan(const std::string& soup, const std::string& more = {}) {
    house.plan("2027-03-02: {dinner: roast}, " + soup, more);
  }
  House house;
};

TEST_F(ABone, GoesIntoTheSoupAndIsNotBought) {
  plan("2027-03-04: {dinner: soup}");
  auto compiled = house.good();
  EXPECT_TRUE(house.diagnostics.all().empty()) << house.said();
  ASSERT_EQ(only(compiled).parts.size(), 1U);
  EXPECT_FALSE(only(compiled).parts[0].from_freezer);
  EXPECT_EQ(only(compiled).left(), 0);
  EXPECT_EQ(used(compiled, "roast bone"), 0);
  EXPECT_TRUE(compiled.shopping.shortfalls.empty());
  const std::string days = emit::days_markdown(compiled);
  EXPECT_NE(days.find("Put 1 roast bone from roast into the fridge, for soup on Thu 4 Mar"),
            std::string::npos)
      << days;
  EXPECT_NE(emit::labels_markdown(compiled).find("roast bone, of roast"), std::string::npos);
}

TEST_F(ABone, WaitsInTheFreezerForWhatComesLater) {
  plan("2027-03-15: {dinner: soup}");
  auto compiled = house.good();
  ASSERT_EQ(only(compiled).parts.size(), 1U);
  EXPECT_TRUE(only(compiled).parts[0].from_freezer);
  EXPECT_NE(
      emit::days_markdown(compiled).find("Move 1 roast bone (made Tue 2 Mar) from the freezer"),
      std::string::npos);
}

TEST_F(ABone, IsStillToFindWhereNothingLeavesOneInTime) {
  for (const std::string meals :
       {"2027-03-01: {dinner: soup}, 2027-03-02: {dinner: roast}", "2027-03-04: {dinner: soup}"}) {
    house.plan(meals);
    const auto compiled = house.good();
    EXPECT_TRUE(still_to_find(compiled, "roast bone")) << meals;
    EXPECT_FALSE(house.said("K016")) << house.said(); // that nobody knows it
    EXPECT_NE(house.said().find("cook a dish that leaves some before then"), std::string::npos);
  }
}

TEST_F(ABone, IsBoughtWhereAShopHasOne) {
  house.write("plans/stores/corner.yaml",
              "shop: Corner\nprices: {onion: 1.00/lb, roast bone: each 2.00}\n");
  house.plan("2027-03-04: {dinner: soup}");
  auto compiled = house.good();
  EXPECT_FALSE(still_to_find(compiled, "roast bone"));
  EXPECT_EQ(compiled.shopping.lines.size(), 2U);
  plan("2027-03-04: {dinner: soup}");
  compiled = house.good();
  EXPECT_EQ(compiled.shopping.lines.size(), 1U); // but not beside the one that is there
}

TEST_F(ABone, ThatNobodyTakesIsSaid) {
  house.plan("2027-03-02: {dinner: roast}");
  const auto compiled = house.good();
  EXPECT_EQ(only(compiled).left(), 1);
  const std::string left = emit::left_markdown(compiled);
  EXPECT_NE(left.find("1 roast bone, from roast on Tue 2 Mar: good until Fri 5 Mar, or until "
                      "Sat 1 May in the freezer"),
            std::string::npos)
      << left;
}

TEST_F(ABone, IsTakenByWhoNeedsItFirst) {
  house.recipe("broth", "1 lb onion, 1 roast bone", further("keeps: {fridge: 4 days}\n"));
  plan("2027-03-04: {dinner: soup}, 2027-03-03: {dinner: broth}");
  const auto compiled = house.good();
  ASSERT_EQ(only(compiled).parts.size(), 1U);
  EXPECT_EQ(only(compiled).parts[0].date, text::parse_date("2027-03-03"));
  EXPECT_TRUE(still_to_find(compiled, "roast bone"));
}

TEST_F(ABone, GivesTheSoupItsDate) {
  plan("2027-03-04: {dinner: soup}");
  auto compiled = house.good();
  for (const resolve::Making& making : compiled.resolved.makings) {
    if (compiled.kitchen.recipe(making.recipe).name == "soup") {
      EXPECT_EQ(text::print_date(*making.good_until), "2027-03-05"); // not four days from the 4th
    }
  }
  // Leftovers of it would be too old: the bone comes from the freezer, or else from elsewhere.
  plan("2027-03-04: {dinner: soup}, 2027-03-07: {dinner: leftovers of soup}");
  compiled = house.good();
  ASSERT_EQ(only(compiled).parts.size(), 1U);
  EXPECT_TRUE(only(compiled).parts[0].from_freezer);
  house.recipe("roast", "2 lb onion",
               further("gives: {what: 1 roast bone, keeps: {fridge: 3 days}}\n"));
  compiled = house.good();
  EXPECT_TRUE(only(compiled).parts.empty());
}

TEST_F(ABone, CountsFromTheOldestPartOfItsDish) {
  // The marinade of Sunday is two days old when the roast is made, and so is its bone.
  house.recipe("marinade", "1 lb onion", further("makes: 4 cups\nkeeps: {fridge: 4 days}\n"));
  house.recipe("roast", "2 lb onion, 4 cups marinade",
               further("gives: {what: 1 roast bone, keeps: {fridge: 3 days}}\n"));
  const std::string sunday = "prep: [{date: 2027-03-07, from: \"14:00\", until: \"18:00\"}]\n";
  house.plan("2027-03-09: {dinner: roast}, 2027-03-11: {dinner: soup}", sunday);
  const auto compiled = house.good();
  EXPECT_EQ(text::print_date(*only(compiled).good_until), "2027-03-10");
  EXPECT_TRUE(only(compiled).parts.empty()); // found out only when the marinade is made
}

TEST_F(ABone, IsOneForEachThatIsMade) {
  house.recipe("roast", "1 lb onion",
               "serves: 1\nmade in: exactly\nkeeps: {fridge: 3 days}\ngives: 2 cups whole milk\n");
  house.recipe("soup", "3 cups whole milk", "made in: exactly\n");
  house.write("recipes/roast.yaml",
              "serves: 1\nmade in: exactly\ningredients: [1 lb onion]\nkeeps: "
              "{fridge: 3 days}\ngives: 2 cups whole milk\n");
  plan("2027-03-03: {dinner: soup}"); // two eat: the roast is made twice
  auto compiled = house.good();
  EXPECT_EQ(used(compiled, "whole milk"), 0);
  EXPECT_EQ(only(compiled).left() / only(compiled).amount, Rational(1, 4));
}

TEST_F(ABone, MayBeOptional) {
  house.recipe("soup", "1 lb onion, \"1 roast bone, optional\"");
  house.plan("2027-03-04: {dinner: soup}");
  EXPECT_EQ(house.good().resolved.left_out.size(), 1U);
  plan("2027-03-04: {dinner: soup}");
  const auto compiled = house.good();
  EXPECT_EQ(only(compiled).left(), 0);
  EXPECT_TRUE(compiled.resolved.left_out.empty());
}

TEST_F(ABone, IsTakenOnTheSameDayOnlyAfterTheMealThatItIsOf) {
  house.household("", "[]");
  house.write("plans/household.yaml",
              "people: [{name: Ada}]\nmeals: {lunch: \"12:00\", dinner: \"18:30\"}\n"
              "appliances: {burner: 4}\n");
  house.plan("2027-03-02: {lunch: roast, dinner: soup}");
  EXPECT_EQ(only(house.good()).parts.size(), 1U);
  house.plan("2027-03-02: {lunch: soup, dinner: roast}");
  EXPECT_TRUE(only(house.good()).parts.empty());
  house.plan("2027-03-02: {dinner: [soup, roast]}");
  EXPECT_TRUE(only(house.good()).parts.empty());
}

TEST_F(ABone, CarriesWhatSomebodyMustNotHave) {
  house.household("", "[milk]");
  house.recipe("roast", "2 lb onion, 1 cup whole milk",
               further("gives: {what: 1 roast bone, keeps: {fridge: 3 days}}\n"));
  house.plan("2027-03-02: {dinner: {dish: roast, eaten by: [Ada]}}, 2027-03-04: {dinner: soup}");
  auto compiled = house.good();
  EXPECT_TRUE(only(compiled).parts.empty());
  EXPECT_TRUE(house.said("R008")) << house.said();
  EXPECT_TRUE(still_to_find(compiled, "roast bone"));
  // The milk is not in it where it is said to be of something else.
  house.recipe("roast", "2 lb onion, 1 cup whole milk",
               further("gives: {what: 1 roast bone, keeps: {fridge: 3 days}, of: onion}\n"));
  compiled = house.good();
  EXPECT_EQ(only(compiled).parts.size(), 1U);
  EXPECT_FALSE(house.said("R008"));
}

TEST_F(ABone, CarriesWhatTheNameOfAnUnknownFoodSpeaksOf) {
  house.household("", "[mushroom]");
  house.recipe("roast", "2 lb onion, 1 jar forest mushroom relish",
               further("gives: {what: 1 roast bone, keeps: {fridge: 3 days}}\n"));
  house.plan("2027-03-02: {dinner: {dish: roast, eaten by: [Ada]}}, 2027-03-04: {dinner: soup}");
  EXPECT_TRUE(only(house.good()).parts.empty());
  EXPECT_TRUE(house.said("R008")) << house.said();
}

TEST_F(ABone, CarriesThroughASecondDish) {
  house.household("", "[milk]");
  house.recipe("roast", "2 lb onion, 1 cup whole milk",
               further("gives: {what: 1 roast bone, keeps: {fridge: 9 days}}\n"));
  house.recipe("broth", "1 lb onion, 1 roast bone",
               further("gives: {what: 1 boiled bone, keeps: {fridge: 9 days}}\n"));
  house.recipe("soup", "1 lb onion, 1 boiled bone");
  house.plan("2027-03-02: {dinner: {dish: roast, eaten by: [Ada]}}, "
             "2027-03-03: {dinner: {dish: broth, eaten by: [Ada]}}, 2027-03-04: {dinner: soup}");
  const auto compiled = house.good();
  EXPECT_EQ(compiled.resolved.by_products.at(0).parts.size() +
                compiled.resolved.by_products.at(1).parts.size(),
            1U); // into the broth, and what that leaves not into Ben's soup
  EXPECT_TRUE(house.said("R008"));
}

TEST_F(ABone, MustBeOfAnIngredient) {
  house.recipe("roast", "2 lb onion", "gives: {what: 1 roast bone, of: ground beef}\n");
  house.plan("2027-03-02: {dinner: roast}");
  EXPECT_FALSE(house.compile());
  EXPECT_TRUE(house.said("K001"));
}

TEST_F(ABone, ThatWasLeftBeforeIsInTheHouseWhenOnlyTheRestIsPlanned) {
  for (const std::string date : {"2027-03-04", "2027-03-15"}) { // unfrozen, and frozen
    plan(date + ": {dinner: soup}", "as of: 2027-03-03\n");
    house.write("plans/receipts/2027-03-01-corner.yaml",
                "shop: corner\nlines: [\"9 lb onions, 9\"]\n");
    auto compiled = house.good();
    EXPECT_EQ(compiled.shopping.from_stock.size(), 2U) << date; // onions and the bone
    EXPECT_FALSE(still_to_find(compiled, "roast bone"));
  }
  // What is optional takes it, too.
  house.recipe("soup", "1 lb onion, \"1 roast bone, optional\"",
               further("keeps: {fridge: 4 days}\n"));
  plan("2027-03-04: {dinner: soup}", "as of: 2027-03-03\n");
  EXPECT_EQ(house.good().shopping.from_stock.size(), 2U);
  // But not before a dish that must have it, though that is cooked later.
  house.recipe("broth", "1 lb onion, 1 roast bone", further("keeps: {fridge: 4 days}\n"));
  plan("2027-03-04: {dinner: soup}, 2027-03-05: {dinner: broth}", "as of: 2027-03-03\n");
  auto compiled = house.good();
  EXPECT_EQ(compiled.resolved.left_out.size(), 1U);
  EXPECT_FALSE(still_to_find(compiled, "roast bone"));
}

// A stock whose meat is the "shredded" that a pie asks for.
class MeatOfAStock : public ::testing::Test {
protected:
  void SetUp() override {
    house.recipe("shredded", "2 lb ground beef",
                 further("makes: 4 cups\nkeeps: {fridge: 3 days, freezer: 2 months}\n"));
    house.recipe(
        "stock", "1 lb ground beef, 2 lb onion",
        further("makes: 8 cups\nkeeps: {fridge: 3 days}\ngives: {what: 2 cups shredded, of: "
                "ground beef}\n"));
    house.recipe("soup", "8 cups stock", "made in: exactly\n");
    house.recipe("pie", "3 cups shredded, 1 lb onion", "made in: exactly\n");
  }
  House house;
};

TEST_F(MeatOfAStock, IsNotMadeASecondTime) {
  house.plan("2027-03-02: {dinner: soup}, 2027-03-04: {dinner: pie}");
  auto compiled = house.good();
  EXPECT_EQ(made(compiled, "shredded"), Rational(1, 4)); // one cup of the three
  EXPECT_EQ(used(compiled, "ground beef"),
            Rational(3, 2) * measure::facts(measure::Unit::pound).factor);
  house.plan("2027-03-04: {dinner: pie}");
  EXPECT_EQ(made(house.good(), "shredded"), Rational(3, 4));
}

TEST_F(MeatOfAStock, CountsForTheDishThatItGoesInto) {
  house.plan("2027-03-02: {dinner: soup}, 2027-03-04: {dinner: pie}");
  const auto compiled = house.good();
  constexpr auto energy = foods::Nutrient::energy;
  const double soup = compiled.nutrition.dishes[0][0].whole[energy];
  const double pie = compiled.nutrition.dishes[1][0].whole[energy];
  house.recipe("stock", "1 lb ground beef, 2 lb onion",
               further("makes: 8 cups\nkeeps: {fridge: 3 days}\n"));
  const auto without = house.good();
  // Two cups of shredded beef are a pound of beef: the soup has none of it left.
  EXPECT_LT(soup, without.nutrition.dishes[0][0].whole[energy] / 3);
  EXPECT_NEAR(pie, without.nutrition.dishes[1][0].whole[energy], 1);
}

TEST_F(MeatOfAStock, IsThereInTheSameSessionOnceTheStockIsDone) {
  house.recipe("pie", "2 cups shredded, 1 lb onion",
               further("make ahead: yes\nkeeps: {fridge: 3 days}\n"));
  house.plan("2027-03-08: {dinner: [soup, pie]}",
             "prep: [{date: 2027-03-07, from: \"12:00\", until: \"18:00\"}]\n");
  const auto compiled = house.good();
  EXPECT_EQ(made(compiled, "shredded"), 0);
  int stock = -1;
  int pie = -1;
  for (const prep::Task& task : compiled.prep.sessions.at(0).tasks) {
    stock = task.what == "stock: Simmer" ? task.start + task.hands_on + task.then : stock;
    pie = task.what == "pie: Simmer" ? task.start : pie;
  }
  EXPECT_GE(pie, stock);
  EXPECT_GT(stock, 0);
}

TEST(ByProducts, OfADishThatSomebodyHasOtherwiseAreOnlyWhatIsSaidToBeOfTheRest) {
  House house;
  house.recipe("roast", "1 lb ground beef, 2 lb onion", "gives: 1 roast bone\n");
  house.plan("2027-03-02: {dinner: {dish: roast, for: {Ben: egg instead of ground beef}}}");
  EXPECT_EQ(house.compile()->resolved.by_products.size(), 1U) << house.said();
  house.recipe("roast", "1 lb ground beef, 2 lb onion", "gives: {what: 1 peel, of: onion}\n");
  EXPECT_EQ(house.compile()->resolved.by_products.size(), 2U) << house.said();
}

TEST(ByProducts, WhatIsGivenRoundInACircleIsLeftOut) {
  House house;
  house.recipe("one", "1 lb onion, 1 bit of two",
               "gives: {what: 1 bit of one, keeps: {fridge: 2 days}}\n");
  house.recipe("two", "1 lb onion, 1 bit of one",
               "gives: {what: 1 bit of two, keeps: {fridge: 2 days}}\n");
  house.plan("2027-03-02: {dinner: [one, two]}, 2027-03-03: {dinner: [one, two]}");
  const auto compiled = house.good();
  std::size_t taken = 0;
  for (const ByProduct& one : compiled.resolved.by_products) {
    taken += one.parts.size();
  }
  EXPECT_EQ(taken, 2U); // from the first day to the second, both ways
}

} // namespace
} // namespace manciple
