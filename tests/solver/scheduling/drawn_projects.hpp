#pragma once

#include "dice.hpp"
#include "scheduling/project.hpp"

/// Projects drawn from dice.
namespace manciple::scheduling {

/// What there is in the kitchen of a drawn session, by resource.
enum KitchenResource : std::size_t { cook, burner, oven, slow_cooker, processor, kinds };

inline Activity work(int hands_on, int then, std::size_t appliance) {
  std::vector<int> both(kinds, 0);
  std::vector<int> alone(kinds, 0);
  if (appliance != cook) {
    both[appliance] = alone[appliance] = 1;
  }
  both[cook] = 1;
  return {{{hands_on, both}, {then, alone}}, {}};
}

/// A prep session: dishes of two to five steps with hands and appliance and then the appliance
/// alone, cuts that go before the first step of a dish, and meat that is portioned when all else is
/// cut.
inline Project drawn_session(std::uint64_t seed, int cooks) {
  Dice dice(seed);
  Project project;
  project.capacity = {cooks, 4, 1, 1, 1};
  auto& all = project.activities;
  std::vector<std::size_t> cuts;
  std::vector<std::size_t> last_steps;
  const int dishes = dice.number(6, 11);
  for (int dish = 0; dish < dishes; ++dish) {
    std::vector<std::size_t> before;
    for (int cut = dice.number(0, 3); cut > 0; --cut) {
      before.push_back(all.size());
      cuts.push_back(all.size());
      all.push_back(work(dice.number(1, 12), 0, dice.one_in(6) ? processor : cook));
    }
    if (!last_steps.empty() && dice.one_in(4)) { // a dish that goes into this one
      before.push_back(last_steps[dice.index(last_steps.size())]);
    }
    for (int task = dice.number(2, 5); task > 0; --task) {
      const int kind = dice.number(1, 10);
      Activity activity = kind <= 4   ? work(dice.number(1, 12), 5 * dice.number(0, 9), burner)
                          : kind <= 6 ? work(dice.number(1, 5), 5 * dice.number(3, 12), oven)
                          : kind == 7 ? work(dice.number(1, 4), 0, processor)
                                      : work(dice.number(1, 15), 5 * dice.number(0, 4), cook);
      if (task == 1 && dice.one_in(10)) {
        activity = work(dice.number(2, 6), 30 * dice.number(4, 8), slow_cooker);
      }
      activity.after = before;
      before = {all.size()};
      all.push_back(std::move(activity));
    }
    last_steps.push_back(all.size() - 1);
  }
  for (int bag = dice.number(0, 4); bag > 0; --bag) {
    Activity activity = work(dice.number(2, 10), 0, cook);
    activity.after = cuts;
    all.push_back(std::move(activity));
  }
  return project;
}

/// Few activities of one to three short pieces each, now and then of no minutes.
inline Project drawn_small_project(std::uint64_t seed) {
  Dice dice(seed);
  Project project;
  for (int r = dice.number(1, 3); r > 0; --r) {
    project.capacity.push_back(dice.number(1, 4));
  }
  const int count = dice.number(2, 6);
  for (int i = 0; i < count; ++i) {
    Activity activity;
    for (int pieces = dice.number(1, 3); pieces > 0; --pieces) {
      Piece piece;
      piece.minutes = dice.number(0, count > 4 ? 2 : 3);
      for (const int capacity : project.capacity) {
        piece.takes.push_back(dice.one_in(3) ? 0 : dice.number(0, capacity));
      }
      activity.pieces.push_back(std::move(piece));
    }
    for (int before = 0; before < i; ++before) {
      if (dice.one_in(5)) {
        activity.after.push_back(static_cast<std::size_t>(before));
      }
    }
    if (i > 0 && dice.one_in(4)) { // a twin
      activity = project.activities.back();
    }
    project.activities.push_back(std::move(activity));
  }
  return project;
}

} // namespace manciple::scheduling
