#include "safety/safety.hpp"

#include "house.hpp"
#include "safety/corpus.hpp"
#include "safety/errors.hpp"
#include "safety/hazard.hpp"
#include "safety/temperature.hpp"
#include "text/phrases.hpp"

#include <set>

namespace manciple {
namespace {

// The codes of the dangers in the house's plan.
std::set<std::string> dangers(const House& house) {
  text::Sources sources;
  text::Diagnostics read;
  const auto kitchen = kitchen::read_kitchen(house.root() + "/plans/p.yaml", sources, read);
  const auto resolved = resolve::resolve(kitchen, read);
  for (const auto& one : read.all()) {
    const bool fails = one.severity == text::Severity::error && one.code.number != "K014";
    EXPECT_FALSE(fails) << text::render(read, sources);
  }
  text::Diagnostics said;
  safety::check(kitchen, resolved, said);
  std::set<std::string> out;
  for (const auto& one : said.all()) {
    EXPECT_FALSE(one.fix.empty());
    EXPECT_FALSE(one.notes.empty()) << "no source";
    out.emplace(one.code.number);
  }
  return out;
}

std::set<std::string> dangers(const safety::Case& of) {
  House house;
  house.household("", "[]",
                  "{burner: 4, hob: 4, oven: 1, slow cooker: 1, pressure cooker: 1, grill: 1}");
  house.recipe("stew", std::string(of.ingredients), std::string(of.further) + "\n");
  house.plan("2027-03-02: {dinner: stew}");
  return dangers(house);
}

TEST(Safety, EveryDangerOfTheCorpusIsSeen) {
  for (const safety::Case& one : safety::dangerous) {
    EXPECT_TRUE(dangers(one).contains(std::string(one.code)))
        << one.code << ": " << one.ingredients << "\n"
        << one.further;
  }
  EXPECT_GE(safety::dangerous.size(), 60U);
}

TEST(Safety, WhatIsLeftOverIsKeptNoLongerThanADishOfIt) {
  House house;
  const auto kept = [&](const std::string& gives) {
    house.recipe("stew", "2 lb ground beef, 2 lb onions",
                 "method: [{do: Simmer to 160 F, hands on: 5 min, then: 1 h, on: burner}]\nkeeps: "
                 "{fridge: 3 days}\ngives: " +
                     gives + "\n");
    house.plan("2027-03-02: {dinner: stew}");
    return dangers(house);
  };
  EXPECT_TRUE(kept("{what: 1 stew bone, keeps: {fridge: 3 days}}").empty());
  EXPECT_FALSE(kept("{what: 1 stew bone, keeps: {fridge: 12 days}}").empty());
  EXPECT_TRUE(kept("{what: 1 stew peel, keeps: {fridge: 5 days}, of: onions}").empty());
}

TEST(Safety, WhatIsHarmlessIsLeftInPeace) {
  for (const safety::Case& one : safety::harmless) {
    const auto found = dangers(one);
    EXPECT_TRUE(found.empty()) << *found.begin() << ": " << one.ingredients << "\n" << one.further;
  }
  EXPECT_GE(safety::harmless.size(), 60U);
}

TEST(Safety, EveryHazardHasASourceAndIsInTheCorpus) {
  for (const safety::Hazard& hazard : safety::hazards()) {
    EXPECT_FALSE(hazard.source.empty());
    EXPECT_TRUE(
        std::any_of(safety::dangerous.begin(), safety::dangerous.end(),
                    [&](const safety::Case& one) { return one.code == hazard.code.number; }))
        << hazard.code.number;
  }
}

TEST(Safety, HoneyIsNotForAnInfant) {
  House house;
  house.write("plans/household.yaml",
              "people: [{name: Ada}, {name: Mia, age: 8 months}, {name: Tom, age: 3}]\n");
  house.recipe("glaze", "1 cup honey", "makes: 1 cup\n");
  house.recipe("stew", "1 lb carrots, 1/4 cup glaze");
  house.plan("2027-03-02: {dinner: stew}");
  EXPECT_EQ(dangers(house), std::set<std::string>{"H021"});
  house.plan("2027-03-02: {dinner: {dish: stew, eaten by: [Ada, Tom]}}");
  EXPECT_TRUE(dangers(house).empty());
  house.plan("2027-03-02: {breakfast: 2 tbsp honey}");
  EXPECT_EQ(dangers(house), std::set<std::string>{"H021"});
}

// Advice for who is pregnant; while nursing only what passes into the milk; nobody else is warned.
TEST(Safety, WhoExpectsAChildOrNursesOneIsWarned) {
  House house;
  house.recipe("stew", "1 lb swordfish steak, 1 lb onion");
  house.recipe("salad", "4 oz feta, 1 lb romaine lettuce");
  const auto people = [&](const std::string& about) {
    house.write("plans/household.yaml",
                "people: [{name: Tom}, {name: Ada" + about + "}]\nmeals: {dinner: \"18:30\"}\n");
  };
  const auto told = [&](const std::string& dish) {
    house.plan("2027-03-02: {dinner: " + dish + "}");
    return dangers(house);
  };
  const std::set<std::string> warned{"H022"};
  people(", pregnant: yes");
  EXPECT_EQ(told("stew"), warned);
  EXPECT_EQ(told("salad"), warned);
  EXPECT_TRUE(told("{dish: stew, eaten by: [Tom]}").empty());
  people(", nursing: yes");
  EXPECT_EQ(told("stew"), warned);
  EXPECT_TRUE(told("salad").empty());
  people("");
  EXPECT_TRUE(told("stew").empty());
}

TEST(Safety, IsLookedForOnceThePlanStands) {
  House house;
  house.recipe("stew", "1 lb carrots, 1 tbsp honey");
  house.recipe("soup", "1 lb onion");
  house.plan("2027-03-02: {dinner: [stew, leftovers of soup]}");
  EXPECT_FALSE(house.compile());
  EXPECT_TRUE(house.said("R002"));
}

TEST(Safety, WhatWasThawedIsNotInTheFreezerAgainUnseen) {
  House house;
  house.recipe("stew", "1 lb onion");
  house.plan("2027-03-02: {dinner: stew}");
  house.write("plans/on-hand.yaml",
              "date: 2027-03-01\non hand: [\"1 lb ground beef, thawed, in the freezer\"]\n");
  EXPECT_EQ(dangers(house), std::set<std::string>{"H012"});
}

TEST(Safety, RecipesThatNoPlanMakesAreLookedThroughToo) {
  House house;
  house.recipe("stew", "1 lb onion");
  house.recipe("oil", "\"6 cloves garlic, crushed\", 2 cups olive oil",
               "keeps: {pantry: 30 days}\nmethod: [{do: Cover the garlic with the oil, hands on: 5 "
               "min}]\n");
  house.plan("2027-03-02: {dinner: stew}");
  text::Sources sources;
  text::Diagnostics said;
  const auto all = kitchen::read_everything(house.root(), sources, said);
  EXPECT_TRUE(dangers(house).empty());
  said = {};
  safety::check_recipes(all, {"oil"}, said);
  EXPECT_TRUE(said.all().empty());
  safety::check_recipes(all, {}, said);
  EXPECT_TRUE(said.said(safety::errors::garlic_in_oil)) << text::render(said, sources);
}

// What no record describes is raw meat at a butcher's, until the house says what it is.
TEST(Safety, AFoodOfOnesOwnIsWhatItsRecordSays) {
  House house;
  house.recipe("tartare", "1 lb reindeer roll", "method: [Slice and serve]\n");
  house.plan("2027-03-02: {dinner: tartare}");
  const auto told = [&](const std::string& safety) {
    house.write("recipes/foods.yaml", "reindeer roll: {department: meat" + safety + "}\n");
    return dangers(house);
  };
  EXPECT_EQ(told(""), std::set<std::string>{"H007"});
  EXPECT_TRUE(told(", safety: {classes: [ready meat], source: smoked by us}").empty());
  EXPECT_EQ(told(", safety: {classes: [sprout], source: made up}"), std::set<std::string>{"H006"});
}

TEST(Safety, PhrasesHaveGapsAndEndings) {
  EXPECT_TRUE(text::says("Rinse the whole chickens.", {"rinse * chicken~"}));
  EXPECT_TRUE(text::says("RINSE CHICKEN", {"rinse * chicken~"}));
  EXPECT_FALSE(text::says("Rinse the rice and then cook the chicken", {"rinse * chicken~"}));
  EXPECT_FALSE(text::says("Rinsed chicken", {"rinse * chicken~"}));
  EXPECT_FALSE(text::says("", {"rinse"}));
}

TEST(Safety, TemperaturesAreReadInBothScales) {
  EXPECT_EQ(safety::temperatures_in("to 165 F, or 74 C"), (std::vector<int>{165, 165}));
  EXPECT_EQ(safety::temperatures_in("180°C"), std::vector<int>{356});
  // To the nearest degree, so that the Celsius of a safe temperature is that temperature.
  EXPECT_EQ(safety::temperatures_in("57 C, 63 C, 71 C, 100 C"),
            (std::vector<int>{135, 145, 160, 212}));
  EXPECT_TRUE(safety::temperatures_in("2 Forks, 3 Cups, 12").empty());
}

// Whatever is in a dish counts: without an amount, what may be bought instead, what was cooked
// before the plan, and foods that do not say in their names what they are.
TEST(Safety, WhoExpectsAChildIsWarnedOfAllThatIsInADish) {
  House house;
  house.write("plans/household.yaml", "people: [{name: Tom}, {name: Ada, pregnant: yes}]\n"
                                      "meals: {dinner: \"18:30\"}\n"
                                      "any of these: [{cheddar cheese: 1, stilton: 1}]\n");
  const auto told = [&](const std::string& ingredients) {
    house.recipe("stew", ingredients, "keeps: {freezer: 3 months}\n");
    house.plan("2027-03-02: {dinner: stew}");
    return dangers(house);
  };
  const std::set<std::string> warned{"H022"};
  EXPECT_TRUE(told("1 lb onion").empty());
  EXPECT_EQ(told("1 lb onion, \"brie, to serve\""), warned);
  EXPECT_EQ(told("1 lb onion, \"2 oz brie, optional\""), warned);
  EXPECT_EQ(told("4 oz cheddar cheese"), warned);
  for (const char* food : {"pastrami", "bologna", "smoked mackerel", "chicken liver", "coleslaw",
                           "swordfish steak", "bean sprouts", "radish sprouts", "deli turkey"}) {
    EXPECT_EQ(told(std::string("4 oz ") + food), warned) << food;
  }
  for (const char* food : {"salmon fillet", "mozzarella", "canned bean sprouts", "hot dog buns"}) {
    EXPECT_TRUE(
        told(std::string("1 ") + (food == std::string("hot dog buns") ? "" : "lb ") + food).empty())
        << food << house.said();
  }
  // It was cooked before, and stands in the freezer.
  house.recipe("stew", "4 oz feta", "keeps: {freezer: 3 months}\nmake ahead: yes\n");
  house.write("plans/on-hand.yaml", "date: 2027-03-01\non hand: [\"4 servings stew, freezer\"]\n");
  house.plan("2027-03-02: {dinner: leftovers of stew}");
  EXPECT_EQ(dangers(house), warned);
}

// What may be bought instead of maple syrup may bring the honey.
TEST(Safety, HoneyIsNotForAnInfantWhereItMayStandForAnother) {
  House house;
  house.write("plans/household.yaml", "people: [{name: Ada}, {name: Mia, age: 8 months}]\n"
                                      "any of these: [{maple syrup: 1, honey: 1}]\n");
  house.recipe("stew", "1 lb carrots, 1/4 cup maple syrup");
  house.plan("2027-03-02: {dinner: stew}");
  EXPECT_EQ(dangers(house), std::set<std::string>{"H021"});
}

} // namespace
} // namespace manciple
