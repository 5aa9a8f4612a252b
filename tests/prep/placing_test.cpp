#include "prep/placing.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>

namespace manciple::prep {
namespace {

Stretch with_hands(int minutes) {
  return {minutes, true};
}
Stretch unattended(int minutes) {
  return {minutes, false};
}
Stretch in_oven(int minutes, int fahrenheit) {
  return {minutes, false, "oven", 1, fahrenheit};
}
Job job_of_stretches(std::vector<Stretch> stretches, std::vector<std::size_t> after = {}) {
  return {std::move(stretches), std::move(after)};
}

using Starts = std::vector<int>;

// One pair of hands, an oven with two shelves and a mixer.
class PlacingTest : public testing::Test {
protected:
  static constexpr int no_cost(const Starts& /*start*/) { return 0; }
  Workplace one_cook{{{"oven", 2}, {"mixer", 1}}, 1};
};

TEST_F(PlacingTest, AsManyJobsAtOnceAsThereAreHands) {
  const std::vector<Job> jobs{job_of_stretches({with_hands(10)}),
                              job_of_stretches({with_hands(20)})};
  EXPECT_EQ(place_early(jobs, one_cook).length, 30);
  EXPECT_EQ(place_early(jobs, one_cook).bound, 30);
  EXPECT_EQ(place_early(jobs, Workplace({}, 2)).length, 20);
}

TEST_F(PlacingTest, HandsAreFreeWhileAPotSimmers) {
  // The stock takes hands until 5 and simmers until 15; the onions are cut from 5 to 13; the soup
  // waits for the stock.
  const Placed placed =
      place_early({job_of_stretches({with_hands(5), unattended(10)}),
                   job_of_stretches({with_hands(8)}), job_of_stretches({with_hands(5)}, {0})},
                  one_cook);
  EXPECT_EQ(placed.start, (Starts{0, 5, 15}));
  EXPECT_EQ(placed.length, 20);
}

TEST_F(PlacingTest, WhatMayNotWaitIsBegunLater) {
  // The dough is weighed for ten minutes, then kneaded; somebody has the mixer for an hour.
  std::vector<Job> jobs{job_of_stretches({with_hands(10)}),
                        job_of_stretches({{15, false, "mixer"}}, {0})};
  const std::vector<Taken> mixer{{0, 60, {60, false, "mixer"}}};
  EXPECT_EQ(place_early(jobs, one_cook, mixer).start, (Starts{0, 60}));
  jobs[0].next = 1;
  jobs[0].wait = 5;
  EXPECT_EQ(place_early(jobs, one_cook, mixer).start, (Starts{50, 60}));
}

TEST_F(PlacingTest, WhatGoesFirstTakesTheHandsThatAreLeft) {
  const std::vector<Job> jobs{job_of_stretches({with_hands(10)}),
                              job_of_stretches({with_hands(10)})};
  const std::vector<Taken> meal{{10, 30, with_hands(20)}};
  EXPECT_EQ(place_early(jobs, one_cook, meal, {true, false}).start, (Starts{0, 30}));
  EXPECT_EQ(place_early(jobs, one_cook, meal, {false, true}).start, (Starts{30, 0}));
}

// From 70 F to 470 F it takes 20 minutes at 20 F a minute. Common practice, no source.
TEST_F(PlacingTest, AnOvenHeatsBeforeSomethingGoesInAndWhileItIsMadeReady) {
  const Placed at_once = place_early({job_of_stretches({in_oven(30, 470)})}, one_cook);
  EXPECT_EQ(at_once.start, (Starts{20}));
  EXPECT_EQ(at_once.heat_up, (std::vector<int>{20}));
  const Placed rolled_first =
      place_early({job_of_stretches({with_hands(15), in_oven(30, 470)})}, one_cook);
  EXPECT_EQ(rolled_first.start, (Starts{5}));
  EXPECT_EQ(rolled_first.heat_up, (std::vector<int>{20}));
}

// Of two loaves that could be baked at once, neither goes into an oven that is heating for the
// other.
TEST_F(PlacingTest, NothingGoesInWhileAnOvenHeats) {
  const Job loaf = job_of_stretches({in_oven(30, 350)});
  const Placed placed = place_early({loaf, loaf}, one_cook);
  EXPECT_EQ(placed.start, (Starts{14, 14})); // (350 - 70) / 20
  EXPECT_EQ(placed.heat_up, (std::vector<int>{14, 0}));
}

// A roast at 400 F comes out at 46; two pies go in at 51, after five minutes with the door open.
// Whichever heats the oven for both, one of them has to.
TEST_F(PlacingTest, OfTwoThatGoInTogetherOneHasTheOvenHeated) {
  Job roast = job_of_stretches({in_oven(29, 400)});
  roast.next = 1;
  roast.wait = 31;
  const Placed placed =
      place_early({roast, job_of_stretches({with_hands(5), in_oven(15, 350)}, {0}),
                   job_of_stretches({in_oven(20, 350)})},
                  Workplace({{"oven", 2}}, 2));
  ASSERT_EQ(placed.start, (Starts{17, 46, 51}));
  EXPECT_EQ(placed.heat_up[1] + placed.heat_up[2], 5);
}

// It stays hot for 20 minutes; a minute later it heats for (350 - 70) / 20 again. Common practice,
// no source.
TEST_F(PlacingTest, AnOvenStaysHotForAWhile) {
  const auto second_heating = [&](int between) {
    return place_early({job_of_stretches({in_oven(10, 350)}),
                        job_of_stretches({with_hands(between), in_oven(10, 350)}, {0})},
                       one_cook)
        .heat_up.at(1);
  };
  EXPECT_EQ(second_heating(20), 0);
  EXPECT_EQ(second_heating(21), 14);
}

TEST_F(PlacingTest, TheShelvesOfAnOvenHaveOneTemperature) {
  const auto beside_each_other = [&](int fahrenheit, int other) {
    const Starts start = place_early({job_of_stretches({in_oven(30, fahrenheit)}),
                                      job_of_stretches({in_oven(30, other)})},
                                     one_cook)
                             .start;
    return std::abs(start[0] - start[1]) < 30;
  };
  EXPECT_TRUE(beside_each_other(350, 370)); // no oven is exact to 20 F
  EXPECT_FALSE(beside_each_other(350, 371));
}

TEST_F(PlacingTest, ADayIsWorkedBackFromItsMeals) {
  std::vector<Job> jobs{job_of_stretches({with_hands(10)}), job_of_stretches({with_hands(10)})};
  jobs[0].due = jobs[1].due = 600;
  Starts start = place_late(jobs, one_cook, {}, {0, 1}, no_cost).start;
  std::sort(start.begin(), start.end());
  EXPECT_EQ(start, (Starts{580, 590})); // one after the other
  // Hands that a session has until the meal are not to be had.
  jobs.pop_back();
  EXPECT_EQ(place_late(jobs, one_cook, {{595, 600, with_hands(5)}}, {0}, no_cost).start,
            (Starts{585}));
}

TEST_F(PlacingTest, OfTwoOrdersOfADayTheOneThatCostsLessIsTaken) {
  std::vector<Job> jobs{job_of_stretches({with_hands(10)}), job_of_stretches({with_hands(10)})};
  jobs[0].due = jobs[1].due = 600;
  for (const std::size_t last : {0U, 1U}) {
    const auto cost = [&](const Starts& starts) { return 590 - starts[last]; };
    const std::vector<int> rank = last == 0 ? std::vector<int>{0, 1} : std::vector<int>{1, 0};
    EXPECT_EQ(place_late(jobs, one_cook, {}, rank, cost).start[last], 590);
  }
}

} // namespace
} // namespace manciple::prep
