#include "prep/clean_first.hpp"

#include "house.hpp"
#include "prep/samples.hpp"

namespace manciple::prep {
namespace {

// A dinner of a cake with egg for Ada and a soup without for Ben.
class CleanFirstTest : public testing::Test {
protected:
  std::vector<CleanFirst> orders(const std::string& ben_avoids) {
    house.household("", ben_avoids);
    house.recipe("a cake", "2 eggs, 1 lb all-purpose flour");
    house.recipe("soup", "1 lb onion");
    house.plan("2027-03-08: {dinner: [{dish: a cake, eaten by: [Ada]}, {dish: soup, eaten by: "
               "[Ben]}]}");
    compiled = house.good();
    return clean_first(compiled.kitchen, compiled.resolved);
  }
  const std::string& name_of(resolve::MakingId making) {
    return compiled.kitchen.recipe(compiled.resolved.making(making).recipe).name;
  }

  House house;
  emit::Compiled compiled;
};

// FDA Food Code 2022, 3-302.11 and annex 3: cross-contact with major food allergens.
TEST_F(CleanFirstTest, WhatMustBeFreeOfSomethingIsMadeBeforeWhatHasIt) {
  const auto all = orders("[egg]");
  ASSERT_EQ(all.size(), 1U);
  EXPECT_EQ(name_of(all.front().first), "soup");
  EXPECT_EQ(name_of(all.front().then), "a cake");
  EXPECT_EQ(all.front().why, "Ben must not have egg");
}

TEST_F(CleanFirstTest, AnyOrderWillDoWhereNobodyIsHarmed) {
  EXPECT_TRUE(orders("[]").empty());
  EXPECT_TRUE(orders("[peanut]").empty());
}

// A knife that has cut ham does a vegetarian no harm; one that has cut bread harms whoever eats
// without gluten.
TEST_F(CleanFirstTest, ADietOfChoiceIsNoDanger) {
  house.write("plans/household.yaml", "people: [{name: Ada, diet: vegan}]\n");
  house.plan("2027-03-08: {dinner: 1 onion}");
  compiled = house.good();
  const auto egg = *compiled.kitchen.foods.find("egg");
  EXPECT_EQ(harm_of(compiled.kitchen, egg), std::nullopt);
  house.write("plans/household.yaml", "people: [{name: Ada, diet: egg-free}]\n");
  compiled = house.good();
  EXPECT_EQ(harm_of(compiled.kitchen, *compiled.kitchen.foods.find("egg")), "egg");
}

// A session that makes a soup for Ben, who must not have egg, and a cake with egg for Ada.
class CleanSession : public testing::Test {
protected:
  CleanSession() {
    house.household("", "[egg]");
    cake("");
    house.recipe("soup", "1 lb onion", ahead("Simmer the soup"));
  }
  void cake(const std::string& further) {
    house.recipe("a cake", "2 eggs, 1 lb all-purpose flour" + further, ahead("Beat the cake"));
  }
  static std::string ahead(const std::string& what) {
    return "make ahead: yes\nkeeps: {fridge: 4 days}\nmethod: [{do: " + what +
           ", hands on: 20 min, then: 40 min, on: burner}]\n";
  }
  const Task& task(const std::string& of) {
    house.plan("2027-03-08: {dinner: [{dish: a cake, eaten by: [Ada]}, {dish: soup, eaten by: "
               "[Ben]}]}",
               sunday_afternoon);
    compiled = house.good();
    return find(of);
  }
  const Task& find(const std::string& of) {
    for (const Task& one : compiled.prep.sessions.at(0).tasks) {
      if (one.what.find(of) != std::string::npos) {
        return one;
      }
    }
    throw std::runtime_error(of);
  }

  House house;
  emit::Compiled compiled;
};

TEST_F(CleanSession, MakesFirstWhatIsForWhoeverMustAvoidSomething) {
  const Task& soup = task("Simmer the soup");
  EXPECT_NE(soup.what.find("made first, with clean boards and knives: Ben must not have egg"),
            std::string::npos)
      << soup.what;
  EXPECT_GE(find("Beat the cake").start, soup.start + soup.hands_on);
}

TEST_F(CleanSession, SaysNothingWhereNobodyIsHarmed) {
  house.household("", "[]");
  EXPECT_EQ(task("Simmer the soup").what.find("clean boards"), std::string::npos);
}

TEST_F(CleanSession, WashesWhereTheOtherIsNeededForIt) {
  // Each is for somebody who must not have what the other has: one has to be the second.
  house.write("plans/household.yaml",
              "people: [{name: Ada, avoids: [onion]}, {name: Ben, avoids: [egg]}]\n"
              "meals: {dinner: \"18:30\"}\nappliances: {burner: 4}\n");
  (void)task("Simmer the soup");
  const Task& soup = find("Simmer the soup");
  const Task& beaten = find("Beat the cake");
  const Task& first = soup.start < beaten.start ? soup : beaten;
  const Task& second = soup.start < beaten.start ? beaten : soup;
  const Task& wash = find("Wash boards");
  EXPECT_NE(first.what.find("made first"), std::string::npos) << first.what;
  EXPECT_GE(wash.start, first.start + first.hands_on);
  EXPECT_GE(second.start, wash.start + wash.hands_on);
}

TEST_F(CleanSession, WashesBeforeADishAlsoWhereItIsMadeBeforeOthers) {
  // Of soup and cake, which harm each other's eaters, one has to be the second; each goes before
  // what Cy eats and its own eater must not have.
  house.write("plans/household.yaml",
              "people: [{name: Ada, avoids: [onion]}, {name: Ben, avoids: [egg]}, {name: Cy}]\n"
              "meals: {dinner: \"18:30\"}\nappliances: {burner: 4}\n");
  house.recipe("a bavarois", "2 eggs", ahead("Whisk the bavarois"));
  house.recipe("an onion tart", "1 lb onion", ahead("Roll the tart"));
  house.plan("2027-03-08: {dinner: [{dish: a bavarois, eaten by: [Cy]}, {dish: an onion tart, "
             "eaten by: [Cy]}, {dish: a cake, eaten by: [Ada]}, {dish: soup, eaten by: [Ben]}]}",
             sunday_afternoon);
  compiled = house.good();
  const Task& soup = find("Simmer the soup");
  const Task& cake = find("Beat the cake");
  const Task& later = soup.start < cake.start ? cake : soup;
  const Task& wash = find("Wash boards");
  EXPECT_EQ(wash.making, later.making);
  EXPECT_LE(wash.start + wash.hands_on, later.start);
  EXPECT_GE(find("Whisk the bavarois").start, soup.start + soup.hands_on);
  EXPECT_GE(find("Roll the tart").start, cake.start + cake.hands_on);
  for (const Task* one : {&soup, &cake}) {
    EXPECT_NE(one->what.find("made first"), std::string::npos) << one->what;
  }
}

TEST_F(CleanSession, TakesAnUnknownFoodForWhatItsNameSpeaksOf) {
  house.household("", "[mushroom]");
  house.recipe("a cake", "1 lb forest mushroom relish, 1 lb all-purpose flour",
               ahead("Beat the cake"));
  const Task& soup = task("Simmer the soup");
  EXPECT_NE(soup.what.find("Ben must not have mushroom"), std::string::npos) << soup.what;
}

TEST_F(CleanSession, CutsLastWhatHarmsSomebody) {
  house.household("", "[mushroom]");
  house.write("plans/stores/corner.yaml",
              "shop: Corner\nprices: {onion: 1.00/lb, mushroom: 3.00/lb, egg: 12 large 3.00, "
              "all-purpose flour: 5 lb bag 3.00}\n");
  cake(", \"1 lb mushrooms, sliced\"");
  house.recipe("soup", "\"1 lb onion, diced\"", ahead("Simmer the soup"));
  const Task& soup = task("Simmer the soup");
  const Task& sliced = find("Slice");
  EXPECT_EQ(sliced.kind, Task::Kind::cut);
  EXPECT_GE(sliced.start, soup.start + soup.hands_on) << sliced.what;
}

} // namespace
} // namespace manciple::prep
