// What a plan's file says, with the house around it.
#include "kitchen/kitchen.hpp"

#include <gtest/gtest.h>

namespace manciple::kitchen {
namespace {

struct PlanRead {
  text::Sources sources;
  text::Diagnostics diagnostics;
  Kitchen kitchen;
  explicit PlanRead(const std::string& meals, const std::string& further = {},
                    const std::string& slots = "{lunch: \"12:30\", dinner: \"18:30\"}",
                    const std::string& counted = "2027-02-28") {
    text::FilesInMemory files;
    files.texts["plans/household.yaml"] =
        "people: [{name: Ada}]\nappliances: {burner: 2, oven: 0}\nmeals: " + slots + "\n";
    files.texts["plans/on-hand.yaml"] = "date: " + counted + "\non hand: [2 lb onions]\n";
    files.texts["recipes/stew.yaml"] = "name: Stew\nserves: 2\ningredients: [1 lb onion]\n";
    files.texts["recipes/roast.yaml"] =
        "name: Roast\nserves: 2\nmakes: 2 cups\ningredients: [1 lb onion]\n"
        "method: [{do: Roast, then: 1 h, on: oven, at: 400 F}]\n";
    files.texts["recipes/hash.yaml"] = "name: Hash\nserves: 2\ningredients: [1 cup roast]\n";
    files.texts["plans/p.yaml"] =
        "plan: P\nfrom: 2027-03-01\nuntil: 2027-03-31\nmeals: " + meals + "\ntrips: []\n" + further;
    kitchen = read_kitchen("plans/p.yaml", sources, diagnostics, files);
  }
  [[nodiscard]] std::string said() const { return render(diagnostics, sources); }
};

TEST(Meals, AtOneTimeOfDayAreBothEaten) {
  const PlanRead read("{2027-03-02: {dinner: stew, tea: 2 eggs}}", "",
                      "{tea: \"18:00\", dinner: \"18:00\"}");
  ASSERT_EQ(read.kitchen.plan->meals.size(), 2U) << read.said();
  EXPECT_EQ(read.kitchen.plan->meals[0].slot, "dinner");
  EXPECT_EQ(read.kitchen.plan->meals[1].slot, "tea");
}

TEST(Meals, AreWhatTheMostParticularDaySaysWhereverItStands) {
  for (const char* meals : {"{every day: {dinner: stew}, every weekday: {dinner: hash}, every "
                            "Friday: {dinner: roast}, 2027-03-05: {dinner: 2 eggs}}",
                            "{2027-03-05: {dinner: 2 eggs}, every Friday: {dinner: roast}, every "
                            "weekday: {dinner: hash}, every day: {dinner: stew}}"}) {
    const PlanRead read(meals);
    const auto& all = read.kitchen.plan->meals;
    ASSERT_EQ(all.size(), 31U) << read.said();
    EXPECT_EQ(all[3].dishes[0].what.text, "hash");   // Thu 4
    EXPECT_EQ(all[4].dishes[0].what.text, "2 eggs"); // Fri 5
    EXPECT_EQ(all[5].dishes[0].what.text, "stew");   // Sat 6
    EXPECT_EQ(all[11].dishes[0].what.text, "roast"); // Fri 12
  }
}

TEST(Meals, SaidTwiceForADayAreRefused) {
  const PlanRead read("{every Friday: {dinner: stew}, every friday: {dinner: roast}}");
  EXPECT_NE(read.said().find("p.yaml:4:54: error: the dinner of every friday is given twice"),
            std::string::npos)
      << read.said();
}

TEST(Recipes, AreNumberedAsMealsComeToThemWhicheverIsNamedFirst) {
  for (const char* meals :
       {"{2027-03-02: {lunch: hash, dinner: stew}, 2027-03-01: {dinner: stew}}",
        "{2027-03-01: {dinner: stew}, 2027-03-02: {dinner: stew, lunch: hash}}"}) {
    const PlanRead read(meals);
    const auto& recipes = read.kitchen.recipes;
    ASSERT_EQ(recipes.size(), 3U) << read.said();
    EXPECT_EQ(recipes[0].name, "Stew");
    EXPECT_EQ(recipes[1].name, "Hash");
    EXPECT_EQ(recipes[2].name, "Roast");
    for (std::size_t r = 0; r < recipes.size(); ++r) {
      EXPECT_EQ(recipes[r].id, RecipeId{static_cast<std::uint32_t>(r)});
    }
    EXPECT_EQ(*recipes[1].ingredients[0].recipe(), recipes[2].id);
    EXPECT_EQ(*read.kitchen.plan->meals[1].dishes[0].what.recipe(), recipes[1].id);
  }
}

TEST(Meals, OfOneNameAreRefused) {
  EXPECT_NE(PlanRead("{}", "", "{dinner: \"12:00\", Dinner: \"18:00\"}").said().find("two meals"),
            std::string::npos);
}

TEST(Staples, AndDishesThatAskForSeveralThingsAreRefused) {
  EXPECT_NE(PlanRead("{}", "staples: [keep salt and black pepper]\n").said().find("several things"),
            std::string::npos);
  EXPECT_NE(PlanRead("{}", "extra: [juice and zest of 2 lemons]\n").said().find("several things"),
            std::string::npos);
}

TEST(Sessions, NeedACook) {
  for (const char* cooks : {"0", "[Nobody]", "1.5", "some"}) {
    const PlanRead read("{}", std::string("prep: [{date: 2027-03-01, from: \"14:00\", until: "
                                          "\"17:00\", cooks: ") +
                                  cooks + "}]\n");
    EXPECT_EQ(read.diagnostics.errors(), 1U) << cooks << read.said();
  }
}

TEST(OnHand, CountedAfterThePlanIsAnErrorThatNamesTheFileToRenameItTo) {
  const PlanRead read("{}", "", "{dinner: \"18:30\"}", "2027-04-02");
  EXPECT_NE(read.said().find("plans/on-hand.yaml:1:7: error:"), std::string::npos) << read.said();
  EXPECT_NE(read.said().find("plans/on-hand/2027-04-02.yaml"), std::string::npos) << read.said();
  EXPECT_EQ(PlanRead("{}").kitchen.on_hand.lots.size(), 1U);
}

TEST(Appliances, OfOneNameAreRefused) {
  text::Sources sources;
  text::Diagnostics diagnostics;
  text::FilesInMemory files;
  files.texts["plans/household.yaml"] = "people: [{name: Ada}]\nmeals: {dinner: \"18:30\"}\n"
                                        "appliances: {oven: 1, burner: 2, Oven: 2}\n";
  files.texts["plans/p.yaml"] = "plan: P\nfrom: 2027-03-01\nuntil: 2027-03-31\nmeals: {}\n";
  const Kitchen kitchen = read_kitchen("plans/p.yaml", sources, diagnostics, files);
  EXPECT_EQ(diagnostics.errors(), 1U);
  EXPECT_NE(render(diagnostics, sources).find(":3:34: error: two appliances are called oven"),
            std::string::npos)
      << render(diagnostics, sources);
  EXPECT_EQ(kitchen.household.appliances.front().name, "burner");
}

TEST(Appliances, ThatTheHouseholdHasNoneOfAreNamedWithTheDishesThatNeedThem) {
  const PlanRead read("{2027-03-02: {dinner: roast}, 2027-03-05: {lunch: hash}}");
  EXPECT_NE(read.said().find(
                "recipes/roast.yaml:5:15: error: this step needs the appliance 'oven', but the "
                "household has none [K012]"),
            std::string::npos)
      << read.said();
  EXPECT_NE(read.said().find("plans/p.yaml:4:30: for Tue 2 Mar dinner"), std::string::npos)
      << read.said();
  EXPECT_NE(read.said().find("for Fri 5 Mar lunch"), std::string::npos) << read.said();
}

} // namespace
} // namespace manciple::kitchen
