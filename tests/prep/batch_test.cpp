#include "prep/batch.hpp"

#include "house.hpp"
#include "prep/samples.hpp"

namespace manciple::prep {
namespace {

kitchen::MethodStep bake_at(int fahrenheit) {
  kitchen::MethodStep out = step_of("Bake", 2, 20, "oven");
  out.fahrenheit = fahrenheit;
  return out;
}

// The work of a method that is made once as it is written.
std::vector<StepWork> work_of_method(std::vector<kitchen::MethodStep> method, CutBefore cut = {}) {
  kitchen::Kitchen kitchen;
  kitchen.recipes.resize(1);
  kitchen.recipes.front().method = std::move(method);
  resolve::Making making;
  making.times = 1;
  return work_of(kitchen, making, cut);
}

TEST(Vessel, IsWhatTheStepSaysOrAPotForWhatSimmers) {
  kitchen::MethodStep step = step_of("Simmer the beans", 0, 30, "burner");
  EXPECT_EQ(vessel_of(step), "pot");
  step.vessel = "kettle";
  EXPECT_EQ(vessel_of(step), "kettle");
  EXPECT_EQ(vessel_of(step_of("Fry the onions", 5, 0, "burner")), "");
  EXPECT_EQ(vessel_of(step_of("Knead", 0, 10, "mixer")), "mixer");
}

// 20 F a minute up, five minutes with the door open down, nothing within 20 F. Common practice, no
// source.
TEST(Work, CountsTheTimeInWhichTheOvenChanges) {
  const auto change_to = [](int second) {
    return work_of_method({bake_at(350), bake_at(second)}).at(1).change;
  };
  EXPECT_EQ(change_to(450), 5);
  EXPECT_EQ(change_to(400), 3); // 2.5, rounded up
  EXPECT_EQ(change_to(250), 5);
  EXPECT_EQ(change_to(370), 0);
}

TEST(Work, IsShorterByWhatWasCutBefore) {
  const auto left = [](int cut) {
    return work_of_method({step_of("Dice the onions, fry them", 10, 0, "burner")}, {cut, false})
        .at(0)
        .hands_on;
  };
  EXPECT_EQ(left(0), 10);
  EXPECT_EQ(left(6), 4);
  EXPECT_EQ(left(30), 2); // frying takes its time
}

TEST(Work, LeavesOutAStepOfWhichAllIsCut) {
  const std::vector<kitchen::MethodStep> method{step_of("Dice the onions", 10),
                                                step_of("Fry them", 5, 0, "burner")};
  EXPECT_EQ(work_of_method(method, {10, false}).size(), 2U);
  const auto rest = work_of_method(method, {10, true});
  ASSERT_EQ(rest.size(), 1U);
  EXPECT_EQ(rest.front().step, 1U);
}

// Five minutes of heating, ten with hands, then thirty alone, of which three are washing up.
TEST(Work, IsAJobWithoutABreak) {
  StepWork work;
  work.change = 5;
  work.hands_on = 10;
  work.then = 30;
  work.wash = 3;
  work.appliance = "oven";
  work.fahrenheit = 400;
  const Job job = job_of(work);
  std::vector<std::pair<int, bool>> stretches; // minutes, and whether they take hands
  for (const Stretch& one : job.stretches) {
    stretches.emplace_back(one.minutes, one.hands);
    EXPECT_EQ(one.appliance, "oven");
  }
  EXPECT_EQ(stretches,
            (std::vector<std::pair<int, bool>>{{5, false}, {10, true}, {3, true}, {27, false}}));
  EXPECT_TRUE(job.stretches.front().warms);
  EXPECT_EQ(hands_begin(work), 5);
  // What is washed up when the oven is empty again takes no oven.
  work.then = 1;
  EXPECT_EQ(job_of(work).stretches.back().minutes, 2);
  EXPECT_EQ(job_of(work).stretches.back().appliance, "");
}

TEST(Batch, MoreThanAMixerHoldsIsDoneInRuns) {
  House house;
  house.household("holds: {mixer: 2 qt}\n", "[]", "{burner: 4, oven: 1, mixer: 1}");
  house.recipe("dough", "\"4 cups all-purpose flour\", 2 cups water",
               "made in: exactly\nmakes: 1 kg\nkeeps: {fridge: 4 days}\nmethod: [{do: Knead, hands "
               "on: 2 min, then: 10 min, on: mixer}]\n");
  house.recipe("buns", "3 kg dough");
  house.plan("2027-03-08: {dinner: buns}", sunday_afternoon);
  const auto compiled = house.good();
  const auto& tasks = compiled.prep.sessions.at(0).tasks;
  const auto kneading = std::find_if(tasks.begin(), tasks.end(),
                                     [](const Task& one) { return one.kind == Task::Kind::cook; });
  ASSERT_NE(kneading, tasks.end());
  EXPECT_NE(kneading->what.find("in 2 runs"), std::string::npos) << kneading->what;
  EXPECT_EQ(kneading->then, 20);
}

// What a session's tasks for a making are called, in their order.
std::vector<std::string> cooked_in(const emit::Compiled& compiled) {
  std::vector<std::string> out;
  for (const Task& task : compiled.prep.sessions.at(0).tasks) {
    if (task.kind == Task::Kind::cook) {
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
  for (const Task& task : compiled.prep.sessions.at(0).tasks) {
    if (task.kind == Task::Kind::cook) {
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

TEST(Batch, APotIsFilledByWhatItHolds) {
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

} // namespace
} // namespace manciple::prep
