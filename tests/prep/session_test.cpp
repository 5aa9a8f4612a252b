#include "house.hpp"

#include "kitchen/known_appliances.hpp"

#include "prep/cooling.hpp"
#include "prep/method.hpp"
#include "prep/reheat.hpp"
#include "prep/roasting.hpp"

namespace manciple {
namespace {

using Kind = prep::Task::Kind;

constexpr const char* sunday_afternoon =
    "prep: [{every: Sunday, from: \"13:00\", until: \"19:00\", cooks: 2}]\n";

kitchen::MethodStep step(const std::string& what, int hands_on = 10, const std::string& on = "") {
  kitchen::MethodStep out;
  out.what = what;
  out.hands_on = hands_on;
  out.appliance = on;
  out.is_hot = kitchen::known_appliance(on).heats;
  return out;
}

kitchen::Recipe recipe_of(const std::vector<std::string>& lines) {
  kitchen::Recipe out;
  for (const std::string& line : lines) {
    kitchen::Ingredient one;
    one.text = line;
    out.ingredients.push_back(one);
  }
  return out;
}

TEST(Method, TellsWhatOnlyPreparesFromTheRest) {
  const kitchen::Recipe recipe = recipe_of({"2 carrots", "1 onion", "3 potatoes", "1 lb chicken"});
  for (const char* what :
       {"Cut the vegetables", "Scrub and cut the vegetables", "Grate the carrots",
        "Slice the potatoes and the onion", "Cut the vegetables, then the chicken",
        "Peel, dice and rinse the potatoes", "Finely chop the onion"}) {
    EXPECT_TRUE(prep::only_prepares(recipe, step(what))) << what;
  }
  for (const char* what : {"Dice the vegetables, sweat them in the oil", "Mash the potatoes", "Mix",
                           "Cut the rest and dress", "Soak the beans"}) {
    EXPECT_FALSE(prep::only_prepares(recipe, step(what))) << what;
  }
  EXPECT_FALSE(prep::only_prepares(recipe, step("Slice the onion", 5, "burner")));
  // The oil is in no word of the eggs.
  EXPECT_FALSE(
      prep::only_prepares(recipe_of({"4 boiled eggs"}), step("Peel the eggs and oil the tray")));
  EXPECT_TRUE(
      prep::only_prepares(recipe_of({"4 boiled eggs, 1 onion"}), step("Peel the onion and eggs")));
}

// To season carrots is not to handle sea bass.
TEST(Method, FindsAFoodByWholeWords) {
  House house;
  house.recipe("bake", "1 lb sea bass fillets, 1 lb carrots",
               "method: [{do: Season the carrots, hands on: 5 min}, {do: Rinse the sea bass, hands "
               "on: 5 min}, {do: Bake, then: 20 min, on: oven}]\n");
  house.plan("2027-03-02: {dinner: bake}");
  const auto compiled = house.good();
  const kitchen::Recipe& bake = compiled.kitchen.recipe(compiled.resolved.makings.at(0).recipe);
  EXPECT_FALSE(prep::handles_raw(compiled.kitchen, bake, 0));
  EXPECT_TRUE(prep::handles_raw(compiled.kitchen, bake, 1));
}

TEST(Method, LeavesOutWhatIsCutAlready) {
  const kitchen::Recipe recipe = recipe_of({"2 carrots", "1 onion"});
  const auto rest = [&](const char* what) { return prep::without_cutting(recipe, step(what)); };
  EXPECT_EQ(rest("Dice the vegetables, sweat them in the oil"), "Sweat them in the oil");
  EXPECT_EQ(rest("Dice the vegetables, mix with the lime and salt"), "Mix with the lime and salt");
  EXPECT_EQ(rest("Toast the tortillas, shred the cabbage, set out"),
            "Toast the tortillas, set out");
  EXPECT_EQ(rest("Chop, dress and fill the bread"), "Chop, dress and fill the bread");
  EXPECT_EQ(rest("Simmer"), "Simmer");
}

TEST(Method, HandsHaveAPartThatStaysAndOneThatGrows) {
  // Shaking a jar hardly grows, rolling meatballs does.
  EXPECT_EQ(prep::hands_on(step("Shake everything in a jar", 5), measure::Rational(5, 4)), 6);
  EXPECT_EQ(prep::hands_on(step("Drain and rinse the beans", 5), 3), 8);
  EXPECT_EQ(prep::hands_on(step("Roll the balls", 20), 2), 36);
  EXPECT_EQ(prep::hands_on(step("Roll the balls", 20), measure::Rational(1, 2)), 12);
  EXPECT_EQ(prep::hands_on(step("Stir", 1), measure::Rational(1, 4)), 1);
}

TEST(Roast, TakesMinutesByThePound) {
  // FSIS cooking times, product 61: a boneless pork loin of 2 to 4 lb at 325 F, 23 to 33 minutes a
  // pound; product 84: a ham of 5 to 7 lb, 18 to 24.
  House house;
  house.write("plans/stores/corner.yaml",
              "shop: Corner\nprices: {pork loin roast: 3.00/lb, bone-in ham: 2.00/lb, "
              "beef steak: 9.00/lb}\n");
  const auto roasted = [&](const std::string& line, const std::string& at, int then) {
    house.recipe("roast", line,
                 "made in: exactly\nmethod: [{do: Roast, hands on: 2 min, then: " +
                     std::to_string(then) + " min, on: oven, at: " + at + "}]\n");
    house.plan("2027-03-02: {dinner: roast for 3}"); // it serves two
    return house.good().prep.cooking.at(0).steps.at(0).then;
  };
  EXPECT_EQ(roasted("4 lb pork loin roast", "375 F", 80), 120);
  EXPECT_EQ(roasted("4 lb pork loin roast", "325 F", 80), 138); // 6 lb, 23 minutes a pound
  EXPECT_EQ(roasted("4 lb bone-in ham", "325 F", 60), 108);     // 6 lb, 18 minutes a pound
  EXPECT_EQ(roasted("4 lb beef steak", "325 F", 60), 60);       // no roast
}

TEST(Roast, TakesWhatItsRecordSays) {
  foods::Food goose;
  goose.roasts = {{8, 350, 20, "x"}, {12, 350, 16, "x"}};
  kitchen::MethodStep step;
  step.then = 100;
  step.appliance = "oven";
  step.fahrenheit = 350;
  const measure::Rational pound = measure::facts(measure::Unit::pound).factor;
  const auto minutes = [&](int usual, int pounds) {
    return prep::roasting_minutes(goose, step, pound * usual, pound * pounds);
  };
  EXPECT_EQ(minutes(8, 8), 160);   // 20 minutes a pound; the step says less
  EXPECT_EQ(minutes(10, 10), 160); // of the heavier ones 16
  EXPECT_EQ(minutes(14, 20), 160); // two of 10 lb
  step.fahrenheit = 400;           // hotter than the record has it
  EXPECT_EQ(minutes(8, 8), 100);
  EXPECT_EQ(minutes(8, 4), 50);
}

TEST(Cooling, TakesShallowPansAndHasAnEnd) {
  House house;
  house.recipe("stock", "1 lb onion",
               "makes: 16 cups\nmade in: exactly\nkeeps: {fridge: 4 days}\nmethod: [{do: Simmer, "
               "hands on: 5 min, then: 1 h, on: burner}]\n");
  house.recipe("soup", "16 cups stock");
  house.plan("2027-03-09: {dinner: soup}", sunday_afternoon);
  const auto compiled = house.good();
  const prep::Task* cool = nullptr;
  const prep::Task* store = nullptr;
  const prep::Task* simmer = nullptr;
  for (const prep::Task& task : compiled.prep.sessions.at(0).tasks) {
    cool = task.kind == Kind::cool ? &task : cool;
    store = task.kind == Kind::store ? &task : store;
    simmer = task.kind == Kind::cook ? &task : simmer;
  }
  ASSERT_NE(cool, nullptr);
  ASSERT_NE(store, nullptr);
  // A pan of 9 by 13 in, 2 in deep, holds a little over 16 cups.
  EXPECT_NE(cool->what.find("1 shallow pan"), std::string::npos) << cool->what;
  const int off = simmer->start + simmer->hands_on + simmer->then;
  EXPECT_EQ(store->by, off + 120); // FDA Food Code 3-501.14
  EXPECT_LE(store->start + store->hands_on, off + 120);
  EXPECT_NE(store->what.find("by 16:05"), std::string::npos) << store->what;
  EXPECT_NE(store->what.find("at 41 F by 20:05"), std::string::npos) << store->what;
}

TEST(Session, AfterRawMeatTheSameHandsWashUp) {
  House house;
  house.recipe(
      "balls", "1 lb ground beef",
      "make ahead: yes\nkeeps: {fridge: 4 days}\nmethod: [{do: Roll the beef, hands on: 20 "
      "min}, {do: Bake, hands on: 1 min, then: 20 min, on: oven, at: 400 F}]\n");
  house.plan("2027-03-08: {dinner: balls}", sunday_afternoon);
  const auto compiled = house.good();
  const auto& tasks = compiled.prep.sessions.at(0).tasks;
  const auto roll = std::find_if(tasks.begin(), tasks.end(), [](const auto& task) {
    return task.what == "balls: Roll the beef";
  });
  ASSERT_NE(roll, tasks.end());
  const auto wash = std::find_if(tasks.begin(), tasks.end(), [&](const auto& task) {
    return task.kind == Kind::wash && task.start == roll->start + roll->hands_on;
  });
  ASSERT_NE(wash, tasks.end());
  EXPECT_EQ(wash->cook, roll->cook);
}

TEST(Session, RawMeatIsPortionedAfterWhatIsCutAndTheBoardIsWashed) {
  House house;
  house.recipe("salad", "\"1 lb carrots, grated\"");
  house.recipe("stew", "1 lb ground beef");
  house.write("plans/on-hand.yaml",
              "date: 2027-03-01\non hand: [\"1 lb ground beef, fridge, use by 2027-03-08\", \"1 lb "
              "carrots, fridge, use by 2027-03-20\"]\n");
  house.plan("2027-03-02: {dinner: salad}, 2027-03-20: {dinner: stew}",
             "prep: [{date: 2027-03-01, from: \"14:00\", until: \"16:00\"}]\n");
  const auto compiled = house.good();
  std::vector<Kind> kinds;
  for (const prep::Task& task : compiled.prep.sessions.at(0).tasks) {
    kinds.push_back(task.kind);
  }
  EXPECT_EQ(kinds, (std::vector<Kind>{Kind::cut, Kind::portion, Kind::wash}));
}

TEST(Session, BreadIsPortionedAfterWhatIsCutForWhoeverMustNotHaveIt) {
  House house;
  house.household("", "[wheat]");
  house.recipe("salad", "\"2 lb carrots, grated\"");
  house.recipe("toast", "1 lb white bread");
  house.write("plans/on-hand.yaml",
              "date: 2027-03-01\non hand: [\"1 lb white bread, pantry, use by 2027-03-03\", \"2 lb "
              "carrots, fridge, use by 2027-03-20\"]\n");
  house.plan("2027-03-02: {dinner: salad}, 2027-03-20: {dinner: {dish: toast, eaten by: [Ada]}}",
             "prep: [{date: 2027-03-01, from: \"14:00\", until: \"16:00\", cooks: 2}]\n");
  const auto compiled = house.good();
  const auto& tasks = compiled.prep.sessions.at(0).tasks;
  const auto of = [&](Kind kind) {
    const auto found = std::find_if(tasks.begin(), tasks.end(),
                                    [&](const prep::Task& one) { return one.kind == kind; });
    EXPECT_NE(found, tasks.end());
    return found == tasks.end() ? prep::Task{} : *found;
  };
  EXPECT_GE(of(Kind::portion).start, of(Kind::cut).start + of(Kind::cut).hands_on);
}

TEST(Session, DoughDoesNotWaitLongerThanItMay) {
  House house;
  house.recipe(
      "bread", "2 lb all-purpose flour",
      "make ahead: yes\nkeeps: {pantry: 4 days}\nmethod: [{do: Knead, hands on: 10 min}, "
      "{do: Let rise, then: 60 min, wait: at most 5 min}, {do: Shape, hands on: 10 min}]\n");
  const auto busy = [&](const std::string& name) {
    house.recipe(
        name, "1 lb onion",
        "make ahead: yes\nkeeps: {fridge: 4 days}\nmethod: [{do: Work, hands on: 50 min}]\n");
  };
  busy("one");
  busy("two");
  busy("three");
  house.plan("2027-03-08: {dinner: [bread, one, two, three]}",
             "prep: [{every: Sunday, from: \"13:00\", until: \"19:00\", cooks: 1}]\n");
  const auto compiled = house.good();
  int risen = -1;
  int shaped = -1;
  for (const prep::Task& task : compiled.prep.sessions.at(0).tasks) {
    risen = task.what == "bread: Let rise" ? task.start + task.then : risen;
    shaped = task.what == "bread: Shape" ? task.start : shaped;
  }
  EXPECT_GE(shaped, risen);
  EXPECT_LE(shaped, risen + 5);
}

TEST(Session, MoreThanAMixerHoldsIsDoneInRuns) {
  House house;
  house.household("holds: {mixer: 2 qt}\n", "[]", "{burner: 4, oven: 1, mixer: 1}");
  house.recipe("dough", "\"4 cups all-purpose flour\", 2 cups water",
               "made in: exactly\nmakes: 1 kg\nkeeps: {fridge: 4 days}\nmethod: [{do: Knead, hands "
               "on: 2 min, then: 10 min, on: mixer}]\n");
  house.recipe("buns", "3 kg dough");
  house.plan("2027-03-08: {dinner: buns}", sunday_afternoon);
  const auto compiled = house.good();
  const auto& tasks = compiled.prep.sessions.at(0).tasks;
  const auto kneading = std::find_if(
      tasks.begin(), tasks.end(), [](const prep::Task& task) { return task.kind == Kind::cook; });
  ASSERT_NE(kneading, tasks.end());
  EXPECT_NE(kneading->what.find("in 2 runs"), std::string::npos) << kneading->what;
  EXPECT_EQ(kneading->then, 20);
}

// What a session's tasks for a making are called, in their order.
std::vector<std::string> cooked_in(const emit::Compiled& compiled) {
  std::vector<std::string> out;
  for (const prep::Task& task : compiled.prep.sessions.at(0).tasks) {
    if (task.kind == Kind::cook) {
      out.push_back(task.what);
    }
  }
  return out;
}

class Trays : public ::testing::Test {
protected:
  emit::Compiled baked(const std::string& appliances, int cookies, const std::string& step = {}) {
    house.household("", "[]", appliances);
    house.recipe(
        "dough", "1 lb onion",
        "made in: exactly\nmakes: 12 cookies\nkeeps: {fridge: 4 days}\nmethod: [{do: Bake, "
        "hands on: 3 min, then: 10 min, on: oven, at: 350 F" +
            (step.empty() ? ", in: tray, fits: 6 cookies" : step) + "}]\n");
    house.recipe("plate", std::to_string(cookies / 6) + " servings dough"); // two of twelve cookies
    house.plan("2027-03-08: {dinner: plate}", sunday_afternoon);
    return house.good();
  }
  House house;
};

TEST_F(Trays, StandSideBySideOnTheShelvesOfAnOvenAndThenInLoads) {
  using Names = std::vector<std::string>;
  EXPECT_EQ(cooked_in(baked("{oven: 1}", 6)), (Names{"dough: Bake"}));
  EXPECT_EQ(cooked_in(baked("{oven: 2}", 12)), (Names{"dough: Bake, 2 trays"}));
  EXPECT_EQ(cooked_in(baked("{oven: 1}", 12)),
            (Names{"dough: Bake, 1 tray, load 1 of 2", "dough: Bake, 1 tray, load 2 of 2"}));
  const auto compiled = baked("{oven: 2}", 18);
  EXPECT_EQ(cooked_in(compiled),
            (Names{"dough: Bake, 2 trays, load 1 of 2", "dough: Bake, 1 tray, load 2 of 2"}));
  int ends = 0;
  for (const prep::Task& task : compiled.prep.sessions.at(0).tasks) {
    if (task.kind == Kind::cook) {
      EXPECT_EQ(task.then, 10);
      EXPECT_EQ(task.hands_on, 3 * task.places);
      EXPECT_GE(task.start, ends);
      ends = task.start + task.hands_on + task.then;
    }
  }
}

TEST_F(Trays, AreNoMoreThanTheHouseHas) {
  EXPECT_EQ(cooked_in(baked("{oven: 2, tray: 1}", 18)).size(), 3U);
  // Where nobody says how many there are, or how much fits, nothing is known to be too much.
  EXPECT_EQ(cooked_in(baked("{oven: 2}", 18, ", in: tray")).size(), 1U);
}

TEST_F(Trays, HoldServingsAndMeasuresThatTheRecipeMakes) {
  EXPECT_EQ(cooked_in(baked("{oven: 1}", 12, ", in: tray, fits: 1 serving")).size(), 2U);
  (void)baked("{oven: 1}", 12, ", in: tray, fits: 2 cups");
  EXPECT_TRUE(house.said("K004") || !house.diagnostics.all().empty()); // a warning, and no end
}

TEST(Session, APotIsFilledByWhatItHolds) {
  House house;
  const auto simmered = [&](const std::string& appliances, const std::string& holds) {
    house.household("holds: " + holds + "\n", "[]", appliances);
    house.recipe(
        "stock", "1 lb onion",
        "made in: exactly\nmakes: 4 qt\nkeeps: {fridge: 4 days}\nmethod: [{do: Cook, hands "
        "on: 2 min, then: 30 min, on: burner, in: kettle}]\n");
    house.recipe("soup", "12 qt stock");
    house.plan("2027-03-08: {dinner: soup}", sunday_afternoon);
    return cooked_in(house.good()).at(0);
  };
  EXPECT_EQ(simmered("{burner: 4}", "{pot: 4 qt}"), "stock: Cook"); // of a kettle nothing is said
  EXPECT_EQ(simmered("{burner: 4}", "{kettle: 4 qt}"), "stock: Cook, in 3 kettles");
  EXPECT_EQ(simmered("{burner: 4, kettle: 2}", "{kettle: 4 qt}"),
            "stock: Cook, in 2 kettles, in 2 runs");
  EXPECT_EQ(simmered("{burner: 1}", "{kettle: 4 qt}"), "stock: Cook, in 3 runs");
}

TEST(Session, WhatBrownsOrWiltsIsNotCutAhead) {
  House house;
  const auto cut_in_session = [&](const std::string& line) {
    house.recipe("dish", "\"" + line + "\"");
    house.plan("2027-03-10: {dinner: dish}", sunday_afternoon); // three days after the session
    return !house.good().prep.sessions.empty();
  };
  EXPECT_TRUE(cut_in_session("4 carrots, diced"));
  EXPECT_FALSE(cut_in_session("2 apples, diced"));
  EXPECT_FALSE(cut_in_session("1 head romaine lettuce, torn"));
  EXPECT_FALSE(cut_in_session("2 onions, diced")); // two days at most
  house.write("recipes/foods.yaml", "carrot: {keeps: {cut: [when used, our kitchen]}}\n"
                                    "onion: {keeps: {cut: [3 days, our kitchen]}}\n");
  EXPECT_FALSE(cut_in_session("4 carrots, diced"));
  EXPECT_TRUE(cut_in_session("2 onions, diced"));
}

// 200 C is 392 F, and what a cook turns is the 200 of the recipe.
TEST(Session, AMetricOvenIsTurnedToWhatItsDialShows) {
  House house;
  house.household("measures: metric\n");
  house.recipe("cake", "500 g all-purpose flour",
               "make ahead: yes\nkeeps: {fridge: 4 days}\n"
               "method: [{do: Bake, hands on: 5 min, then: 30 min, on: oven, at: 200 C}]\n");
  house.plan("2027-03-08: {dinner: cake}", sunday_afternoon);
  const auto compiled = house.good();
  const auto& tasks = compiled.prep.sessions.at(0).tasks;
  const auto heating = std::find_if(tasks.begin(), tasks.end(), [](const prep::Task& task) {
    return task.kind == Kind::preheat;
  });
  ASSERT_NE(heating, tasks.end());
  EXPECT_EQ(heating->what, "Heat the oven to 200 °C for cake");
}

TEST(Session, ItsCooksHaveNames) {
  House house;
  house.recipe("soup", "\"1 lb carrots, diced\"");
  house.plan("2027-03-08: {dinner: soup}",
             "prep: [{every: Sunday, from: \"14:00\", until: \"17:00\", cooks: [Ada, Ben]}]\n");
  const auto compiled = house.good();
  EXPECT_EQ(compiled.kitchen.plan->sessions.at(0).cooks, 2);
  EXPECT_EQ(compiled.kitchen.plan->sessions.at(0).names, (std::vector<std::string>{"Ada", "Ben"}));
}

TEST(Session, ADishOfTheDayIsCookedWhenASessionThatIsTooLongHasMadeWhatItNeeds) {
  House house;
  house.recipe("stock", "1 lb onion",
               "makes: 4 cups\nkeeps: {fridge: 4 days}\nmethod: [{do: Simmer, hands on: 10 min, "
               "then: 1 h, on: burner}]\n");
  house.recipe("soup", "4 cups stock",
               "method: [{do: Boil, hands on: 10 min, then: 10 min, on: burner}]\n");
  house.recipe("work", "1 lb onion",
               "make ahead: yes\nkeeps: {fridge: 4 days}\nmethod: [{do: Work, hands on: 6 h}]\n");
  house.plan("2027-03-07: {dinner: soup}, 2027-03-08: {dinner: work}",
             "prep: [{every: Sunday, from: \"14:00\", until: \"17:30\"}]\n");
  const auto compiled = house.good();
  EXPECT_TRUE(house.said("S001"));
  int made = 0;
  for (const prep::Task& task : compiled.prep.sessions.at(0).tasks) {
    made = task.what == "stock: Simmer" ? 14 * 60 + task.start + task.hands_on + task.then : made;
  }
  EXPECT_GT(made, 0);
  EXPECT_LE(made, compiled.prep.cooking.at(0).start);
  EXPECT_EQ(compiled.prep.cooking.at(0).done, 18 * 60 + 30);
}

TEST(Reheat, IsFromTheStateInWhichItWasKept) {
  kitchen::Recipe recipe;
  recipe.reheat = "Simmer in sauce from frozen, 15 minutes, 165 F in the middle.";
  EXPECT_EQ(prep::reheat_words(recipe, true), recipe.reheat);
  EXPECT_EQ(prep::reheat_words(recipe, false), "Simmer in sauce, 15 minutes, 165 F in the middle.");
  recipe.reheat = "From frozen, unwrapped, to 165 F.";
  EXPECT_EQ(prep::reheat_words(recipe, false), "Unwrapped, to 165 F.");
  EXPECT_TRUE(prep::is_reheated_frozen(recipe));
  recipe.reheat = "Thaw overnight in the fridge or melt from frozen in the pot, then bring to a "
                  "boil.";
  EXPECT_EQ(prep::reheat_words(recipe, false), "Bring to a boil.");
  EXPECT_FALSE(prep::is_reheated_frozen(recipe));
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
  const prep::Task& task(const std::string& of) {
    house.plan("2027-03-08: {dinner: [{dish: a cake, eaten by: [Ada]}, {dish: soup, eaten by: "
               "[Ben]}]}",
               sunday_afternoon);
    compiled = house.good();
    return find(of);
  }
  const prep::Task& find(const std::string& of) {
    for (const prep::Task& one : compiled.prep.sessions.at(0).tasks) {
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
  const prep::Task& soup = task("Simmer the soup");
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
  const prep::Task& soup = find("Simmer the soup");
  const prep::Task& beaten = find("Beat the cake");
  const prep::Task& first = soup.start < beaten.start ? soup : beaten;
  const prep::Task& second = soup.start < beaten.start ? beaten : soup;
  const prep::Task& wash = find("Wash boards");
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
  const prep::Task& soup = find("Simmer the soup");
  const prep::Task& cake = find("Beat the cake");
  const prep::Task& later = soup.start < cake.start ? cake : soup;
  const prep::Task& wash = find("Wash boards");
  EXPECT_EQ(wash.making, later.making);
  EXPECT_LE(wash.start + wash.hands_on, later.start);
  EXPECT_GE(find("Whisk the bavarois").start, soup.start + soup.hands_on);
  EXPECT_GE(find("Roll the tart").start, cake.start + cake.hands_on);
  for (const prep::Task* one : {&soup, &cake}) {
    EXPECT_NE(one->what.find("made first"), std::string::npos) << one->what;
  }
}

TEST_F(CleanSession, TakesAnUnknownFoodForWhatItsNameSpeaksOf) {
  house.household("", "[mushroom]");
  house.recipe("a cake", "1 lb forest mushroom relish, 1 lb all-purpose flour",
               ahead("Beat the cake"));
  const prep::Task& soup = task("Simmer the soup");
  EXPECT_NE(soup.what.find("Ben must not have mushroom"), std::string::npos) << soup.what;
}

TEST_F(CleanSession, CutsLastWhatHarmsSomebody) {
  house.household("", "[mushroom]");
  house.write("plans/stores/corner.yaml",
              "shop: Corner\nprices: {onion: 1.00/lb, mushroom: 3.00/lb, egg: 12 large 3.00, "
              "all-purpose flour: 5 lb bag 3.00}\n");
  cake(", \"1 lb mushrooms, sliced\"");
  house.recipe("soup", "\"1 lb onion, diced\"", ahead("Simmer the soup"));
  const prep::Task& soup = task("Simmer the soup");
  const prep::Task& sliced = find("Slice");
  EXPECT_EQ(sliced.kind, Kind::cut);
  EXPECT_GE(sliced.start, soup.start + soup.hands_on) << sliced.what;
}

} // namespace
} // namespace manciple
