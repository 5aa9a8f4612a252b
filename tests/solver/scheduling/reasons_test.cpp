// Each conclusion of the scheduling engine must follow from the reasons that it gives for it: what
// is learnt from a contradiction is built of these.

#include "dice.hpp"
#include "scheduling/conflict_analysis.hpp"
#include "scheduling/edge_finding.hpp"
#include "scheduling/timetable.hpp"

#include <gtest/gtest.h>

#include <array>

namespace manciple::scheduling {
namespace {

constexpr int latest = 6; // start

// A resource with a few stretches, and every way to start them that it allows.
class Case {
public:
  explicit Case(Dice& dice) {
    forwards_.capacity = dice.number(1, 4);
    for (int i = dice.number(2, 4); i > 0; --i) {
      const Side side = trail_.add(0, latest);
      forwards_.intervals.push_back(
          {side, dice.number(0, 2), dice.number(1, 4), dice.number(1, forwards_.capacity)});
    }
    backwards_.capacity = forwards_.capacity;
    for (const TaskInterval& interval : forwards_.intervals) {
      backwards_.intervals.push_back(mirrored(interval));
    }
    std::vector<int> start(forwards_.intervals.size(), 0);
    collect(start, 0);
  }

  // Assumes something of each start that leaves it some room.
  void assume(Dice& dice) {
    for (const TaskInterval& interval : forwards_.intervals) {
      const int from = dice.number(0, latest);
      const int until = std::min(latest, from + dice.number(0, 4));
      for (const Bound bound : {Bound{interval.side, from}, Bound{other(interval.side), -until}}) {
        if (!trail_.holds(bound)) {
          trail_.decide(bound);
        }
      }
    }
  }

  // Conclusions, each checked. -1 stands for a contradiction.
  template <typename Rule>
  int check(Rule& rule, bool in_mirror) {
    const std::size_t before = trail_.size();
    const bool fine = rule.propagate(trail_, in_mirror ? backwards_ : forwards_);
    for (std::size_t i = before; i < trail_.size(); ++i) {
      const Trail::Entry& entry = trail_.entry(i);
      std::vector<Bound> together(trail_.reasons(entry).begin(), trail_.reasons(entry).end());
      for (const Bound reason : together) {
        EXPECT_TRUE(trail_.holds(reason));
      }
      together.push_back(opposite({entry.side, entry.value}));
      EXPECT_FALSE(possible(together));
    }
    if (fine) {
      return static_cast<int>(trail_.size() - before);
    }
    for (const Bound bound : trail_.conflict()) {
      EXPECT_TRUE(trail_.holds(bound));
    }
    EXPECT_FALSE(possible(trail_.conflict()));
    return -1;
  }

private:
  [[nodiscard]] bool allowed(const std::vector<int>& start) const {
    for (int minute = 0; minute < latest + 6; ++minute) {
      int taken = 0;
      for (std::size_t i = 0; i < start.size(); ++i) {
        const TaskInterval& interval = forwards_.intervals[i];
        const int begin = start[i] + interval.offset;
        taken += begin <= minute && minute < begin + interval.minutes ? interval.take : 0;
      }
      if (taken > forwards_.capacity) {
        return false;
      }
    }
    return true;
  }

  void collect(std::vector<int>& start, std::size_t i) {
    if (i == start.size()) {
      if (allowed(start)) {
        ways_.push_back(start);
      }
      return;
    }
    for (start[i] = 0; start[i] <= latest; ++start[i]) {
      collect(start, i + 1);
    }
    start[i] = 0;
  }

  [[nodiscard]] bool possible(const std::vector<Bound>& bounds) const {
    return std::any_of(ways_.begin(), ways_.end(), [&](const std::vector<int>& start) {
      return std::all_of(bounds.begin(), bounds.end(), [&](Bound bound) {
        const int value = start[bound.side / 2];
        return (bound.side % 2 == 0 ? value : -value) >= bound.least;
      });
    });
  }

  Trail trail_;
  Cumulative forwards_;
  Cumulative backwards_;
  std::vector<std::vector<int>> ways_;
};

template <typename Rule>
void expect_sound(std::uint64_t seed) {
  Dice dice(seed);
  int conclusions = 0;
  int contradictions = 0;
  for (int round = 0; round < 3000 && !testing::Test::HasFailure(); ++round) {
    Case drawn(dice);
    drawn.assume(dice);
    Rule rule;
    const int found = drawn.check(rule, dice.one_in(2));
    conclusions += std::max(0, found);
    contradictions += found < 0 ? 1 : 0;
  }
  EXPECT_GT(conclusions, 100);
  EXPECT_GT(contradictions, 100);
}

TEST(ProjectTimetable, ConclusionsFollowFromTheirReasons) {
  expect_sound<Timetable>(1);
}

TEST(ProjectEnergy, ConclusionsFollowFromTheirReasons) {
  expect_sound<EdgeFinding>(2);
}

// Starts from 0 to `until` of stretches of two minutes that take one of one.
Cumulative twos(Trail& trail, const std::vector<int>& until) {
  Cumulative constraint{1, {}};
  for (const int most : until) {
    constraint.intervals.push_back({trail.add(0, most), 0, 2, 1});
  }
  return constraint;
}

TEST(ProjectEnergy, ThreeTwosDoNotFitInFive) {
  Trail trail;
  EdgeFinding energy;
  EXPECT_FALSE(energy.propagate(trail, twos(trail, {3, 3, 3})));
  Trail wider;
  EXPECT_TRUE(energy.propagate(wider, twos(wider, {4, 4, 4})));
}

TEST(ProjectEnergy, AThirdGoesAfterTwoThatFillTheirWindow) {
  Trail trail;
  EdgeFinding energy;
  const Cumulative constraint = twos(trail, {2, 2, 20});
  EXPECT_TRUE(energy.propagate(trail, constraint));
  EXPECT_EQ(trail.at(constraint.intervals[2].side), 4);
}

TEST(ProjectTimetable, NothingStartsWhereItMeetsWhatIsCertain) {
  Trail trail;
  Cumulative constraint = twos(trail, {2, 20}); // the first surely runs at no minute yet
  Timetable timetable;
  EXPECT_TRUE(timetable.propagate(trail, constraint));
  EXPECT_EQ(trail.at(constraint.intervals[1].side), 0);
  trail.decide({other(constraint.intervals[0].side), 0});
  EXPECT_TRUE(timetable.propagate(trail, constraint));
  EXPECT_EQ(trail.at(constraint.intervals[1].side), 2);
}

TEST(ProjectTrail, GoesBackToWhatHeldBefore) {
  Trail trail;
  const Side x = trail.add(0, 9);
  trail.decide({x, 3});
  EXPECT_TRUE(trail.set({other(x), -5}, std::array{Bound{x, 2}}));
  trail.decide({x, 5});
  EXPECT_TRUE(trail.fixed(x));
  EXPECT_EQ(trail.source({x, 2}), 0); // the decision for 3 already said so
  EXPECT_EQ(trail.source({x, 5}), 2);
  EXPECT_EQ(trail.source({x, 0}), -1); // always did
  EXPECT_FALSE(trail.set({x, 6}, {}));
  ASSERT_EQ(trail.conflict().size(), 1U);
  EXPECT_EQ(trail.conflict()[0].side, other(x));
  trail.back(1);
  EXPECT_EQ(trail.at(x), 3);
  EXPECT_EQ(trail.at(other(x)), -5);
  trail.back(0);
  EXPECT_EQ(trail.at(x), 0);
  EXPECT_EQ(trail.at(other(x)), -9);
}

bool has(const LearntClause& learnt, Bound bound) {
  return std::any_of(learnt.bounds.begin(), learnt.bounds.end(),
                     [&](Bound b) { return b.side == bound.side && b.least == bound.least; });
}

// x >= 5 is assumed, from which y >= 1 follows because x >= `because`; then z >= 1 is assumed,
// which x >= `needed`, y >= 1 and z >= 1 contradict.
LearntClause taught(int because, int needed) {
  Trail trail;
  const Side x = trail.add(0, 9);
  const Side y = trail.add(0, 1);
  const Side z = trail.add(0, 1);
  trail.decide({x, 5});
  trail.set({y, 1}, std::array{Bound{x, because}});
  trail.decide({z, 1});
  trail.raise_conflict(std::array{Bound{x, needed}, Bound{y, 1}, Bound{z, 1}});
  LearntClauses clauses(trail.sides());
  return ConflictAnalysis().analyse(trail, clauses);
}

TEST(ProjectLessons, LeaveOutWhatFollowsFromTheRest) {
  const LearntClause learnt = taught(2, 4);
  EXPECT_EQ(learnt.bounds.size(), 2U);
  EXPECT_TRUE(has(learnt, {1, -3})); // x <= 3
  EXPECT_TRUE(has(learnt, {5, 0}));  // or z = 0
  EXPECT_EQ(learnt.level, 1);
}

TEST(ProjectLessons, KeepWhatFollowsOnlyFromMore) {
  const LearntClause learnt = taught(4, 2);
  EXPECT_EQ(learnt.bounds.size(), 3U);
  EXPECT_TRUE(has(learnt, {1, -1})); // x <= 1
  EXPECT_TRUE(has(learnt, {3, 0}));  // or y = 0
  EXPECT_TRUE(has(learnt, {5, 0}));  // or z = 0
}

TEST(ProjectClauses, DrawTheConclusionWhenAllButOneFail) {
  Trail trail;
  const std::array<Side, 3> x{trail.add(0, 9), trail.add(0, 9), trail.add(0, 9)};
  LearntClauses clauses(trail.sides());
  // x0 >= 5 or x1 <= 3 or x2 >= 7, learnt where the others failed
  trail.decide({x[1], 4});
  trail.decide({other(x[2]), -6});
  ASSERT_TRUE(clauses.add(trail, {{{x[0], 5}, {other(x[2]) ^ 1U, 7}, {other(x[1]), -3}}, 2, 2}));
  EXPECT_EQ(trail.at(x[0]), 5);
  trail.back(0);
  trail.decide({other(x[0]), -4});
  ASSERT_TRUE(clauses.propagate(trail, other(x[0])));
  EXPECT_EQ(trail.at(x[2]), 0); // x1 can still be small
  trail.decide({x[1], 8});
  ASSERT_TRUE(clauses.propagate(trail, x[1]));
  EXPECT_EQ(trail.at(x[2]), 7);
  EXPECT_EQ(trail.reasons(trail.entry(trail.size() - 1)).size(), 2U);
  trail.back(0);
  ASSERT_TRUE(clauses.reduce(trail)); // worth keeping
  trail.decide({x[1], 4});
  ASSERT_TRUE(clauses.propagate(trail, x[1]));
  trail.decide({other(x[2]), -6});
  ASSERT_TRUE(clauses.propagate(trail, other(x[2])));
  EXPECT_EQ(trail.at(x[0]), 5);
}

} // namespace
} // namespace manciple::scheduling
