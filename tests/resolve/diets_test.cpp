// Diets: what a food has is refused, what differs by maker is a label to read, and what is in a
// recipe of a recipe is found as well as what lies on the plate.
#include "house.hpp"

#include "foods/diets.hpp"

#include <fmt/format.h>

namespace manciple {
namespace {

enum class Outcome { refused, label, fine };

struct Case {
  const char* diet;
  const char* food;
  Outcome outcome;
  const char* because; ///< the class that is named; of what is fine, nothing
};

constexpr auto refused = Outcome::refused;
constexpr auto label = Outcome::label;
constexpr auto fine = Outcome::fine;

// Each food is in a sauce of a filling of the dish. What foods are made of: their records, common
// practice; what the law leaves to the maker: 21 CFR 133.113 and 133.165 (clotting enzymes of
// animal, plant or microbial origin), EU 2019/934 (what wine may be cleared with).
const std::vector<Case> cases{
    {"vegetarian", "chicken thighs", refused, "poultry"},
    {"vegetarian", "ground beef", refused, "meat"},
    {"vegetarian", "bacon", refused, "meat"},
    {"vegetarian", "pancetta", refused, "meat"},
    {"vegetarian", "salmon fillet", refused, "fish"},
    {"vegetarian", "shrimp", refused, "crustaceans"},
    {"vegetarian", "mussels", refused, "molluscs"},
    {"vegetarian", "chicken broth", refused, "poultry"},
    {"vegetarian", "beef bouillon cubes", refused, "meat"},
    {"vegetarian", "beef gravy", refused, "meat"},
    {"vegetarian", "unflavored gelatin", refused, "gelatin"},
    {"vegetarian", "marshmallows", refused, "gelatin"},
    {"vegetarian", "lard", refused, "meat"},
    {"vegetarian", "suet", refused, "meat"},
    {"vegetarian", "duck fat", refused, "poultry"},
    {"vegetarian", "worcestershire sauce", refused, "fish"},
    {"vegetarian", "fish sauce", refused, "fish"},
    {"vegetarian", "anchovy paste", refused, "fish"},
    {"vegetarian", "oyster sauce", refused, "molluscs"},
    {"vegetarian", "bone broth", refused, "meat"},
    {"vegetarian", "pork and beans", refused, "meat"},
    {"vegetarian", "parmesan cheese", label, "rennet"},
    {"vegetarian", "gummy candy", label, "gelatin"},
    {"vegetarian", "stock cubes", label, "stock"},
    {"vegetarian", "gravy granules", label, "meat"},
    {"vegetarian", "red wine", label, "finings"},
    {"vegetarian", "pesto", label, "rennet"},
    {"vegetarian", "flour tortillas", label, "animal fat"},
    {"vegetarian", "refried beans", label, "animal fat"},
    {"vegetarian", "shortcrust pastry", label, "animal fat"},
    {"vegetarian", "mincemeat", label, "animal fat"},
    {"vegetarian", "fruit yogurt", label, "carmine"},
    {"vegetarian", "food coloring", label, "whether it is vegetarian"},
    {"vegetarian", "brown lentils", fine, ""},
    {"vegetarian", "eggs", fine, ""},
    {"vegan", "eggs", refused, "egg"},
    {"vegan", "mayonnaise", refused, "egg"},
    {"vegan", "honey", refused, "honey"},
    {"vegan", "butter", refused, "milk"},
    {"vegan", "granola", label, "honey"},
    {"vegan", "apple juice", label, "finings"},
    {"vegan", "tofu", fine, ""},
    {"pescatarian", "turkey sausage", refused, "poultry"},
    {"pescatarian", "leaf gelatin", refused, "gelatin"},
    {"pescatarian", "cod fillet", fine, ""},
    {"no pork", "chorizo", refused, "pork"},
    {"no pork", "lard", refused, "pork"},
    {"no pork", "hot dogs", label, "pork"},
    {"no pork", "marshmallows", label, "pork"},
    {"no pork", "baked beans", label, "pork"},
    {"no alcohol", "vanilla extract", refused, "alcohol"},
    {"no alcohol", "mirin", refused, "alcohol"},
    {"no alcohol", "soy sauce", label, "alcohol"},
    {"no alcohol", "dijon mustard", label, "alcohol"},
    {"no caffeine", "cocoa powder", refused, "caffeine"},
    {"no caffeine", "cola", refused, "caffeine"},
    {"no caffeine", "decaf coffee", label, "caffeine"},
    {"low lactose", "whole milk", refused, "lactose"},
    {"low lactose", "cheddar cheese", fine, ""},
    {"lactose-free", "cheddar cheese", refused, "traces of lactose"},
    {"gluten-free", "soy sauce", refused, "gluten"},
    {"gluten-free", "pearl barley", refused, "gluten"},
    {"gluten-free", "rolled oats", refused, "gluten"},
    {"gluten-free", "stock cubes", label, "gluten"},
    {"gluten-free", "white rice", fine, ""},
    {"no nuts", "almonds", refused, "tree nuts"},
    {"no shellfish", "shrimp paste", refused, "crustaceans"},
    {"no cilantro", "cilantro", refused, "cilantro"},
};

void fill(House& house, const std::string& diet, const std::string& food) {
  house.write(
      "plans/household.yaml",
      fmt::format("people:\n  - {{name: Ada, diet: {}}}\nmeals: {{dinner: \"18:30\"}}\n", diet));
  house.recipe("sauce", fmt::format("\"4 oz {}\"", food), "makes: 1 cup\n");
  house.recipe("filling", "1 cup sauce", "makes: 2 cups\n");
  house.recipe("dish", "1 onion, 2 cups filling");
  house.plan("2027-03-02: {dinner: dish}");
}

TEST(Diets, EveryHiddenFoodIsRefusedOrSentToItsLabel) {
  int count = 0;
  for (const Case& one : cases) {
    if (one.outcome != fine) {
      ++count;
    }
    House house;
    fill(house, one.diet, one.food);
    const auto compiled = house.compile();
    const std::string what = fmt::format("{}: {}", one.diet, one.food);
    if (one.outcome == refused) {
      EXPECT_FALSE(compiled) << what;
      EXPECT_TRUE(house.said("R004")) << what << "\n" << house.said();
      EXPECT_NE(house.said().find(fmt::format("Ada must not have {} ({})", one.because, one.diet)),
                std::string::npos)
          << what << "\n"
          << house.said();
      continue;
    }
    ASSERT_TRUE(compiled) << what << "\n" << house.said();
    const auto& labels = compiled->resolved.labels;
    const bool told = std::any_of(labels.begin(), labels.end(), [&](const auto& check) {
      return check.person == "Ada" && check.what == one.because;
    });
    EXPECT_EQ(told, one.outcome == label) << what;
    EXPECT_EQ(labels.empty(), one.outcome == fine) << what;
  }
  EXPECT_GE(count, 57);
  EXPECT_GE(cases.size(), 65U);
}

TEST(Diets, TheWholeWayIsToldWithItsPlaces) {
  House house;
  fill(house, "vegetarian", "lard");
  house.compile();
  const std::string said = house.said();
  for (const char* part :
       {"plans/p.yaml:4", "dish on Tue 2 Mar has lard in sauce", "recipes/dish.yaml:3",
        "through '2 cups filling'", "recipes/filling.yaml:3", "through '1 cup sauce'",
        "recipes/sauce.yaml:3", "through '4 oz lard'"}) {
    EXPECT_NE(said.find(part), std::string::npos) << part << "\n" << said;
  }
}

TEST(Diets, OfTheHousesOwnAreMadeOfClassesDietsAndFoods) {
  House house;
  house.write("plans/household.yaml",
              "diets: {lent: [meat, poultry, egg, dairy], strict: [lent, onion, no fish]}\n"
              "people:\n  - {name: Ada, diet: [strict]}\nmeals: {dinner: \"18:30\"}\n");
  for (const char* food : {"bacon", "eggs", "butter", "cod fillet", "onions"}) {
    house.recipe("dish", fmt::format("\"4 oz {}\"", food));
    house.plan("2027-03-02: {dinner: dish}");
    EXPECT_FALSE(house.compile()) << food;
    EXPECT_NE(house.said().find("(strict)"), std::string::npos) << house.said();
  }
  house.recipe("dish", "4 oz tofu");
  EXPECT_TRUE(house.compile()) << house.said();
}

TEST(Diets, WhatIsMisspeltListsTheNearestAndTheOthers) {
  House house;
  house.write("plans/household.yaml", "diets: {lent: [maet]}\npeople:\n  - {name: Ada, diet: "
                                      "vegatarian}\nmeals: {dinner: \"18:30\"}\n");
  house.recipe("dish", "4 oz tofu");
  house.plan("2027-03-02: {dinner: dish}");
  EXPECT_FALSE(house.compile());
  const std::string said = house.said();
  EXPECT_NE(said.find("did you mean vegetarian"), std::string::npos) << said;
  EXPECT_NE(said.find("pescatarian"), std::string::npos) << said;
  EXPECT_NE(said.find("did you mean meat"), std::string::npos) << said;
  EXPECT_NE(said.find("gelatin"), std::string::npos) << said;
}

TEST(Diets, WhatMayStandInADishCountsAsBeingInIt) {
  House house;
  house.write("plans/household.yaml",
              "any of these: [{tofu: 1, ground beef: 1}]\n"
              "people:\n  - {name: Ada, diet: vegetarian}\nmeals: {dinner: \"18:30\"}\n");
  house.recipe("dish", "4 oz tofu");
  house.plan("2027-03-02: {dinner: dish}");
  EXPECT_FALSE(house.compile());
  EXPECT_TRUE(house.said("R004")) << house.said();
}

TEST(Diets, OfAFoodWithoutARecordNothingIsSafe) {
  House house;
  house.write("plans/household.yaml",
              "people:\n  - {name: Ada, diet: vegan}\nmeals: {dinner: \"18:30\"}\n");
  house.recipe("dish", "4 oz zorble loaf");
  house.plan("2027-03-02: {dinner: dish}");
  const auto compiled = house.good();
  EXPECT_TRUE(house.said("R007")) << house.said();
  ASSERT_EQ(compiled.resolved.labels.size(), 1U);
  EXPECT_FALSE(compiled.resolved.labels[0].known);
  EXPECT_EQ(compiled.resolved.labels[0].what, "whether it is vegan");
}

TEST(Diets, GuestsHaveTheirOwnOnTheirDays) {
  House house;
  house.write("plans/household.yaml", "people:\n  - {name: Ada}\nmeals: {dinner: \"18:30\"}\n");
  house.recipe("dish", "4 oz ground beef");
  house.plan("2027-03-02: {dinner: dish}, 2027-03-09: {dinner: dish}",
             "guests: [{who: Cy, from: 2027-03-02, until: 2027-03-03, diet: vegetarian}]\n");
  EXPECT_FALSE(house.compile());
  EXPECT_NE(house.said().find("Cy must not have meat (vegetarian): dish on Tue 2 Mar"),
            std::string::npos)
      << house.said();
  EXPECT_EQ(house.said().find("Tue 9 Mar"), std::string::npos);
}

} // namespace
} // namespace manciple
