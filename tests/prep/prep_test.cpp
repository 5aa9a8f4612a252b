#include "house.hpp"

#include "prep/method.hpp"

namespace manciple {
namespace {

bool reminded(const emit::Compiled& compiled, prep::Reminder::Kind kind, const char* date) {
  for (const prep::Reminder& r : compiled.prep.reminders) {
    if (r.kind == kind && text::print_date(r.date) == date) {
      return true;
    }
  }
  return false;
}

// How many tasks of a kind the first session has.
int count(const emit::Compiled& compiled, prep::Task::Kind kind) {
  const auto& tasks = compiled.prep.sessions.at(0).tasks;
  return static_cast<int>(std::count_if(tasks.begin(), tasks.end(),
                                        [&](const auto& task) { return task.kind == kind; }));
}

constexpr const char* sunday =
    "prep: [{every: Sunday, from: \"14:00\", until: \"17:00\", cooks: 2}]\n";

TEST(Prep, OneCutServesEveryDishThatNeedsIt) {
  House house;
  house.recipe("soup", "\"1 lb onion, diced\"");
  house.recipe("stew", "\"1 lb onion, diced\"");
  house.plan("2027-03-08: {dinner: soup}, 2027-03-09: {dinner: stew}", sunday);
  const auto compiled = house.good();
  ASSERT_EQ(compiled.prep.sessions.size(), 1U);
  ASSERT_EQ(compiled.prep.sessions[0].tasks.size(), 1U);
  EXPECT_EQ(compiled.prep.sessions[0].tasks[0].what, "Dice 7 onions (2 lb)");
  EXPECT_EQ(compiled.prep.sessions[0].tasks[0].purpose, "soup 1 lb, stew 1 lb");
}

TEST(Prep, FrozenMeatIsMovedToTheFridgeTheDayBefore) {
  House house;
  house.recipe("stew", "1 lb ground beef");
  house.write("plans/on-hand.yaml", "date: 2027-02-28\non hand: [\"1 lb ground beef, freezer\"]\n");
  house.plan("2027-03-10: {dinner: stew}");
  EXPECT_TRUE(reminded(house.good(), prep::Reminder::Kind::thaw, "2027-03-09"));
}

TEST(Prep, ALargePieceThawsForDays) {
  House house;
  house.write("plans/stores/corner.yaml", "shop: Corner\nprices: {whole turkey: 1.00/lb}\n");
  house.recipe("roast", "12 lb whole turkey");
  house.write("plans/on-hand.yaml",
              "date: 2027-02-28\non hand: [\"12 lb whole turkey, freezer\"]\n");
  house.plan("2027-03-10: {dinner: roast}");
  // 12 lb at a day for every 4 lb.
  EXPECT_TRUE(reminded(house.good(), prep::Reminder::Kind::thaw, "2027-03-07"));
}

TEST(Prep, WhatIsOnHandAndHasToBeFrozenIsATaskOfItsDay) {
  House house;
  house.recipe("stew", "1 lb ground beef");
  house.write("plans/on-hand.yaml",
              "date: 2027-03-01\non hand: [\"1 lb ground beef, fridge, use by 2027-03-02\"]\n");
  house.plan("2027-03-10: {dinner: stew}");
  auto compiled = house.good();
  EXPECT_TRUE(reminded(compiled, prep::Reminder::Kind::freeze, "2027-03-01"));
  ASSERT_EQ(compiled.prep.labels.size(), 1U);
  EXPECT_EQ(compiled.prep.labels[0].amount, "1 lb");
  // A session on that day sees to it.
  house.plan("2027-03-10: {dinner: stew}",
             "prep: [{date: 2027-03-01, from: \"14:00\", until: \"15:00\"}]\n");
  compiled = house.good();
  EXPECT_FALSE(reminded(compiled, prep::Reminder::Kind::freeze, "2027-03-01"));
  ASSERT_EQ(compiled.prep.sessions.size(), 1U);
  EXPECT_EQ(compiled.prep.sessions[0].tasks.at(0).what,
            "Portion 1 lb ground beef into 1 bag, label and freeze");
}

TEST(Prep, HerbsAreFrozenForWhatIsCookedAndBoughtFreshForASalad) {
  House house;
  house.write("plans/stores/corner.yaml",
              "shop: Corner\nprices: {egg: 12 large 3.00, parsley: {offer: bunch 1.60, "
              "until: 2027-03-02}}\n");
  house.recipe("stew", "1/4 cup chopped parsley, 2 eggs",
               "method: [{do: Stir in the parsley, hands on: 5 min, on: burner}]\n");
  house.recipe("salad", "1/4 cup chopped parsley, 2 eggs",
               "method: [{do: Boil the eggs, hands on: 5 min, on: burner}, "
               "{do: Strew the parsley over, hands on: 5 min}]\n");
  house.plan("2027-03-09: {dinner: stew}, 2027-03-11: {dinner: salad}");
  const auto compiled = house.good();
  const auto freezing =
      std::find_if(compiled.prep.reminders.begin(), compiled.prep.reminders.end(),
                   [](const auto& r) { return r.kind == prep::Reminder::Kind::freeze; });
  ASSERT_NE(freezing, compiled.prep.reminders.end());
  EXPECT_EQ(freezing->what, "Chop 1/4 bunch parsley; freeze in oil or water in an ice cube tray, "
                            "then in 1 bag, labelled");
  ASSERT_EQ(compiled.prep.labels.size(), 1U);
  EXPECT_EQ(compiled.prep.labels[0].purpose, "stew on Tue 9 Mar");
  // Four months (FSIS row 611).
  EXPECT_EQ(text::print_date(compiled.prep.labels[0].use_by), "2027-06-29");
  ASSERT_EQ(compiled.shopping.shortfalls.size(), 1U);
}

TEST(Prep, LemonsAreSqueezedIntoCubesWithALabelEach) {
  House house;
  house.write("plans/stores/corner.yaml",
              "shop: Corner\nprices: {lemons: {offer: 1.00 each, until: 2027-03-01}}\n");
  house.recipe("lemonade", "juice of 2 lemons");
  house.recipe("icing", "zest of 1 lemon");
  const std::string meals = "2027-03-29: {dinner: lemonade}, 2027-03-30: {dinner: icing}";
  house.plan(meals);
  const auto by_hand = house.good();
  const auto freezing =
      std::find_if(by_hand.prep.reminders.begin(), by_hand.prep.reminders.end(),
                   [](const auto& r) { return r.kind == prep::Reminder::Kind::freeze; });
  ASSERT_NE(freezing, by_hand.prep.reminders.end());
  EXPECT_EQ(freezing->what, "Wash, zest and juice 3 lemons; freeze as cubes in 2 bags, labelled");
  EXPECT_EQ(text::print_date(freezing->date), "2027-03-01");
  EXPECT_TRUE(reminded(by_hand, prep::Reminder::Kind::thaw, "2027-03-28"));
  ASSERT_EQ(by_hand.prep.labels.size(), 2U);
  EXPECT_EQ(by_hand.prep.labels[0].name, "lemon juice and zest");
  EXPECT_EQ(by_hand.prep.labels[0].purpose, "lemonade on Mon 29 Mar");
  // A year (FSIS row 536).
  EXPECT_EQ(text::print_date(by_hand.prep.labels[0].use_by), "2028-02-24");

  house.plan(meals, "prep: [{date: 2027-03-01, from: \"14:00\", until: \"17:00\", cooks: 1}]\n");
  const auto in_session = house.good();
  ASSERT_EQ(in_session.prep.sessions.size(), 1U);
  EXPECT_EQ(in_session.prep.sessions[0].tasks.at(0).what, freezing->what);
}

TEST(Prep, DryBeansAreSoakedTheEveningBefore) {
  House house;
  house.write("plans/stores/corner.yaml",
              "shop: Corner\nprices: {dried black bean: 1 lb bag 2.00}\n");
  house.recipe("beans", "1 lb dried black beans");
  house.plan("2027-03-10: {breakfast: beans}");
  EXPECT_TRUE(reminded(house.good(), prep::Reminder::Kind::soak, "2027-03-09"));
}

// When what stands before its cooking is begun: the day and the time of it.
std::string begun(const std::string& marinate, const std::string& from = "2027-03-10") {
  House house;
  house.recipe("stew", "1 lb ground beef",
               "marinate: " + marinate +
                   "\nmethod: [{do: Roast, hands on: 10 min, then: 50 min, on: oven}]\n");
  house.plan(from + ": {dinner: stew}"); // dinner is at 18:30
  for (const prep::Reminder& r : house.good().prep.reminders) {
    if (r.kind == prep::Reminder::Kind::marinate) {
      return text::print_date(r.date) + " " + text::print_clock(r.clock.value_or(0));
    }
  }
  return "never";
}

TEST(Prep, WhatMarinatesHasDoneSoWhenItsCookingStarts) {
  EXPECT_EQ(begun("2 h"), "2027-03-10 15:30");
  EXPECT_EQ(begun("8 h"), "2027-03-10 09:30");
  EXPECT_EQ(begun("12 h"), "2027-03-09 20:00"); // not at half past five in the morning
  EXPECT_EQ(begun("24 h"), "2027-03-09 17:30");
  EXPECT_EQ(begun("3 days"), "2027-03-07 17:30");
}

TEST(Prep, LeftoversArePutAwayWithinTwoHoursOfTheMeal) {
  House house;
  house.recipe("stew", "1 lb ground beef", "keeps: {fridge: 3 days}\n");
  house.plan("2027-03-09: {dinner: stew}, 2027-03-10: {dinner: leftovers of stew}");
  for (const prep::Reminder& r : house.good().prep.reminders) {
    if (r.kind == prep::Reminder::Kind::leftovers) {
      EXPECT_EQ(r.clock, 20 * 60 + 30);
      return;
    }
  }
  ADD_FAILURE() << "nothing is put away";
}

TEST(Prep, WhatIsCutForSeveralDishesIsNotCutAgainByTheRecipe) {
  House house;
  const std::string method = "make ahead: yes\nkeeps: {fridge: 4 days}\nmethod: [{do: Cut the "
                             "onion, hands on: 20 min}, {do: Fry, hands on: 5 min, on: "
                             "burner}]\n";
  house.recipe("soup", "\"1 lb onion, diced\"", method);
  house.recipe("stew", "\"1 lb onion, diced\"", method);
  house.plan("2027-03-08: {dinner: [soup, stew]}", sunday);
  const auto compiled = house.good();
  ASSERT_EQ(compiled.prep.sessions.size(), 1U);
  int by_the_recipes = 0;
  for (const prep::Task& task : compiled.prep.sessions[0].tasks) {
    by_the_recipes += task.kind == prep::Task::Kind::cook ? task.hands_on : 0;
  }
  EXPECT_EQ(by_the_recipes, 5 + 5);
  EXPECT_EQ(count(compiled, prep::Task::Kind::cut), 1);
}

TEST(Prep, WhatIsCutAheadShortensTheCookingOfTheDay) {
  House house;
  const std::string method = "method: [{do: Cut the onion, hands on: 20 min}, {do: Fry, "
                             "hands on: 5 min, on: burner}]\n";
  house.recipe("soup", "\"1 lb onion, diced\"", method);
  house.plan("2027-03-08: {dinner: soup}");
  EXPECT_EQ(house.good().prep.cooking.at(0).hands_on, 25);
  house.plan("2027-03-08: {dinner: soup}", sunday);
  EXPECT_EQ(house.good().prep.cooking.at(0).hands_on, 5);
}

TEST(Prep, TwoShelvesOfAnOvenAreOfOneTemperature) {
  const auto length = [](const std::string& other) {
    House house;
    house.household("", "[]", "{burner: 4, oven: 2}");
    const auto bake = [](const std::string& at) {
      return "make ahead: yes\nkeeps: {fridge: 4 days}\nmethod: [{do: Bake, then: 60 min, on: "
             "oven, at: " +
             at + "}]\n";
    };
    house.recipe("cake", "1 lb all-purpose flour", bake("350 F"));
    house.recipe("bread", "1 lb all-purpose flour", bake(other));
    house.plan("2027-03-08: {dinner: [cake, bread]}", sunday);
    return house.good().prep.sessions.at(0).length;
  };
  const int clearing_up = 6 + 2 + 2;                 // and the flour is weighed out
  EXPECT_EQ(length("350 F"), 14 + 60 + clearing_up); // heated at 20 F a minute
  EXPECT_EQ(length("425 F"),
            18 + 60 + 5 + 60 + clearing_up); // the hotter first, then the door open
}

TEST(Prep, ALabelSaysWhatItsBoxIsFor) {
  House house;
  house.recipe("stock", "1 lb onion", "makes: 4 cups\nkeeps: {fridge: 4 days}\n");
  house.recipe("soup", "2 cups stock");
  house.plan("2027-03-09: {dinner: soup}", sunday);
  const auto compiled = house.good();
  ASSERT_EQ(compiled.prep.labels.size(), 1U);
  EXPECT_EQ(compiled.prep.labels[0].purpose, "soup on Tue 9 Mar");
  EXPECT_EQ(compiled.prep.labels[0].amount, "2 cups");
  EXPECT_EQ(text::print_date(compiled.prep.labels[0].use_by), "2027-03-11");
}

TEST(Prep, WhatWouldMakeASessionFitIsNamed) {
  House house;
  const std::string ahead = "make ahead: yes\nkeeps: {fridge: 4 days}\nmethod: [{do: Work, hands "
                            "on: ";
  house.recipe("long", "1 lb onion", ahead + "100 min}]\n");
  house.recipe("short", "1 lb onion", ahead + "70 min}]\n");
  house.recipe("tiny", "1 lb onion", ahead + "20 min}]\n");
  house.plan("2027-03-08: {dinner: [long, short, tiny]}",
             "prep: [{every: Sunday, from: \"14:00\", until: \"16:10\", cooks: 1}]\n");
  (void)house.good();
  EXPECT_NE(house.said().find("it fits without 'short'"), std::string::npos) << house.said();
}

TEST(Prep, WorkThatDoesNotFitIsSaid) {
  House house;
  house.recipe("stock", "1 lb onion",
               "makes: 4 cups\nkeeps: {fridge: 4 days}\nmethod: [{do: Simmer, hands on: 10 min, "
               "then: 5 h, on: burner}]\n");
  house.recipe("soup", "2 cups stock");
  house.plan("2027-03-08: {dinner: soup}", sunday);
  house.good();
  EXPECT_TRUE(house.said("S001")) << house.said();
}

TEST(Prep, APartIsMadeBeforeWhatNeedsItInTheSameSession) {
  House house;
  house.recipe("sauce", "1 lb onion",
               "makes: 4 cups\nkeeps: {fridge: 4 days}\nmethod: [{do: Cook, hands on: 10 min, "
               "then: 20 min, on: burner}]\n");
  house.recipe("bake", "4 cups sauce",
               "make ahead: yes\nkeeps: {fridge: 4 days}\nmethod: [{do: Fill, hands on: 10 min}, "
               "{do: Bake, hands on: 1 min, then: 30 min, on: oven}]\n");
  house.plan("2027-03-08: {dinner: bake}", sunday);
  const auto compiled = house.good();
  ASSERT_EQ(compiled.prep.sessions.size(), 1U);
  EXPECT_EQ(compiled.prep.sessions[0].length, 30 + 10 + 31 + (4 + 20) + 3 + 8);
}

TEST(Prep, WhatIsKeptInTheFreezerIsFrozenOnTheDayItIsBought) {
  House house;
  house.plan("", "staples: [keep 2 lb ground beef in the freezer]\n");
  const auto compiled = house.good();
  ASSERT_EQ(compiled.shopping.lines.size(), 1U);
  EXPECT_GE(compiled.shopping.lines[0].to_freeze, 900);
  ASSERT_EQ(compiled.prep.labels.size(), 1U);
  EXPECT_EQ(compiled.prep.labels[0].purpose, "nothing planned yet");
  EXPECT_EQ(compiled.prep.labels[0].place, foods::Place::freezer);
  const auto bought = compiled.shopping.visits[compiled.shopping.lines[0].visit].date;
  EXPECT_TRUE(reminded(compiled, prep::Reminder::Kind::freeze, text::print_date(bought).c_str()));
  house.plan("", "staples: [keep 6 eggs in the freezer]\n");
  (void)house.good();
  EXPECT_NE(house.said().find("egg does not freeze well [K005]"), std::string::npos)
      << house.said();
}

// Whether hands are dirty with raw meat is asked of every step, and asks of those before it.
TEST(Prep, ManyShortColdStepsWithRawMeatDoNotDoubleTheWorkEach) {
  House house;
  std::string method = "{do: Shape the beef into patties, hands on: 5 min}";
  for (int i = 0; i < 60; ++i) {
    method += ", {do: Turn them over, hands on: 1 min}";
  }
  house.recipe("patties", "1 lb ground beef",
               "method: [" + method + ", {do: Fry, hands on: 10 min, on: burner}]\n");
  house.plan("2027-03-10: {dinner: patties}");
  const auto compiled = house.good();
  ASSERT_EQ(compiled.prep.cooking.size(), 1U);
  const kitchen::Recipe& patties = compiled.kitchen.recipe(compiled.resolved.makings.at(0).recipe);
  EXPECT_TRUE(prep::handles_raw(compiled.kitchen, patties, 0));
  // They are shaped by then.
  EXPECT_FALSE(prep::handles_raw(compiled.kitchen, patties, 61));
}

// The turkey is in the freezer, and it is the turkey that has to thaw.
TEST(Prep, WhatStandsForAnotherFoodIsMovedUnderItsOwnName) {
  House house;
  house.household("any of these: [{ground beef: 1, ground turkey: 1}]\n");
  house.recipe("stew", "1 lb ground beef");
  house.write("plans/on-hand.yaml",
              "date: 2027-02-28\non hand: [\"1 lb ground turkey, freezer\"]\n");
  house.plan("2027-03-10: {dinner: stew}");
  const auto compiled = house.good();
  ASSERT_EQ(compiled.prep.reminders.size(), 1U);
  EXPECT_EQ(compiled.prep.reminders[0].what,
            "Move 1 lb ground turkey from the freezer to the fridge, for stew on Wed 10 Mar");
}

// What is soaked is what is used: not the optional beans that nobody has bought, and not those in
// whose place others are taken.
TEST(Prep, WhatIsNotUsedIsNotSoaked) {
  House house;
  house.write("plans/stores/corner.yaml",
              "shop: Corner\nprices: {onion: 1.00/lb, dried black bean: 1 lb bag 2.00}\n");
  const auto soaked = [&](const std::string& ingredients) {
    house.recipe("beans", ingredients);
    house.plan("2027-03-10: {breakfast: beans}");
    std::vector<std::string> out;
    for (const prep::Reminder& one : house.good().prep.reminders) {
      if (one.kind == prep::Reminder::Kind::soak) {
        out.push_back(one.what);
      }
    }
    return out;
  };
  using Told = std::vector<std::string>;
  EXPECT_EQ(soaked("1 lb onion, \"1 lb dried black beans, optional\""), Told{});
  house.household("optional: buy\n");
  EXPECT_EQ(soaked("1 lb onion, \"1 lb dried black beans, optional\""),
            Told{"Soak 1 lb dried black beans for beans (Wed 10 Mar)"});
  house.household("any of these: [{dried chickpeas: 1, dried black beans: 1}]\n");
  EXPECT_EQ(soaked("1 lb dried chickpeas"),
            Told{"Soak 1 lb dried black beans for beans (Wed 10 Mar)"});
}

// What thaws in the fridge takes a night, so the day before a plan begins is a day on which
// something is taken out; where a plan goes on, a day that has been is none.
TEST(Prep, NothingIsTakenOutOfTheFreezerOnADayThatHasBeen) {
  House house;
  house.write("plans/stores/corner.yaml", "shop: Corner\nprices: {onion: 1.00/lb}\n");
  house.recipe("roast", "1 lb ground beef");
  house.recipe("sauce", "1 lb onion", "keeps: {fridge: 3 days, freezer: 3 months}\n");
  const auto thawed = [&](const std::string& counted, const std::string& eaten) {
    house.write("plans/on-hand.yaml",
                "date: " + counted +
                    "\non hand: [\"1 lb ground beef, freezer\", \"2 servings sauce, freezer\", "
                    "\"1 loaf white bread, freezer\"]\n");
    house.plan(eaten + ": {breakfast: 4 slices white bread, dinner: [roast, leftovers of sauce]}");
    std::vector<std::string> out;
    for (const prep::Reminder& one : house.good().prep.reminders) {
      if (one.kind == prep::Reminder::Kind::thaw) {
        out.push_back(text::print_date(one.date));
      }
    }
    return out;
  };
  EXPECT_EQ(thawed("2027-02-28", "2027-03-01"), std::vector<std::string>(3, "2027-02-28"));
  EXPECT_EQ(thawed("2027-03-05", "2027-03-05"), std::vector<std::string>(3, "2027-03-05"));
  EXPECT_EQ(thawed("2027-03-05", "2027-03-09"), std::vector<std::string>(3, "2027-03-08"));
}

TEST(Prep, AMealMayBeCalledUse) {
  House house;
  house.write("plans/household.yaml", "people: [{name: Ada}]\nmeals: {use: \"18:30\"}\n");
  house.write("plans/on-hand.yaml", "date: 2027-02-28\non hand: [\"1 lb ground beef, freezer\"]\n");
  house.plan("2027-03-10: {use: 1 lb ground beef}");
  const auto compiled = house.good();
  ASSERT_EQ(compiled.prep.reminders.size(), 1U);
  EXPECT_EQ(compiled.prep.reminders[0].what,
            "Move 1 lb ground beef from the freezer to the fridge, for use on Wed 10 Mar");
}

} // namespace
} // namespace manciple
