#include <gtest/gtest.h>

#include <cstdlib>

#include "buying/item/completion_bound.hpp"
#include "buying/item/label_setting.hpp"
#include "buying/network/network.hpp"
#include "buying/solve.hpp"
#include "buying/stops/multipliers.hpp"
#include "solver/buying/brute_force.hpp"
#include "solver/buying/check.hpp"
#include "solver/buying/small_model.hpp"

namespace manciple::buying {
namespace {

/// In an instrumented program more take too long.
constexpr std::size_t few_ways = 6'000;

/// tests/bench/random_houses.cpp does the same with thousands.
void compare(const Features& features, std::uint64_t first, std::uint64_t last, int least_count) {
  int compared = 0;
  for (std::uint64_t seed = first; seed <= last; ++seed) {
    SCOPED_TRACE(seed);
    Dice dice(seed);
    const Model model = make_small(dice, features);
    const Solution solution = solve(model);
    EXPECT_EQ(check(model, solution), std::vector<std::string>{});
    if (const auto least = least_total(model, few_ways)) {
      ++compared;
      EXPECT_EQ(solution.status, Status::optimal);
      // What containers hold is rounded, in one order or another.
      EXPECT_LT(std::abs(solution.total_fine - *least), fine_per_money);
    }
  }
  EXPECT_GE(compared, least_count);
}

TEST(Random, NothingIsCheaperThanTheListThatIsProven) {
  compare(Features{}, 1, 80, 40);
}

TEST(Random, NorWithCreditAndReductions) {
  Features features;
  features.credit = features.spend_over = true;
  compare(features, 1, 30, 10);
}

TEST(Random, NorWhereThereIsLittleRoom) {
  Features features;
  features.room = true;
  compare(features, 1, 60, 20);
}

TEST(Random, NorWherePricesAreVast) {
  Features features;
  features.vast = features.credit = true;
  compare(features, 1, 20, 8);
}

/// The least cost of an item by itself, with nothing pruned away: one item at a time, no room.
TEST(Random, BoundsAreNoHigherThanWhatTheyBound) {
  int compared = 0;
  for (std::uint64_t seed = 1; seed <= 120; ++seed) {
    SCOPED_TRACE(seed);
    Dice dice(seed);
    Model model = make_small(dice, Features{});
    model.items.resize(1);
    for (Stop& stop : model.stops) {
      stop.cost = 0;
      stop.always = true;
    }
    const auto least = least_total(model, few_ways);
    if (!least || !model.items[ItemId(0)].stock.empty()) {
      continue;
    }
    ++compared;
    const Prepared item = prepare(model, model.items[ItemId(0)]);
    const RoomRates free;
    const Terms terms =
        terms_at(model, item, no_multipliers(model), OpenStops(model.stops.size(), true), free);
    CompletionBound bound;
    bound.prepare(item, terms, item.useful_packs);
    EXPECT_LE(bound.rest(0, 0, {}), static_cast<double>(*least) + 1);
    bound.strengthen();
    EXPECT_LE(bound.rest(0, 0, {}), static_cast<double>(*least) + 1);
    WorkBudget budget{Options{}};
    const Network network(model, item, std::vector<bool>(item.visits.size(), true),
                          no_multipliers(model), 0, 1'000'000, budget);
    EXPECT_TRUE(network.finished());
    EXPECT_EQ(network.least(), *least);
  }
  EXPECT_GE(compared, 40);
}

} // namespace
} // namespace manciple::buying
