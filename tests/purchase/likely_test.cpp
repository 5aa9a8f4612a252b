// What is bought where prices, packs or shops are not known.
#include "emit/emit.hpp"
#include "house.hpp"

namespace manciple {
namespace {

TEST(Likely, AFoodWithoutAPriceStandsWhereItsDepartmentIs) {
  House house;
  house.write("plans/stores/corner.yaml",
              "shop: Corner\nwalk: [produce]\nprices: {onion: 1.00/lb}\n");
  house.write("plans/stores/dock.yaml", "shop: Dock\nwalk: [fish]\n");
  house.recipe("stew", "1 lb onions, 1 lb salmon fillet");
  house.plan_with_trip("2027-03-02: {dinner: stew}", "[corner, dock]");
  const auto compiled = house.good();
  ASSERT_EQ(compiled.shopping.lines.size(), 2U) << house.said();
  const auto& onion = compiled.shopping.lines[0];
  const auto& salmon = compiled.shopping.lines[1];
  EXPECT_EQ(onion.cost, 100);
  EXPECT_FALSE(salmon.cost);
  EXPECT_EQ(compiled.kitchen.shop(compiled.shopping.visits[salmon.visit].shop).name, "Dock");
  EXPECT_EQ(compiled.shopping.paid, 100);
  EXPECT_GT(compiled.shopping.account.unpriced, 0);
  const std::string list = emit::list_text(compiled);
  EXPECT_NE(list.find("no price known"), std::string::npos) << list;
}

TEST(Likely, AShopOfWhichNoPricesAreKnownHasEverything) {
  House house;
  house.recipe("stew", "1 lb onions");
  house.plan_with_trip("2027-03-02: {dinner: stew}", "[wherever]");
  const auto compiled = house.good();
  ASSERT_EQ(compiled.shopping.lines.size(), 1U) << house.said();
  EXPECT_FALSE(compiled.shopping.lines[0].cost);
  EXPECT_TRUE(compiled.shopping.shortfalls.empty());
}

TEST(Likely, AKnownPriceIsPreferredWhereBothShopsAreVisited) {
  House house;
  house.recipe("stew", "1 lb onions, 1 lb kale");
  house.plan_with_trip("2027-03-02: {dinner: stew}", "[wherever, corner]");
  house.write("plans/stores/corner.yaml",
              "shop: Corner\nprices: {onion: 1.00/lb, kale: 1.00/lb}\n");
  const auto compiled = house.good();
  ASSERT_EQ(compiled.shopping.lines.size(), 2U);
  EXPECT_TRUE(compiled.shopping.lines[0].cost && compiled.shopping.lines[1].cost);
  EXPECT_EQ(compiled.shopping.account.unpriced, 0);
}

TEST(Likely, AFoodThatAPriceListHasIsNotTakenToBeAtAnother) {
  House house;
  house.write("plans/stores/dock.yaml", "shop: Dock\nprices: {salmon fillet: 9.00/lb}\n");
  house.recipe("stew", "1 lb salmon fillet");
  house.plan("2027-03-02: {dinner: stew}"); // to the corner shop only
  const auto compiled = house.good();
  EXPECT_TRUE(compiled.shopping.lines.empty());
  EXPECT_EQ(compiled.shopping.shortfalls.size(), 1U);
  EXPECT_TRUE(house.said("P001") || house.said("P002")) << house.said();
}

TEST(Likely, PacksAreThoseThatRecipesAskFor) {
  House house;
  house.recipe("stew", "\"2 (15 oz) cans chickpeas\", 1 bunch parsley, 1 lb onions");
  house.plan_with_trip("2027-03-02: {dinner: stew}", "[wherever]");
  const auto compiled = house.good();
  const std::string list = emit::list_text(compiled);
  EXPECT_NE(list.find("2 x 15 oz can"), std::string::npos) << list;
  EXPECT_NE(list.find("1 bunch "), std::string::npos) << list;
  EXPECT_NE(list.find("1 lb "), std::string::npos) << list;
}

TEST(Likely, WhatHasNoWeightIsBoughtInTheWordItIsAskedForIn) {
  House house;
  const auto list = [&](const std::string& plan) {
    house.plan_with_trip("", "[wherever]", plan);
    return emit::list_text(house.good());
  };
  const std::string packs =
      list("extra: [1 pack nappies, 2 boxes of matches, 1 roll cling film]\n");
  EXPECT_NE(packs.find(" 1 pack             diapers\n"), std::string::npos) << packs;
  EXPECT_NE(packs.find(" 2 boxes            matches\n"), std::string::npos) << packs;
  EXPECT_NE(packs.find(" 1 roll             plastic wrap\n"), std::string::npos) << packs;
  const std::string counted = list("extra: [1 sponge, 20 diapers, 1 pack diapers]\n");
  EXPECT_NE(counted.find(" 1                  sponge\n"), std::string::npos) << counted;
  EXPECT_NE(counted.find(" 21                 diapers\n"), std::string::npos) << counted;
}

TEST(Likely, StockIsBoughtByTheLitreWhereItIsNotSoldInCans) {
  House house;
  house.recipe("soup", "4 cups vegetable stock, 1 can chickpeas");
  house.plan_with_trip("2027-03-02: {dinner: soup}", "[wherever]");
  const std::string us = emit::list_text(house.good());
  EXPECT_NE(us.find(" 3 cans             vegetable broth\n"), std::string::npos) << us;
  house.household("measures: metric\n");
  house.recipe("soup", "1 l vegetable stock, 1 can chickpeas");
  const std::string metric = emit::list_text(house.good());
  EXPECT_NE(metric.find(" 1 l                vegetable stock\n"), std::string::npos) << metric;
  EXPECT_NE(metric.find(" 425 g can "), std::string::npos) << metric;
}

TEST(Likely, ATripBeforeThePlanServesItsFirstMeal) {
  House house;
  house.recipe("stew", "1 lb onions");
  house.write("plans/p.yaml", "from: 2027-03-01\nuntil: 2027-03-07\nmeals: {2027-03-01: "
                              "{breakfast: stew}}\ntrips: [{date: 2027-02-27, stops: [corner]}]\n");
  const auto compiled = house.good();
  EXPECT_TRUE(compiled.shopping.shortfalls.empty()) << house.said();
  ASSERT_EQ(compiled.shopping.visits.size(), 1U);
  EXPECT_EQ(text::print_date(compiled.shopping.visits[0].date), "2027-02-27");
  EXPECT_NE(emit::days_markdown(compiled).find("Sat 27 Feb"), std::string::npos);
}

TEST(Likely, HowLongAFoodKeepsMayBeUnknown) {
  House house;
  house.write("recipes/foods.yaml", "zorn: {department: dairy, stored: fridge}\n");
  house.recipe("stew", "1 lb zorn");
  house.plan("2027-03-12: {dinner: stew}");
  const auto compiled = house.good();
  EXPECT_TRUE(house.said("P007"));
  EXPECT_EQ(compiled.shopping.lines.size(), 1U);
}

TEST(Likely, NobodyKnownEatsWhatARecipeServes) {
  House house;
  std::filesystem::remove(house.root() + "/plans/household.yaml");
  house.recipe("stew", "1 lb onions"); // serves 2
  house.plan("2027-03-02: {dinner: stew}, 2027-03-03: {dinner: leftovers of stew}, 2027-03-09: "
             "{dinner: stew}");
  const auto compiled = house.good();
  ASSERT_EQ(compiled.resolved.servings.size(), 3U);
  EXPECT_EQ(compiled.resolved.servings[0][0], 1);
  EXPECT_EQ(compiled.resolved.servings[1][0], 1);
  EXPECT_EQ(compiled.resolved.servings[2][0], 2);
  EXPECT_EQ(compiled.resolved.makings.size(), 2U);
}

} // namespace
} // namespace manciple
