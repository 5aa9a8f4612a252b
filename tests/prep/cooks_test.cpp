#include "prep/cooks.hpp"

#include "dice.hpp"

#include <gtest/gtest.h>

#include <algorithm>

namespace manciple::prep {
namespace {

Task task(int start, int hands_on, Task::Kind kind = Task::Kind::cook) {
  Task out;
  out.kind = kind;
  out.start = start;
  out.hands_on = hands_on;
  return out;
}

using Cooks = std::vector<std::optional<std::size_t>>;

Cooks cooks_of(const std::vector<Task>& tasks) {
  Cooks out;
  for (const Task& one : tasks) {
    out.push_back(one.cook);
  }
  return out;
}

TEST(AssignCooks, WhoeverIsFreeFirstDoesIt) {
  std::vector<OtherWork> none;
  EXPECT_EQ(cooks_of(assign_cooks({task(0, 4), task(0, 6), task(4, 2), task(5, 0)}, {0, 0}, none)),
            (Cooks{0, 1, 0, std::nullopt}));
}

TEST(AssignCooks, WhoeverMadeItDirtyWashesUp) {
  std::vector<OtherWork> none;
  EXPECT_EQ(
      cooks_of(assign_cooks({task(0, 3), task(0, 4), task(4, 2, Task::Kind::wash)}, {0, 0}, none)),
      (Cooks{0, 1, 1}));
}

// If the tasks were given out first, the first cook would be at the dish when the third task
// begins, and the second one at the second task when the dish does.
TEST(AssignCooks, ADishAndTheTasksBesideItAreSharedAtOnce) {
  std::vector<OtherWork> dish{{7, 4, 20}, {7, 26, 30}};
  EXPECT_EQ(
      cooks_of(assign_cooks({task(0, 4), task(0, 6), task(18, 12), task(20, 5)}, {0, 0}, dish)),
      (Cooks{0, 1, 1, 0}));
  EXPECT_EQ(dish[0].cook, 0U);
  EXPECT_EQ(dish[1].cook, 0U); // goes on with it
}

TEST(AssignCooks, WhoIsStillAtSomethingElseBeginsLater) {
  std::vector<OtherWork> none;
  EXPECT_EQ(cooks_of(assign_cooks({task(0, 4), task(5, 4)}, {5, 0}, none)), (Cooks{1, 0}));
}

TEST(AssignCooks, WithAsManyCooksAsHandsNobodyIsAtTwoThings) {
  Dice dice(11);
  for (int round = 0; round < 300; ++round) {
    const int cooks = dice.number(1, 3);
    std::vector<Task> tasks;
    std::vector<OtherWork> dishes;
    std::vector<int> hands(120, 0);
    for (int i = 0; i < 20; ++i) {
      const int from = dice.number(0, 100);
      const int until = from + dice.number(1, 19);
      if (*std::max_element(hands.begin() + from, hands.begin() + until) == cooks) {
        continue;
      }
      for (int m = from; m < until; ++m) {
        ++hands[static_cast<std::size_t>(m)];
      }
      if (dice.one_in(3)) {
        dishes.push_back({static_cast<std::size_t>(dice.number(0, 2)), from, until});
      } else {
        tasks.push_back(task(from, until - from));
      }
    }
    std::vector<std::vector<int>> at(static_cast<std::size_t>(cooks), std::vector<int>(120, 0));
    const auto work = [&](std::optional<std::size_t> cook, int from, int until) {
      ASSERT_TRUE(cook);
      for (int m = from; m < until; ++m) {
        EXPECT_EQ(++at[*cook][static_cast<std::size_t>(m)], 1) << round;
      }
    };
    for (const Task& one :
         assign_cooks(tasks, std::vector<int>(static_cast<std::size_t>(cooks), 0), dishes)) {
      work(one.cook, one.start, one.start + one.hands_on);
    }
    for (const OtherWork& one : dishes) {
      work(one.cook, one.from, one.until);
    }
  }
}

} // namespace
} // namespace manciple::prep
