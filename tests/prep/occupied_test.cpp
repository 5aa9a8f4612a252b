#include "prep/occupied.hpp"

#include "house.hpp"
#include "prep/parts.hpp"

namespace manciple::prep {
namespace {

constexpr Date a_sunday{std::chrono::year(2027) / 3 / 7};

// A session of two from 10:00 with a task of ten minutes with hands, and twenty in the oven after
// that, from 10:05; it lasts an hour.
class OccupiedTest : public testing::Test {
protected:
  OccupiedTest() {
    kitchen.plan.emplace();
    kitchen.plan->sessions.push_back({a_sunday, 600, 720, 2});
    Task bake;
    bake.start = 5;
    bake.hands_on = 10;
    bake.then = 20;
    bake.appliance = "oven";
    bake.fahrenheit = 350;
    sessions.push_back({0, {bake}, 60, 60});
  }
  // As from-until, of what takes hands and no appliance: nobody is there to lend them.
  std::vector<std::pair<int, int>> hands_away(Date date = a_sunday) {
    std::vector<std::pair<int, int>> out;
    for (const Taken& one : occupied(kitchen, sessions, date).taken) {
      if (one.by.hands && one.by.appliance.empty()) {
        out.emplace_back(one.from, one.until);
      }
    }
    return out;
  }
  using Hours = std::vector<std::pair<int, int>>;

  kitchen::Kitchen kitchen;
  std::vector<SessionPlan> sessions;
};

TEST_F(OccupiedTest, ATaskTakesHandsAndThenOnlyItsOven) {
  const Occupied day = occupied(kitchen, sessions, a_sunday);
  ASSERT_GE(day.taken.size(), 2U);
  EXPECT_EQ(day.taken[0].from, 605);
  EXPECT_EQ(day.taken[0].until, 615);
  EXPECT_TRUE(day.taken[0].by.hands);
  EXPECT_EQ(day.taken[1].from, 615);
  EXPECT_EQ(day.taken[1].until, 635);
  EXPECT_FALSE(day.taken[1].by.hands);
  EXPECT_EQ(day.taken[1].by.appliance, "oven");
  EXPECT_EQ(day.taken[1].by.fahrenheit, 350);
}

TEST_F(OccupiedTest, TheSecondCookOfASessionIsThereOnlyWhileItLasts) {
  EXPECT_EQ(occupied(kitchen, sessions, a_sunday).cooks, 2);
  EXPECT_EQ(hands_away(), (Hours{{0, 600}, {660, text::minutes_a_day}}));
}

TEST_F(OccupiedTest, AnotherDayIsFree) {
  const Occupied day = occupied(kitchen, sessions, a_sunday + std::chrono::days(1));
  EXPECT_EQ(day.cooks, 1);
  EXPECT_TRUE(day.taken.empty());
}

TEST_F(OccupiedTest, WhoComesLaterLendsNoHandBefore) {
  sessions.clear();
  kitchen::CookRule ada;
  ada.who = {"Ada"};
  kitchen::CookRule ben;
  ben.who = {"Ben"};
  ben.from = 1080;
  kitchen.household.cooks = {ada, ben};
  EXPECT_EQ(occupied(kitchen, sessions, a_sunday).cooks, 2);
  EXPECT_EQ(hands_away(), (Hours{{0, 1080}}));
}

// A session from 17:00 to 18:00; the dish of the day is fried from 18:10 to 18:30.
TEST(MealsInTheWay, AreThoseBeforeWhichASessionThatIsTooLongGivesWay) {
  House house;
  house.recipe(
      "soup", "1 lb onion",
      "make ahead: yes\nkeeps: {fridge: 4 days}\nmethod: [{do: Stir, hands on: 30 min}]\n");
  house.recipe("cakes", "1 lb onion", "method: [{do: Fry, hands on: 20 min, on: burner}]\n");
  house.plan("2027-03-06: {dinner: cakes}, 2027-03-08: {dinner: soup}",
             "prep: [{date: 2027-03-06, from: \"17:00\", until: \"18:00\"}]\n");
  const auto compiled = house.good();
  std::vector<SessionPlan> plans = compiled.prep.sessions;
  ASSERT_EQ(plans.size(), 1U);
  plans.front().length = 60;
  EXPECT_TRUE(meals_in_the_way(compiled.kitchen, compiled.resolved, plans).empty());
  plans.front().length = 61;
  const Meals meals = meals_in_the_way(compiled.kitchen, compiled.resolved, plans);
  ASSERT_EQ(meals.size(), 1U);
  ASSERT_EQ(meals.at(0).size(), 1U);
  EXPECT_EQ(meals.at(0).front().from, 70);
  EXPECT_EQ(meals.at(0).front().until, 90);
  EXPECT_EQ(meals.at(0).front().by.appliance, "burner");
}

} // namespace
} // namespace manciple::prep
