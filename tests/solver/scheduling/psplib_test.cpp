#include "solver/scheduling/psplib.hpp"

#include "scheduling/check.hpp"
#include "scheduling/lower_bound.hpp"

#include <gtest/gtest.h>

#include <iostream>

namespace manciple::scheduling {
namespace {

namespace fs = std::filesystem;

struct Tally {
  int proven = 0;
  int all = 0;
  double deviation = 0; // in per cent, summed up
};

// Nodes, not seconds: the same on every machine.
Tally tally(const fs::path& folder, std::int64_t nodes) {
  Tally out;
  const std::map<std::string, int> known = psplib::optima(folder);
  for (const fs::path& file : psplib::instances(folder)) {
    std::ifstream in(file);
    const Project project = psplib::read(in);
    const int optimum = known.at(file.stem().string());
    const Schedule schedule = shortest(project, {.seconds = 1e5, .nodes = nodes});
    EXPECT_EQ(fault(project, schedule).value_or(""), "") << file;
    EXPECT_GE(schedule.length, optimum) << file;
    EXPECT_LE(schedule.bound, optimum) << file;
    ++out.all;
    out.proven += schedule.proven() ? 1 : 0;
    out.deviation += 100.0 * (schedule.length - optimum) / optimum;
  }
  return out;
}

TEST(Psplib, ReadsAnInstance) {
  std::ifstream in(fs::path(MANCIPLE_SOURCE) / "tests/solver/scheduling/psplib/j3013_1.sm");
  const Project project = psplib::read(in);
  EXPECT_EQ(project.capacity, (std::vector{19, 18, 19, 17}));
  ASSERT_EQ(project.activities.size(), 32U);
  EXPECT_EQ(project.activities[0].minutes(), 0);
  EXPECT_EQ(project.activities[1].pieces[0].takes, (std::vector{10, 10, 5, 5}));
  EXPECT_EQ(project.activities[1].after, std::vector<std::size_t>{0});
  EXPECT_EQ(project.activities[30].minutes(), 3);
  EXPECT_EQ(project.activities[31].after, (std::vector<std::size_t>{28, 29, 30}));
}

TEST(Psplib, TenInstancesOfJ30) {
  const Tally found = tally(fs::path(MANCIPLE_SOURCE) / "tests/solver/scheduling/psplib", 5000);
  EXPECT_EQ(found.all, 10);
  EXPECT_GE(found.proven, 9); // j3013_1 takes some 40,000 nodes
}

TEST(Psplib, TheBoundRisesAlsoWhereTheNodesRunOut) {
  std::ifstream in(fs::path(MANCIPLE_SOURCE) / "tests/solver/scheduling/psplib/j3013_1.sm");
  const Project project = psplib::read(in);
  const Schedule schedule = shortest(project, {.seconds = 1e5, .nodes = 3000});
  EXPECT_FALSE(schedule.proven());
  EXPECT_GT(schedule.bound, lower_bound(activity_network(project)) + 3);
}

TEST(Psplib, AllInstancesAtHandOfJ30) {
  const fs::path folder = fs::path(MANCIPLE_SOURCE) / "../shared/reference/psplib-j30";
  if (!fs::exists(folder)) {
    std::cerr << "SKIPPED: " << folder << " is not there, so 48 instances of PSPLIB J30 are not "
              << "checked\n";
    GTEST_SKIP();
  }
  const Tally found = tally(folder, 5000);
  EXPECT_EQ(found.all, 48);
  EXPECT_GE(found.proven, 46);
  EXPECT_LE(found.deviation, 0.1 * found.all);
}

} // namespace
} // namespace manciple::scheduling
