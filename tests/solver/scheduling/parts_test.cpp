// The parts of the scheduling engine, each against something slow and obvious.

#include "scheduling/check.hpp"
#include "scheduling/list_scheduling.hpp"
#include "scheduling/lower_bound.hpp"
#include "scheduling/precedences.hpp"
#include "scheduling/profile.hpp"
#include "scheduling/search.hpp"
#include "solver/scheduling/brute_force.hpp"
#include "solver/scheduling/drawn_projects.hpp"

#include <gtest/gtest.h>

namespace manciple::scheduling {
namespace {

Budget nodes_only(std::int64_t nodes) {
  return {std::chrono::steady_clock::now() + std::chrono::hours(24), nodes};
}

// One after another in the given order, which respects what waits for what.
Schedule one_by_one(const Project& project) {
  Schedule out;
  for (const Activity& activity : project.activities) {
    out.start.push_back(out.length);
    out.length += activity.minutes();
  }
  return out;
}

TEST(SchedulingSearch, FindsTheShortestFromTheLongest) {
  for (std::uint64_t seed = 4000; seed < 8000; ++seed) {
    const Project project = drawn_small_project(seed);
    const int length = brute_force::EveryStart(project).shortest();
    Schedule schedule = one_by_one(project);
    ASSERT_EQ(fault(project, schedule).value_or(""), "") << "seed " << seed;
    improve(activity_network(project), nodes_only(1'000'000), schedule);
    ASSERT_EQ(fault(project, schedule).value_or(""), "") << "seed " << seed;
    ASSERT_EQ(schedule.length, length) << "seed " << seed;
    ASSERT_EQ(schedule.bound, length) << "seed " << seed;
  }
}

TEST(SchedulingSearch, AgreesWithTheSearchFromAGoodStart) {
  for (std::uint64_t seed = 100; seed < 130; ++seed) {
    const Project project = drawn_session(seed, 1 + static_cast<int>(seed % 2));
    Schedule schedule = one_by_one(project);
    improve(activity_network(project), nodes_only(100'000), schedule);
    EXPECT_EQ(fault(project, schedule).value_or(""), "") << "seed " << seed;
    EXPECT_TRUE(schedule.proven()) << "seed " << seed;
    EXPECT_EQ(schedule.length, shortest(project, {.seconds = 1e5}).length) << "seed " << seed;
  }
}

TEST(SchedulingLists, AreFeasibleAndTheBoundsBelow) {
  int tight = 0;
  for (std::uint64_t seed = 0; seed < 2000; ++seed) {
    const Project project = drawn_small_project(seed);
    const ActivityNetwork compiled = activity_network(project);
    const std::vector<int> start = heuristic_schedule(compiled, 0);
    const int optimum = brute_force::EveryStart(project).shortest();
    ASSERT_EQ(fault(project, start).value_or(""), "") << "seed " << seed;
    ASSERT_GE(length(compiled, start), optimum);
    ASSERT_LE(lower_bound(compiled), optimum) << "seed " << seed;
    ASSERT_LE(lower_bound(mirrored(compiled)), optimum) << "seed " << seed;
    tight += length(compiled, start) == optimum ? 1 : 0;
  }
  EXPECT_GE(tight, 1950); // good enough to start from: nearly always the shortest already
}

TEST(SchedulingLists, StayCloseToTheShortestSessions) {
  std::int64_t quick = 0;
  std::int64_t shortest_of_all = 0;
  for (std::uint64_t seed = 0; seed < 150; ++seed) {
    const Project project = drawn_session(seed, 1 + static_cast<int>(seed % 2));
    const ActivityNetwork compiled = activity_network(project);
    quick += length(compiled, heuristic_schedule(compiled, 0));
    shortest_of_all += shortest(project, {.seconds = 1e5}).length;
  }
  EXPECT_LE(static_cast<double>(quick), 1.008 * static_cast<double>(shortest_of_all));
}

TEST(SchedulingBounds, CountHeadsWorkAndTails) {
  // Five minutes before, 3 × 4 minutes for one oven, six minutes after.
  Project project{{1}, {{{{5, {0}}}, {}}}};
  for (int i = 0; i < 3; ++i) {
    project.activities.push_back({{{4, {1}}}, {0}});
  }
  project.activities.push_back({{{6, {0}}}, {1, 2, 3}});
  EXPECT_EQ(lower_bound(activity_network(project)), 5 + 12 + 6);
  EXPECT_EQ(lower_bound(activity_network({{1}, {{{{5, {0}}}, {}}, {{{4, {1}}}, {0}}}})),
            9); // the chain
  const Activity one{{{1, {1}}}, {}};
  EXPECT_EQ(lower_bound(activity_network({{2}, {one, one, one}})), 2); // not one and a half
}

TEST(SchedulingProfile, FindsTheFirstMinuteAtWhichEverythingFits) {
  Dice dice(7);
  for (int round = 0; round < 300; ++round) {
    const Project project = drawn_small_project(dice.next());
    const ActivityNetwork compiled = activity_network(project);
    Profile profile(project.capacity);
    brute_force::Minutes minutes(project, 200);
    for (std::size_t i = 0; i < project.activities.size(); ++i) {
      const int from = dice.number(0, 12);
      int start = from;
      while (!minutes.fits(project.activities[i], start)) {
        ++start;
      }
      ASSERT_EQ(profile.earliest(compiled.tasks[i], from), start);
      profile.place(compiled.tasks[i], start);
      minutes.add(project.activities[i], start, 1);
    }
  }
}

TEST(SchedulingClashes, AreExactlyTheDistancesAtWhichTwoCannotRun) {
  int apart = 0;
  for (std::uint64_t seed = 0; seed < 2000; ++seed) {
    Project project = drawn_small_project(seed);
    project.activities.resize(2);
    project.activities[1].after.clear();
    const ActivityNetwork compiled = activity_network(project);
    const std::vector<Disjunction> found =
        disjunctions(compiled.tasks[0], compiled.tasks[1], project.capacity);
    apart += found.size() > 1 ? 1 : 0;
    for (int distance = -20; distance <= 20; ++distance) {
      const bool forbidden = std::any_of(found.begin(), found.end(), [&](Disjunction disjunction) {
        return disjunction.low < distance && distance < disjunction.high;
      });
      const std::vector<int> start{std::max(0, -distance), std::max(0, distance)};
      ASSERT_EQ(fault(project, start).has_value(), forbidden)
          << "seed " << seed << " distance " << distance;
    }
  }
  EXPECT_GT(apart, 0); // some have more than one
}

TEST(SchedulingNetwork, MirroredTwiceIsTheSame) {
  const ActivityNetwork once = activity_network(drawn_session(3, 2));
  const ActivityNetwork twice = mirrored(mirrored(once));
  ASSERT_EQ(twice.tasks.size(), once.tasks.size());
  EXPECT_EQ(twice.order, once.order);
  for (std::size_t i = 0; i < once.tasks.size(); ++i) {
    EXPECT_EQ(twice.tasks[i].head, once.tasks[i].head);
    EXPECT_EQ(twice.tasks[i].tail, once.tasks[i].tail);
    EXPECT_EQ(twice.tasks[i].before, once.tasks[i].before);
    ASSERT_EQ(twice.tasks[i].parts.size(), once.tasks[i].parts.size());
    for (std::size_t p = 0; p < once.tasks[i].parts.size(); ++p) {
      EXPECT_EQ(twice.tasks[i].parts[p].offset, once.tasks[i].parts[p].offset);
      EXPECT_EQ(twice.tasks[i].parts[p].minutes, once.tasks[i].parts[p].minutes);
    }
  }
}

} // namespace
} // namespace manciple::scheduling
