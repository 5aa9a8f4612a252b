#include "house.hpp"

#include "prep/method.hpp"
#include "prep/reheat.hpp"
#include "prep/roasting.hpp"
#include "prep/samples.hpp"

namespace manciple {
namespace {

using Kind = prep::Task::Kind;

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
    EXPECT_TRUE(prep::only_prepares(recipe, prep::step_of(what))) << what;
  }
  for (const char* what : {"Dice the vegetables, sweat them in the oil", "Mash the potatoes", "Mix",
                           "Cut the rest and dress", "Soak the beans"}) {
    EXPECT_FALSE(prep::only_prepares(recipe, prep::step_of(what))) << what;
  }
  EXPECT_FALSE(prep::only_prepares(recipe, prep::step_of("Slice the onion", 5, 0, "burner")));
  // The oil is in no word of the eggs.
  EXPECT_FALSE(prep::only_prepares(recipe_of({"4 boiled eggs"}),
                                   prep::step_of("Peel the eggs and oil the tray")));
  EXPECT_TRUE(prep::only_prepares(recipe_of({"4 boiled eggs, 1 onion"}),
                                  prep::step_of("Peel the onion and eggs")));
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
  const auto rest = [&](const char* what) {
    return prep::without_cutting(recipe, prep::step_of(what));
  };
  EXPECT_EQ(rest("Dice the vegetables, sweat them in the oil"), "Sweat them in the oil");
  EXPECT_EQ(rest("Dice the vegetables, mix with the lime and salt"), "Mix with the lime and salt");
  EXPECT_EQ(rest("Toast the tortillas, shred the cabbage, set out"),
            "Toast the tortillas, set out");
  EXPECT_EQ(rest("Chop, dress and fill the bread"), "Chop, dress and fill the bread");
  EXPECT_EQ(rest("Simmer"), "Simmer");
}

TEST(Method, HandsHaveAPartThatStaysAndOneThatGrows) {
  // Shaking a jar hardly grows, rolling meatballs does.
  EXPECT_EQ(prep::hands_on(prep::step_of("Shake everything in a jar", 5), measure::Rational(5, 4)),
            6);
  EXPECT_EQ(prep::hands_on(prep::step_of("Drain and rinse the beans", 5), 3), 8);
  EXPECT_EQ(prep::hands_on(prep::step_of("Roll the balls", 20), 2), 36);
  EXPECT_EQ(prep::hands_on(prep::step_of("Roll the balls", 20), measure::Rational(1, 2)), 12);
  EXPECT_EQ(prep::hands_on(prep::step_of("Stir", 1), measure::Rational(1, 4)), 1);
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

TEST(Session, AfterRawMeatTheSameHandsWashUp) {
  House house;
  house.recipe(
      "balls", "1 lb ground beef",
      "make ahead: yes\nkeeps: {fridge: 4 days}\nmethod: [{do: Roll the beef, hands on: 20 "
      "min}, {do: Bake, hands on: 1 min, then: 20 min, on: oven, at: 400 F}]\n");
  house.plan("2027-03-08: {dinner: balls}", prep::sunday_afternoon);
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

TEST(Session, WhatBrownsOrWiltsIsNotCutAhead) {
  House house;
  const auto cut_in_session = [&](const std::string& line) {
    house.recipe("dish", "\"" + line + "\"");
    house.plan("2027-03-10: {dinner: dish}",
               prep::sunday_afternoon); // three days after the session
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
  house.plan("2027-03-08: {dinner: cake}", prep::sunday_afternoon);
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

} // namespace
} // namespace manciple
