#include "house.hpp"

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
  EXPECT_EQ(compiled.prep.sessions[0].tasks[0].what, "Dice 2 lb onion");
  EXPECT_EQ(compiled.prep.sessions[0].tasks[0].purpose, "soup, stew");
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

TEST(Prep, DryBeansAreSoakedTheEveningBefore) {
  House house;
  house.write("plans/stores/corner.yaml",
              "shop: Corner\nprices: {dried black bean: 1 lb bag 2.00}\n");
  house.recipe("beans", "1 lb dried black beans");
  house.plan("2027-03-10: {breakfast: beans}");
  EXPECT_TRUE(reminded(house.good(), prep::Reminder::Kind::soak, "2027-03-09"));
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
  EXPECT_EQ(compiled.prep.sessions[0].length, 30 + 10 + 31);
}

} // namespace
} // namespace manciple
