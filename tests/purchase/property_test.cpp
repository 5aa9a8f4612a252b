#include <gtest/gtest.h>

#include <sstream>

#include "bench/model_text.hpp"
#include "bench/month.hpp"
#include "purchase/build.hpp"
#include "purchase/check.hpp"
#include "purchase/small_model.hpp"

namespace manciple::purchase {
namespace {

constexpr std::uint64_t instances = 400;

template <typename Test>
void for_each_instance(const Features& features, Test test) {
  for (std::uint64_t seed = 1; seed <= instances; ++seed) {
    SCOPED_TRACE(seed);
    Dice dice(seed);
    test(make_small(dice, features), dice);
  }
}

Features all_features() {
  Features features;
  features.room = features.credit = features.spend_over = true;
  return features;
}

TEST(Property, EverySolutionPassesTheCheck) {
  Options options;
  options.seconds = 0.05; // also what is found when time runs out must be right
  for_each_instance(all_features(), [&](const Model& model, Dice&) {
    EXPECT_EQ(check(model, solve(model, options)), std::vector<std::string>{});
  });
}

TEST(Property, TheSameModelGivesTheSameSolution) {
  for_each_instance(Features{}, [](const Model& model, Dice&) {
    const Solution first = solve(model);
    const Solution second = solve(model);
    EXPECT_EQ(first.stops, second.stops);
    EXPECT_EQ(first.total_fine, second.total_fine);
    ASSERT_EQ(first.goods.size(), second.goods.size());
    for (GoodId id = 0; id < first.goods.size(); ++id) {
      const std::vector<Purchase>& a = first.goods[id].purchases;
      const std::vector<Purchase>& b = second.goods[id].purchases;
      ASSERT_EQ(a.size(), b.size());
      for (std::size_t i = 0; i < a.size(); ++i) {
        EXPECT_EQ(a[i].stop, b[i].stop);
        EXPECT_EQ(a[i].offer, b[i].offer);
        EXPECT_EQ(a[i].packs, b[i].packs);
      }
    }
  });
}

/// Tests that a change for the better never makes the optimum worse.
template <typename Change>
void expect_no_worse(Change change) {
  int compared = 0;
  for_each_instance(Features{}, [&](const Model& model, Dice& dice) {
    const Solution before = solve(model);
    Model better = model;
    change(better, dice);
    const Solution after = solve(better);
    if (before.status == Status::infeasible)
      return;
    ++compared;
    ASSERT_EQ(after.status, Status::optimal);
    EXPECT_LE(after.total_fine, before.total_fine);
  });
  EXPECT_GT(compared, 200);
}

TEST(Property, AnotherOfferIsNeverWorse) {
  expect_no_worse([](Model& model, Dice& dice) {
    model.goods[0].offers.push_back(pack(0, dice.pick(1, 8) * 100, dice.pick(1, 40) * 1000));
  });
}

TEST(Property, AnotherStopIsNeverWorse) {
  expect_no_worse([](Model& model, Dice& dice) {
    model.stops.push_back({dice.number(0, model.last_day), dice.index(model.shops.size()),
                           dice.pick(0, 3) * 5000, false});
  });
}

TEST(Property, KeepingLongerIsNeverWorse) {
  expect_no_worse([](Model& model, Dice& dice) {
    Good& good = model.goods[0];
    good.keeps_cool += dice.number(1, 5);
    if (good.keeps_frozen)
      *good.keeps_frozen += dice.number(0, 5);
  });
}

TEST(Property, NeedingLessIsNeverWorse) {
  expect_no_worse([](Model& model, Dice& dice) {
    Good& good = model.goods[0];
    // Left over instead of used: no worse only if that is worth something and cannot rot.
    good.waste = 0;
    Demand& demand = good.demands[dice.index(good.demands.size())];
    demand.amount = std::max<Amount>(1, demand.amount / 2);
  });
}

TEST(Property, RoomNobodyNeedsChangesNothing) {
  for_each_instance(Features{}, [](const Model& model, Dice&) {
    Model roomy = model;
    for (std::vector<Volume>& place : roomy.room)
      place.assign(static_cast<std::size_t>(model.last_day) + 1, 1'000'000'000);
    const Solution plain = solve(model);
    const Solution coupled = solve(roomy);
    EXPECT_EQ(coupled.status, plain.status);
    EXPECT_EQ(coupled.total_fine, plain.total_fine);
  });
}

TEST(Property, AModelReadsBackAsItWasWritten) {
  for_each_instance(all_features(), [](const Model& model, Dice&) {
    const std::string text = write_model(model);
    std::istringstream stream(text);
    EXPECT_EQ(write_model(read_model(stream)), text);
  });
}

TEST(Property, AMonthIsProvenOptimal) {
  for (std::uint64_t seed = 1; seed <= 3; ++seed) {
    const Model model = make_month({1, 1, seed, false});
    Options options;
    options.seconds = 120; // for slow builds; it takes milliseconds
    const Solution solution = solve(model, options);
    EXPECT_EQ(solution.status, Status::optimal);
    EXPECT_EQ(check(model, solution), std::vector<std::string>{});
  }
}

} // namespace
} // namespace manciple::purchase
