// What somebody has otherwise in a dish: who eats what, and what is bought for it.
#include "house.hpp"

#include "resolve/eaters.hpp"

namespace manciple {
namespace {

using measure::Rational;

void three(House& house, const std::string& ilse = "diet: vegetarian") {
  house.write("plans/household.yaml",
              "people:\n  - {name: Ada}\n  - {name: Ben}\n  - {name: Ilse, " + ilse +
                  "}\nmeals: {lunch: \"12:30\", dinner: \"18:30\"}\n");
  house.write("recipes/tacos.yaml", "name: Tacos\nserves: 3\nkeeps: {fridge: 3 days}\n"
                                    "ingredients: [1.5 lb boneless chicken breast, 3 onions]\n");
  house.write("plans/stores/corner.yaml", "shop: Corner\nprices: {onion: 1.00/lb, boneless chicken "
                                          "breast: 4.00/lb, halloumi: 8.00/lb, tofu: 2.00/lb}\n");
}

// Dishes of a meal with those who eat them.
std::string menu(const emit::Compiled& compiled, std::size_t meal) {
  std::string out;
  const auto& dishes = compiled.plan().meals[meal].dishes;
  for (std::size_t d = 0; d < dishes.size(); ++d) {
    out += (out.empty() ? "" : "; ") + compiled.kitchen.recipe(*dishes[d].what.recipe()).name + ":";
    for (const kitchen::Person* one : resolve::eaters(compiled.kitchen, {meal, d})) {
      out += " " + one->name;
    }
  }
  return out;
}

Rational bought(const emit::Compiled& compiled, std::string_view food) {
  Rational out = 0;
  for (const auto& use : compiled.resolved.uses) {
    if (compiled.kitchen.food(use.food).name == food) {
      out += use.amount;
    }
  }
  return out;
}

TEST(Variants, AreDishesOfTheirOwnWithTheirOwnFood) {
  House house;
  three(house);
  house.plan("2027-03-02: {dinner: {dish: tacos, for: {Ilse: halloumi instead of boneless chicken "
             "breast}}}");
  const auto compiled = house.good();
  EXPECT_EQ(menu(compiled, 0), "Tacos: Ada Ben; Tacos with halloumi: Ilse");
  // 1.5 lb for three: two eat 1 lb of chicken, one half a pound of halloumi.
  const Rational pound{45359237, 100000};
  EXPECT_EQ(bought(compiled, "boneless chicken breast"), pound);
  EXPECT_EQ(bought(compiled, "halloumi"), pound / 2);
  // 4.00 of chicken and 4.00 of halloumi.
  std::map<std::string, std::int64_t> cost;
  for (const auto& line : compiled.shopping.lines) {
    cost[compiled.kitchen.food(line.food).name] += line.cost.value_or(0);
  }
  EXPECT_EQ(cost["boneless chicken breast"], 400);
  EXPECT_EQ(cost["halloumi"], 400);
}

TEST(Variants, ReachIntoRecipesOfRecipes) {
  House house;
  three(house);
  house.write("recipes/soup.yaml", "serves: 3\ningredients: [3 onions, 3 cups stock]\n");
  house.write("recipes/stock.yaml",
              "serves: 3\nmakes: 3 cups\ningredients: [1 lb boneless chicken breast, 3 onions]\n");
  house.plan("2027-03-02: {dinner: {dish: soup, for: {Ilse: without poultry}}}");
  const auto compiled = house.good();
  EXPECT_EQ(menu(compiled, 0), "Soup: Ada Ben; Soup without poultry: Ilse");
}

TEST(Variants, AmountsAreOfAServing) {
  House house;
  three(house);
  house.plan(
      "2027-03-02: {dinner: {dish: tacos, for: {Ilse: 100 g tofu instead of boneless chicken "
      "breast}}}");
  EXPECT_EQ(bought(house.good(), "tofu"), Rational(100));
}

TEST(Variants, LeftoversAreOfWhatSomebodyHad) {
  House house;
  three(house);
  house.plan("2027-03-02: {dinner: {dish: tacos, for: {Ilse: tofu instead of boneless chicken "
             "breast}}}, 2027-03-03: {lunch: leftovers of tacos}");
  const auto compiled = house.good();
  EXPECT_EQ(menu(compiled, 1), "Tacos: Ada Ben; Tacos with tofu: Ilse");
}

TEST(Variants, AreNotCookedForWhoIsAway) {
  House house;
  three(house);
  house.plan("2027-03-02: {dinner: {dish: tacos, for: {Ilse: tofu instead of boneless chicken "
             "breast}}}",
             "away: [{who: Ilse, from: 2027-03-02}]\n");
  EXPECT_EQ(menu(house.good(), 0), "Tacos: Ada Ben");
}

TEST(Variants, StandInPlaceOfADishThatNobodyElseEats) {
  House house;
  three(house);
  house.plan("2027-03-02: {dinner: {dish: tacos, eaten by: [Ilse], for: {Ilse: [tofu instead of "
             "boneless chicken breast, without onions]}}}");
  EXPECT_EQ(menu(house.good(), 0), "Tacos with tofu, without onions: Ilse");
}

TEST(Variants, ForGuestsFollowTheirDays) {
  House house;
  three(house, "avoids: []");
  house.plan(
      "2027-03-02: {dinner: {dish: tacos, for: {Cy: tofu instead of boneless chicken "
      "breast}}}, 2027-03-03: {dinner: {dish: tacos, eaten by: [Cy, Ada]}}",
      "guests: [{who: Cy, count: 2, from: 2027-03-02, until: 2027-03-03, meals: [dinner]}]\n");
  const auto compiled = house.good();
  EXPECT_EQ(menu(compiled, 0), "Tacos: Ada Ben Ilse; Tacos with tofu: Cy");
  EXPECT_EQ(menu(compiled, 1), "Tacos: Ada Cy");
  EXPECT_EQ(compiled.resolved.servings[0][1], Rational(2));
  EXPECT_EQ(compiled.resolved.servings[1][0], Rational(3));
}

TEST(Variants, ThatFindNothingToSwapAreErrorsThatSayWhatThereIs) {
  House house;
  three(house);
  house.plan("2027-03-02: {dinner: {dish: tacos, for: {Ilse: tofu instead of ground beef}}}");
  EXPECT_FALSE(house.compile());
  EXPECT_TRUE(house.said("K019")) << house.said();
  EXPECT_NE(house.said().find("Tacos has no ground beef"), std::string::npos) << house.said();
  EXPECT_NE(house.said().find("boneless chicken breast, onion"), std::string::npos);
}

TEST(Variants, OfARecipeThatIsNotWrittenYetEndNoBuild) {
  House house;
  house.recipe("stew", "2 onions");
  house.plan("2027-03-02: {dinner: {dish: casserole, for: {Ben: tofu instead of onion}}}");
  EXPECT_TRUE(house.compile()) << house.said();
  EXPECT_TRUE(house.said("K019")) << house.said();
  house.plan("2027-03-02: {dinner: {dish: 2 onions, for: {Ben: tofu instead of onion}}}");
  EXPECT_FALSE(house.compile());
}

TEST(Portions, AreByDishThenByPersonAndMealThenByAge) {
  House house;
  house.write("plans/household.yaml",
              "people:\n  - {name: Ada, portion: 1.5, appetite: {lunch: 1/2}}\n"
              "  - {name: Tot, age: 2}\n  - {name: Kid, age: 10}\n"
              "meals: {lunch: \"12:30\", dinner: \"18:30\"}\n");
  house.recipe("soup", "2 onions");
  house.plan("2027-03-02: {lunch: soup, dinner: soup}, 2027-03-03: {dinner: {dish: soup, portions: "
             "{Ada: 2, Tot: 1/4}}}");
  const auto compiled = house.good();
  EXPECT_EQ(compiled.resolved.servings[0][0], Rational(3, 4) + Rational(1, 2) + Rational(7, 8));
  EXPECT_EQ(compiled.resolved.servings[1][0], Rational(3, 2) + Rational(1, 2) + Rational(7, 8));
  EXPECT_EQ(compiled.resolved.servings[2][0], Rational(2) + Rational(1, 4) + Rational(7, 8));
}

} // namespace
} // namespace manciple
