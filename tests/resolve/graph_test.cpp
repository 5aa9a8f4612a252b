#include "resolve/graph.hpp"

#include "house.hpp"

namespace manciple::resolve {
namespace {

class NeedTest : public testing::Test {
protected:
  // Recipes of these names, by number.
  void recipes(const std::vector<std::string>& names) {
    for (const std::string& name : names) {
      kitchen::Recipe& made = kitchen.recipes.emplace_back();
      made.id = RecipeId(static_cast<std::uint32_t>(kitchen.recipes.size() - 1));
      made.name = name;
    }
  }
  kitchen::Recipe& recipe(std::string_view name) {
    return *std::find_if(kitchen.recipes.begin(), kitchen.recipes.end(),
                         [&](const kitchen::Recipe& one) { return one.name == name; });
  }
  void asks(std::string_view who, kitchen::Target what) {
    recipe(who).ingredients.emplace_back().target = what;
  }
  void gives(std::string_view who, kitchen::Target what) {
    recipe(who).gives.emplace_back().what.target = what;
  }
  std::vector<std::string> order() {
    text::Diagnostics diagnostics;
    std::vector<std::string> out;
    for (const RecipeId id : order_of_need(kitchen, diagnostics)) {
      out.push_back(kitchen.recipe(id).name);
    }
    EXPECT_EQ(diagnostics.errors(), 0U);
    return out;
  }

  using Names = std::vector<std::string>;
  kitchen::Kitchen kitchen;
};

TEST_F(NeedTest, ARecipeStandsBeforeWhatItNeedsHoweverTheyAreNumbered) {
  EXPECT_EQ(order(), Names{});
  recipes({"sauce", "stew", "stock"});
  asks("stew", recipe("sauce").id);
  asks("sauce", recipe("stock").id);
  EXPECT_EQ(order(), (Names{"stew", "sauce", "stock"}));
}

// In both orders of their numbers, so that it is no accident.
TEST_F(NeedTest, WhatAsksForSomethingStandsBeforeWhatLeavesItOver) {
  const foods::FoodId bone = *kitchen.foods.find("ham bone");
  for (const Names& names : {Names{"ham", "soup"}, Names{"soup", "ham"}}) {
    kitchen.recipes.clear();
    recipes(names);
    gives("ham", bone);
    asks("soup", bone);
    EXPECT_EQ(order(), (Names{"soup", "ham"}));
  }
}

TEST_F(NeedTest, WhatMayStandForTheGivenFoodAsksForItToo) {
  const foods::FoodId lard = *kitchen.foods.find("lard");
  const foods::FoodId butter = *kitchen.foods.find("butter");
  for (const Names& names : {Names{"roast", "pie"}, Names{"pie", "roast"}}) {
    kitchen.recipes.clear();
    recipes(names);
    gives("roast", lard);
    asks("pie", butter);
    kitchen.household.any_of = {{{{butter, 1}, {lard, 1}}}};
    EXPECT_EQ(order(), (Names{"pie", "roast"}));
  }
}

TEST_F(NeedTest, WhatLeavesARecipeOverStandsBeforeIt) {
  for (const Names& names : {Names{"broth", "chicken"}, Names{"chicken", "broth"}}) {
    kitchen.recipes.clear();
    recipes(names);
    gives("chicken", recipe("broth").id);
    EXPECT_EQ(order(), (Names{"chicken", "broth"}));
  }
}

// The pie needs the dough, which leaves egg whites over, which the pie would ask for: nothing of
// that is an error.
TEST_F(NeedTest, WhatIsLeftOverMakesNoCircle) {
  const foods::FoodId egg = *kitchen.foods.find("egg");
  recipes({"dough", "pie"});
  asks("pie", recipe("dough").id);
  gives("pie", egg);
  asks("dough", egg);
  EXPECT_EQ(order(), (Names{"pie", "dough"}));
}

TEST(Need, ACircleIsShownWithTheLineOfEveryEdge) {
  House house;
  house.recipe("a", "1 cup b", "makes: 2 cups\n");
  house.recipe("b", "1 cup c", "makes: 2 cups\n");
  house.recipe("c", "1 cup a", "makes: 2 cups\n");
  house.plan("2027-03-02: {dinner: a}");
  EXPECT_FALSE(house.compile());
  EXPECT_TRUE(house.said("R001")) << house.said();
  EXPECT_NE(house.said().find("a -> b -> c -> a"), std::string::npos) << house.said();
  for (const char* edge : {"recipes/a.yaml:3:15", "recipes/b.yaml:3:15", "recipes/c.yaml:3:15"}) {
    EXPECT_NE(house.said().find(edge), std::string::npos) << house.said();
  }
}

} // namespace
} // namespace manciple::resolve
