#include "emit/emit.hpp"
#include "house.hpp"

namespace manciple {
namespace {

using prep::Cooking;

const std::string fried = "method: [{do: Fry, hands on: 20 min, on: burner}]\n";

const Cooking& cooking_of(const emit::Compiled& compiled, const std::string& name) {
  for (const Cooking& cook : compiled.prep.cooking) {
    if (compiled.kitchen.recipe(compiled.resolved.making(cook.making).recipe).name == name) {
      return cook;
    }
  }
  throw std::runtime_error(name + " is not cooked");
}

// Two dishes that each take a pair of hands for twenty minutes.
class WhoCooks : public ::testing::Test {
protected:
  void SetUp() override {
    house.recipe("cakes", "1 lb onion", fried);
    house.recipe("greens", "1 lb onion", fried);
  }
  emit::Compiled with(const std::string& cooks, const std::string& more = {}) {
    house.household("cooks: " + cooks + "\n");
    house.plan("2027-03-02: {breakfast: greens, dinner: cakes}, 2027-03-06: {dinner: [cakes, "
               "greens]}", // a Tuesday and a Saturday
               more);
    return house.good();
  }
  static std::vector<std::string> cooks_on(const emit::Compiled& compiled,
                                           const std::string& date) {
    std::vector<std::string> out;
    for (const Cooking& cook : compiled.prep.cooking) {
      for (const std::string& who : cook.cooks) {
        if (text::print_date(cook.date) == date) {
          out.push_back(who);
        }
      }
    }
    return out;
  }
  using Names = std::vector<std::string>;
  House house;
};

TEST_F(WhoCooks, IsNobodyWhereNobodySays) {
  house.plan("2027-03-02: {dinner: cakes}");
  const auto compiled = house.good();
  EXPECT_TRUE(cooking_of(compiled, "cakes").cooks.empty());
  EXPECT_EQ(emit::days_markdown(compiled).find(": cook"), std::string::npos);
}

TEST_F(WhoCooks, IsSaidByMealAndDayOfTheWeek) {
  const auto compiled =
      with("[{who: Ben, meals: [breakfast]}, {who: Ada, days: weekdays, meals: [dinner]}, {who: "
           "[Ada, Ben], days: [Sat, Sun]}]");
  EXPECT_EQ(cooks_on(compiled, "2027-03-02"), (Names{"Ben", "Ada"}));
  EXPECT_NE(emit::days_markdown(compiled).find("- Ben: cook greens from 07:10"), std::string::npos)
      << emit::days_markdown(compiled);
  EXPECT_NE(emit::calendar_ics(compiled).find("Cook\\, Ada: cakes"), std::string::npos);
}

TEST_F(WhoCooks, AreAsManyHands) {
  auto compiled = with("[{who: [Ada, Ben], days: weekends}]");
  for (const std::string dish : {"cakes", "greens"}) {
    for (const Cooking& cook : compiled.prep.cooking) {
      if (text::print_date(cook.date) == "2027-03-06") {
        EXPECT_EQ(text::print_clock(cook.start), "18:10") << dish;
      }
    }
  }
  EXPECT_EQ(cooks_on(compiled, "2027-03-06").size(), 2U);
  EXPECT_NE(cooks_on(compiled, "2027-03-06").at(0), cooks_on(compiled, "2027-03-06").at(1));
  compiled = with("Ada");
  EXPECT_EQ(cooks_on(compiled, "2027-03-06"), (Names{"Ada", "Ada"})); // one after the other
}

TEST_F(WhoCooks, IsAnotherWhereThePlanSaysSo) {
  auto compiled = with("Ada", "cooks: [{date: 2027-03-06, who: Ben}]\n");
  EXPECT_EQ(cooks_on(compiled, "2027-03-02"), (Names{"Ada", "Ada"}));
  EXPECT_EQ(cooks_on(compiled, "2027-03-06"), (Names{"Ben", "Ben"}));
  compiled = with("Ada", "cooks: [{every: Tuesday, who: Ben, meals: [dinner]}]\n");
  EXPECT_EQ(cooks_on(compiled, "2027-03-02"), (Names{"Ada", "Ben"}));
}

TEST_F(WhoCooks, IsNoOneWhoIsAway) {
  const auto compiled =
      with("[Ada, Ben]", "away: [{who: Ben, from: 2027-03-01, until: 2027-03-31}]\n");
  EXPECT_EQ(cooks_on(compiled, "2027-03-06"), (Names{"Ada", "Ada"}));
}

TEST_F(WhoCooks, HasHours) {
  // Ben is late: there is one pair of hands until he comes.
  auto compiled = with("[{who: Ada}, {who: Ben, from: \"18:15\"}]");
  EXPECT_EQ(cooks_on(compiled, "2027-03-06"), (Names{"Ada", "Ada"}));
  EXPECT_FALSE(house.said("S004"));
  compiled = with("[{who: Ada, from: \"18:00\"}]");
  EXPECT_TRUE(house.said("S004")); // two dishes one after the other begin at 17:50
  EXPECT_TRUE(
      house.said().find(
          "cakes has to be started at 17:50 on Sat 6 Mar, but Ada only has time from 18:00") !=
          std::string::npos ||
      house.said().find(
          "greens has to be started at 17:50 on Sat 6 Mar, but Ada only has time from 18:00") !=
          std::string::npos)
      << house.said();
}

TEST_F(WhoCooks, IsBusyInASession) {
  house.recipe("soup", "1 lb onion",
               "make ahead: yes\nkeeps: {fridge: 4 days}\nmethod: [{do: Stir, hands on: 2 h}]\n");
  house.household("cooks: [Ada, Ben]\n");
  house.plan("2027-03-06: {dinner: cakes}, 2027-03-07: {dinner: soup}",
             "prep: [{date: 2027-03-06, from: \"16:45\", until: \"19:00\", cooks: [Ben, Ada]}]\n");
  const auto compiled = house.good();
  EXPECT_EQ(compiled.prep.sessions.at(0).tasks.at(0).cook, 0U); // Ben stirs
  EXPECT_EQ(cooking_of(compiled, "cakes").cooks, (Names{"Ada"}));
}

// Ada fries from 18:10 to 18:30; the session begins meanwhile.
TEST_F(WhoCooks, IsBusyWithADishThatWasBegunBeforeTheSession) {
  house.recipe("soup", "1 lb onion",
               "make ahead: yes\nkeeps: {fridge: 4 days}\nmethod: [{do: Stir, hands on: 2 h}]\n");
  house.household("cooks: [Ada, Ben]\n");
  house.plan("2027-03-06: {dinner: cakes}, 2027-03-07: {dinner: soup}",
             "prep: [{date: 2027-03-06, from: \"18:20\", until: \"20:30\", cooks: [Ada, Ben]}]\n");
  const auto compiled = house.good();
  const Cooking& cakes = cooking_of(compiled, "cakes");
  ASSERT_EQ(text::print_clock(cakes.start), "18:10");
  const auto& first = compiled.prep.sessions.at(0).tasks.at(0);
  ASSERT_EQ(first.start, 0);
  EXPECT_EQ(first.cook, cakes.cooks.at(0) == "Ada" ? 1U : 0U);
}

TEST_F(WhoCooks, MustBeKnown) {
  house.household("cooks: [Adda]\n");
  house.plan("2027-03-02: {dinner: cakes}");
  EXPECT_FALSE(house.compile());
  EXPECT_TRUE(house.said("K006"));
  house.household("cooks: [Grandmother]\n"); // who does not eat with them
  EXPECT_TRUE(house.compile());
  house.household("");
  house.plan("2027-03-02: {dinner: cakes}", "cooks: [{date: 2027-03-02, who: Adda}]\n");
  EXPECT_FALSE(house.compile());
}

} // namespace
} // namespace manciple
