#include "scheduling/project.hpp"

#include "scheduling/check.hpp"
#include "solver/scheduling/brute_force.hpp"
#include "solver/scheduling/drawn_projects.hpp"

#include <gtest/gtest.h>

#include <stdexcept>

namespace manciple::scheduling {
namespace {

// No clock decides in a test.
constexpr Limits within(std::int64_t nodes = 1'000'000) {
  return {.seconds = 1e5, .nodes = nodes};
}

Activity simple(int minutes, std::vector<int> takes, std::vector<std::size_t> after = {}) {
  return {{{minutes, std::move(takes)}}, std::move(after)};
}

void expect_proven(const Project& project, int length) {
  const Schedule schedule = shortest(project, within());
  EXPECT_EQ(fault(project, schedule).value_or(""), "");
  EXPECT_EQ(schedule.length, length);
  EXPECT_EQ(schedule.bound, length);
}

TEST(Project, NothingToDoTakesNoTime) {
  expect_proven({{2, 1}, {}}, 0);
}

TEST(Project, WhatWaitsStartsWhenTheLastHasEnded) {
  expect_proven({{}, {simple(5, {}), simple(7, {}), simple(2, {}, {0, 1})}}, 9);
}

TEST(Project, OneCookDoesOneThingAfterAnother) {
  expect_proven({{1}, {simple(5, {1}), simple(7, {1}), simple(2, {1})}}, 14);
}

TEST(Project, TwoCooksShareTheWorkEvenlyIfItCanBeDivided) {
  const auto cook = [](int minutes) { return simple(minutes, {1}); };
  expect_proven({{2}, {cook(3), cook(3), cook(2), cook(2), cook(2)}}, 6);
  expect_proven({{2}, {cook(3), cook(3), cook(3), cook(3), cook(4)}}, 9); // not 8
}

TEST(Project, HandsAreFreeWhileTheOvenWorksAlone) {
  const Activity roast{{{5, {1, 1}}, {40, {0, 1}}}, {}};
  expect_proven({{1, 1}, {roast, simple(38, {1, 0})}}, 45);
  expect_proven({{1, 1}, {roast, simple(41, {1, 0})}}, 46); // hands come first, so it cuts first
}

TEST(Project, PiecesFollowEachOtherWithoutABreak) {
  // The oven is free only after the hands are needed again, so the second waits as a whole.
  const Activity first{{{10, {0, 1}}, {5, {1, 0}}}, {}};
  const Activity second{{{5, {1, 0}}, {5, {0, 1}}}, {}};
  expect_proven({{1, 1}, {first, second}}, 15);
}

// Found among drawn projects: in each order of the five, starting each as early as it can takes six
// minutes. One has to start later than it could.
TEST(Project, AnActivityStartsLaterThanItCouldWhereThatHelps) {
  const Activity rising{{{1, {1}}, {1, {2}}}, {}};
  const Project project{{4}, {rising, rising, rising, rising, rising}};
  EXPECT_EQ(brute_force::shortest_from_lists(project), 6);
  expect_proven(project, 5);
}

TEST(Project, PiecesOfNoMinutesTakeNothing) {
  const Activity odd{{{0, {9}}, {3, {1}}, {0, {9}}}, {}};
  expect_proven({{1}, {odd, simple(0, {1}, {0})}}, 3);
}

TEST(Project, EqualsTryingEveryStart) {
  for (std::uint64_t seed = 0; seed < 4000; ++seed) {
    const Project project = drawn_small_project(seed);
    const int length = brute_force::EveryStart(project).shortest();
    const Schedule schedule = shortest(project, within());
    ASSERT_EQ(fault(project, schedule).value_or(""), "") << "seed " << seed;
    ASSERT_EQ(schedule.length, length) << "seed " << seed;
    ASSERT_EQ(schedule.bound, length) << "seed " << seed;
  }
}

TEST(Project, SessionsAreProven) {
  for (std::uint64_t seed = 0; seed < 60; ++seed) {
    const Project project = drawn_session(seed, 1 + static_cast<int>(seed % 3));
    const Schedule schedule = shortest(project, within(20'000));
    ASSERT_EQ(fault(project, schedule).value_or(""), "") << "seed " << seed;
    EXPECT_TRUE(schedule.proven())
        << "seed " << seed << ": " << schedule.bound << " to " << schedule.length;
  }
}

TEST(Project, TheSameProjectGivesTheSameSchedule) {
  for (std::uint64_t seed = 0; seed < 20; ++seed) {
    const Project project = drawn_session(seed, 1);
    const Schedule first = shortest(project, within());
    const Schedule second = shortest(project, within());
    EXPECT_EQ(first.start, second.start);
    EXPECT_EQ(first.nodes, second.nodes);
  }
}

TEST(Project, WithoutTimeThereIsStillAScheduleAndAnHonestBound) {
  int open = 0;
  for (std::uint64_t seed = 0; seed < 60; ++seed) {
    const Project project = drawn_session(seed, 1);
    const int length = shortest(project, within()).length;
    const Schedule schedule = shortest(project, {.seconds = 0, .nodes = 0});
    EXPECT_EQ(fault(project, schedule).value_or(""), "");
    EXPECT_EQ(schedule.nodes, 0);
    EXPECT_GE(schedule.length, length);
    EXPECT_LE(schedule.bound, length);
    open += schedule.proven() ? 0 : 1;
  }
  EXPECT_GT(open, 0); // or nothing was cut short
}

TEST(Project, TheNodeLimitHolds) {
  int cut_short = 0;
  for (std::uint64_t seed = 0; seed < 60; ++seed) {
    const Schedule schedule = shortest(drawn_session(seed, 1), within(7));
    EXPECT_LE(schedule.nodes, 7);
    cut_short += schedule.nodes == 7 ? 1 : 0;
  }
  EXPECT_GT(cut_short, 0);
}

TEST(Project, WhatCannotBeDoneIsRefused) {
  const auto refused = [](const Project& project) {
    EXPECT_THROW(shortest(project), std::invalid_argument);
  };
  refused({{1}, {simple(3, {2})}});                          // more than there is
  refused({{1}, {simple(3, {1, 1})}});                       // of something that is not there
  refused({{1}, {simple(3, {-1})}});                         // less than nothing
  refused({{-1}, {}});                                       // less than nothing there
  refused({{1}, {simple(-3, {1})}});                         // backwards
  refused({{1}, {simple(3, {1}, {7})}});                     // after nothing
  refused({{1}, {simple(3, {1}, {0})}});                     // after itself
  refused({{1}, {simple(3, {}, {1}), simple(3, {}, {0})}});  // in a circle
  refused({{}, {simple(1 << 30, {}), simple(1 << 30, {})}}); // for ever
}

TEST(ProjectCheck, FindsEachFault) {
  const Activity roast{{{5, {1, 1}}, {40, {0, 1}}}, {}};
  const Project project{{1, 1}, {roast, simple(10, {1, 0}), simple(3, {0, 0}, {1})}};
  EXPECT_EQ(fault(project, {0, 5, 15}), std::nullopt);
  EXPECT_EQ(fault(project, {0, 5}), "there are 2 starts for 3 activities");
  EXPECT_EQ(fault(project, {-1, 5, 15}), "activity 0 starts before the beginning");
  EXPECT_EQ(fault(project, {0, 5, 14}), "activity 2 starts before activity 1 has ended");
  EXPECT_EQ(fault(project, {0, 4, 14}), "at minute 4 2 of resource 0 are in use, of 1");
  Schedule schedule{{0, 5, 15}, 45, 45, 0};
  EXPECT_EQ(fault(project, schedule), std::nullopt);
  schedule.length = 44;
  EXPECT_EQ(fault(project, schedule), "the length is said to be 44 but is 45");
  schedule = {{0, 5, 15}, 45, 46, 0};
  EXPECT_EQ(fault(project, schedule), "the bound 46 is above the length 45");
}

} // namespace
} // namespace manciple::scheduling
