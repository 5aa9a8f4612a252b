#include <gtest/gtest.h>

#include <cmath>

#include <fmt/format.h>

#include "oracle/formulation.hpp"
#include "purchase/check.hpp"
#include "purchase/small_model.hpp"

namespace manciple::oracle {
namespace {

using purchase::Dice;
using purchase::Features;
using purchase::Model;
using purchase::Solution;
using purchase::Status;

int compared = 0;

/// Seconds after which the reference stops. Where it does, its best is no proof, only a value that
/// ours must not exceed.
constexpr int patience = 10;

/// Compares solver and reference on the instances of the seeds; returns how many had a solution
/// that both have proven.
int compare(std::uint64_t first, std::uint64_t last, const Features& features) {
  int possible = 0;
  for (std::uint64_t seed = first; seed <= last; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    Dice dice(seed);
    Model model = make_small(dice, features);
    for (purchase::Good& good : model.goods)
      if (features.room && good.keeps_opened)
        good.room_cool = good.room_frozen = 0; // see formulate()
    purchase::Options options;
    options.seconds = 60;
    const Solution solution = purchase::solve(model, options);
    EXPECT_EQ(purchase::check(model, solution), std::vector<std::string>{});
    const MipResult reference = solve_with_glpk(formulate(model), patience);
    const double total = static_cast<double>(solution.total_fine) / 1e9;
    if (reference.state == MipResult::State::failed) {
      ADD_FAILURE() << "the reference gave up";
    } else if (reference.state == MipResult::State::stopped) {
      EXPECT_EQ(solution.status, Status::optimal);
      EXPECT_LT(total, reference.objective + 0.5);
    } else if (reference.state == MipResult::State::infeasible) {
      ++compared;
      EXPECT_EQ(solution.status, Status::infeasible);
      EXPECT_FALSE(solution.shortages.empty());
    } else {
      ++compared;
      ++possible;
      EXPECT_EQ(solution.status, Status::optimal);
      // In units of Money, a hundredth of a cent.
      EXPECT_NEAR(total, reference.objective, 0.5);
    }
  }
  return possible;
}

Features plain() {
  Features features;
  features.freezing = features.longest_age = features.opened = false;
  features.left_over = features.multi_buy = features.by_weight = false;
  return features;
}

TEST(Oracle, AgreesOnWholePacksShopsAndKeepingTime) {
  EXPECT_GT(compare(1, 60, plain()), 30);
}

TEST(Oracle, AgreesOnFreezingAndFreshness) {
  Features features = plain();
  features.freezing = features.longest_age = true;
  EXPECT_GT(compare(101, 180, features), 40);
}

TEST(Oracle, AgreesOnOpenedPacks) {
  Features features = plain();
  features.opened = features.freezing = features.longest_age = true;
  EXPECT_GT(compare(201, 260, features), 30);
}

TEST(Oracle, AgreesOnWasteSalvageMultiBuyAndByWeight) {
  Features features = plain();
  features.left_over = features.multi_buy = features.by_weight = true;
  EXPECT_GT(compare(301, 380, features), 40);
}

TEST(Oracle, AgreesOnEverythingUncoupled) {
  EXPECT_GT(compare(401, 500, Features{}), 50);
}

TEST(Oracle, AgreesOnRoom) {
  Features features;
  features.room = true;
  EXPECT_GT(compare(501, 600, features), 30);
}

TEST(Oracle, AgreesOnCreditAndReductions) {
  Features features;
  features.credit = features.spend_over = true;
  EXPECT_GT(compare(601, 660, features), 30);
}

/// Says how many there were, in the form that tests/run.sh repeats.
class Report : public testing::Environment {
  void TearDown() override {
    fmt::print("published: GLPK on random purchases: {} compared\n", compared);
  }
};
const testing::Environment* const report = testing::AddGlobalTestEnvironment(new Report);

TEST(Oracle, AgreesOnEverythingAtOnce) {
  Features features;
  features.room = features.credit = features.spend_over = true;
  EXPECT_GT(compare(701, 760, features), 20);
}

} // namespace
} // namespace manciple::oracle
