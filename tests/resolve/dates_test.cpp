#include "resolve/dates.hpp"

#include "house.hpp"
#include "march.hpp"

namespace manciple::resolve {
namespace {

// A stew of the 9th that keeps for three days, with a sauce of the 7th in it that keeps for four.
// FDA Food Code 2022, 3-501.17: food that is combined is as old as its oldest part.
class DatesTest : public testing::Test {
protected:
  DatesTest() {
    kitchen.recipes.resize(2);
    stew_recipe().keeps_fridge = 3;
    sauce_recipe().keeps_fridge = 4;
    makings.resize(2);
    stew().date = march(9);
    stew().consumers.push_back({DishRef{}, 1, march(9)});
    sauce().id = MakingId{1};
    sauce().recipe = RecipeId{1};
    sauce().date = march(7);
    sauce().consumers.push_back({stew().id, 1, march(9)});
  }
  kitchen::Recipe& stew_recipe() { return kitchen.recipes[0]; }
  kitchen::Recipe& sauce_recipe() { return kitchen.recipes[1]; }
  Making& stew() { return makings[0]; }
  Making& sauce() { return makings[1]; }
  std::optional<Date> stew_is_good_until() {
    date_makings(kitchen, makings, by_products);
    return stew().good_until;
  }

  kitchen::Kitchen kitchen;
  std::vector<Making> makings; // what needs a making stands before it
  std::vector<ByProduct> by_products;
};

TEST_F(DatesTest, ADishKeepsFromTheDayOfItsOldestPart) {
  EXPECT_EQ(stew_is_good_until(), march(10)); // the 7th, and three days
  EXPECT_EQ(sauce().good_until, march(11));
}

TEST_F(DatesTest, ADishKeepsNoLongerThanAnyPart) {
  sauce_recipe().keeps_fridge = 2;
  EXPECT_EQ(stew_is_good_until(), march(9));
}

TEST_F(DatesTest, WhatComesFromFreezerOrPantryDoesNotCount) {
  sauce().consumers.front().from_freezer = true;
  EXPECT_EQ(stew_is_good_until(), march(12));
  sauce().consumers.front().from_freezer = false;
  sauce_recipe().keeps_pantry = 90;
  EXPECT_EQ(stew_is_good_until(), march(12));
}

TEST_F(DatesTest, WhatIsMadeForTheDishOnItsDayDoesNotCount) {
  sauce().date = march(9);
  sauce_recipe().keeps_fridge = 1; // by itself
  EXPECT_EQ(stew_is_good_until(), march(12));
}

// A roast of the 6th leaves meat over for the sauce, which makes the stew three days old.
TEST_F(DatesTest, WhatIsLeftOverIsAsOldAsItsDishThroughEveryOther) {
  kitchen.recipes.resize(3);
  kitchen.recipes[2].gives.emplace_back().keeps_unfrozen = 4;
  makings.resize(3);
  makings[2].id = MakingId{2};
  makings[2].recipe = RecipeId{2};
  makings[2].date = march(6);
  ByProduct meat;
  meat.of = makings[2].id;
  meat.date = march(6);
  meat.parts.push_back({sauce().id, 0, 1, 1, march(7)});
  by_products = {meat};
  EXPECT_EQ(stew_is_good_until(), march(9)); // the 6th, and three days
  EXPECT_EQ(sauce().good_until, march(10));
  EXPECT_EQ(by_products.front().good_until, march(10));
}

TEST_F(DatesTest, APartIsEatenLastWhenItsDishIs) {
  stew().consumers.push_back({DishRef{}, 1, march(11)});
  EXPECT_EQ(last_eaten(makings), (std::vector<Date>{march(11), march(11)}));
  stew().consumers.back().from_freezer = true;
  EXPECT_EQ(last_eaten(makings), (std::vector<Date>{march(9), march(9)}));
  EXPECT_EQ(gap_in_days(march(9), march(7)), -2);
}

TEST(Dates, ADishIsAsOldAsTheSauceInIt) {
  House house;
  house.recipe("sauce", "1 lb onion", "makes: 2 cups\nkeeps: {fridge: 4 days}\n");
  house.recipe("stew", "1 cup sauce, 1 lb ground beef", "keeps: {fridge: 3 days}\n");
  const std::string session = "prep: [{date: 2027-03-07, from: \"14:00\", until: \"17:00\"}]\n";
  house.plan("2027-03-09: {dinner: stew}", session);
  auto compiled = house.good();
  const auto& makings = compiled.resolved.makings;
  ASSERT_EQ(makings.size(), 2U);
  EXPECT_EQ(makings[1].date, text::parse_date("2027-03-07"));
  // The sauce is of the 7th: three days from then, not from the 9th.
  EXPECT_EQ(makings[0].good_until, text::parse_date("2027-03-10"));
  EXPECT_EQ(makings[1].good_until, text::parse_date("2027-03-11"));
  // If the stew is eaten on the 11th as well, the sauce is made when it is needed.
  house.plan("2027-03-09: {dinner: stew}, 2027-03-11: {dinner: leftovers of stew}", session);
  compiled = house.good();
  EXPECT_EQ(compiled.resolved.makings[1].date, text::parse_date("2027-03-09"));
  EXPECT_EQ(compiled.resolved.makings[0].good_until, text::parse_date("2027-03-12"));
  // If it freezes, it waits frozen, and its days do not count.
  house.recipe("sauce", "1 lb onion",
               "makes: 2 cups\nkeeps: {fridge: 4 days, freezer: 3 months}\n");
  compiled = house.good();
  EXPECT_EQ(compiled.resolved.makings[1].date, text::parse_date("2027-03-07"));
  EXPECT_TRUE(compiled.resolved.makings[1].consumers.at(0).from_freezer);
  EXPECT_EQ(compiled.resolved.makings[0].good_until, text::parse_date("2027-03-12"));
}

} // namespace
} // namespace manciple::resolve
