// Fruit is bought as ripe as its day asks, and put out in time.
#include "prep/ripening.hpp"

#include "house.hpp"

namespace manciple::prep {
namespace {

constexpr const char* shop =
    "shop: Corner\nprices: {avocado: 1.00 each, peach: 1.00 each, onion: 1.00/lb}\n";

std::vector<std::string> ripening_tasks(const emit::Compiled& compiled) {
  std::vector<std::string> out;
  for (const Reminder& one : compiled.prep.reminders) {
    if (one.kind == Reminder::Kind::ripen) {
      out.push_back(text::print_day(one.date) + ": " + one.what);
    }
  }
  return out;
}

// Avocados ripen in 4 days and keep 4 days once ripe; hard they wait a week in the fridge. Trips
// are on Mon 1 Mar and each Saturday.
TEST(Ripening, WhatIsForLaterIsBoughtHardAndTakenOutInTime) {
  House house;
  house.write("plans/stores/corner.yaml", shop);
  house.plan("2027-03-12: {dinner: 3 avocados}");
  const auto compiled = house.good();
  ASSERT_EQ(compiled.shopping.lines.size(), 1U);
  const auto chosen = ripeness_of(compiled.kitchen, compiled.resolved, compiled.shopping, 0);
  ASSERT_EQ(chosen.size(), 1U);
  EXPECT_EQ(chosen[0].ripeness, Ripeness::hard);
  EXPECT_EQ(ripening_tasks(compiled),
            std::vector<std::string>{
                "Mon 8 Mar: Take 3 avocados out of the fridge to ripen for dinner on Fri 12 Mar"});
}

TEST(Ripening, WhatIsForTheDayIsBoughtRipe) {
  House house;
  house.write("plans/stores/corner.yaml", shop);
  house.plan("2027-03-02: {dinner: 2 avocados}, 2027-03-04: {dinner: 1 avocado}");
  const auto compiled = house.good();
  const auto chosen = ripeness_of(compiled.kitchen, compiled.resolved, compiled.shopping, 0);
  ASSERT_EQ(chosen.size(), 2U);
  EXPECT_EQ(chosen[0].ripeness, Ripeness::ripe);
  EXPECT_EQ(chosen[1].ripeness, Ripeness::nearly_ripe);
  EXPECT_TRUE(ripening_tasks(compiled).empty());
}

// Peaches ripen in 2 days on the counter, and are not held hard.
TEST(Ripening, WhatIsNotHeldHardRipensAtOnceAndWaitsInTheFridge) {
  House house;
  house.write("plans/stores/corner.yaml", shop);
  house.plan("2027-03-12: {dinner: 2 peaches}");
  EXPECT_EQ(
      ripening_tasks(house.good()),
      (std::vector<std::string>{
          "Sat 6 Mar: Leave 2 peaches on the counter to ripen for dinner on Fri 12 Mar",
          "Mon 8 Mar: Put 2 peaches, ripe by now, into the fridge for dinner on Fri 12 Mar"}));
}

TEST(Ripening, OneTripAWeekIsEnoughForAvocados) {
  House house;
  house.write("plans/stores/corner.yaml", shop);
  house.plan("2027-03-02: {dinner: 1 avocado}, 2027-03-05: {dinner: 1 avocado}, "
             "2027-03-09: {dinner: 1 avocado}, 2027-03-12: {dinner: 1 avocado}");
  EXPECT_EQ(house.good().shopping.lines.size(), 1U);
}

TEST(Ripening, WhatIsOnHandHardIsPutOut) {
  House house;
  house.write("plans/stores/corner.yaml", shop);
  house.write("plans/on-hand.yaml", "date: 2027-03-01\non hand: [\"2 avocados, hard\"]\n");
  house.plan("2027-03-09: {dinner: 2 avocados}");
  const auto compiled = house.good();
  EXPECT_TRUE(compiled.shopping.lines.empty());
  EXPECT_EQ(ripening_tasks(compiled),
            std::vector<std::string>{
                "Fri 5 Mar: Take 2 avocados out of the fridge to ripen for dinner on Tue 9 Mar"});
  house.write("plans/on-hand.yaml", "date: 2027-03-01\non hand: [2 avocados]\n");
  EXPECT_EQ(house.good().shopping.lines.size(), 1U);
}

} // namespace
} // namespace manciple::prep
