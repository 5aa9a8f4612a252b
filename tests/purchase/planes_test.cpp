#include <gtest/gtest.h>

#include <algorithm>
#include <limits>

#include "purchase/dice.hpp"
#include "purchase/planes.hpp"

namespace manciple::purchase {
namespace {

double lowest(const std::vector<Plane>& planes, const std::vector<double>& x) {
  double least = std::numeric_limits<double>::max();
  for (const Plane& plane : planes) {
    double value = plane.at_zero;
    for (std::size_t i = 0; i < x.size(); ++i)
      value += plane.slope[i] * x[i];
    least = std::min(least, value);
  }
  return least;
}

TEST(Planes, ThePeakOfOnePlaneIsACorner) {
  const Peak top = peak({{5, {2, -3}}}, {1, 1});
  EXPECT_DOUBLE_EQ(top.value, 7);
  EXPECT_DOUBLE_EQ(top.at[0], 1);
  EXPECT_DOUBLE_EQ(top.at[1], 0);
}

TEST(Planes, ThePeakOfTwoIsWhereTheyMeet) {
  const Peak top = peak({{0, {4}}, {3, {-2}}}, {1});
  EXPECT_DOUBLE_EQ(top.at[0], 0.5);
  EXPECT_DOUBLE_EQ(top.value, 2);
}

TEST(Planes, NothingIsHigherThanThePeak) {
  for (std::uint64_t seed = 1; seed <= 300; ++seed) {
    SCOPED_TRACE(seed);
    Dice dice(seed);
    const std::size_t parts = 1 + dice.index(5);
    std::vector<Plane> planes(1 + dice.index(20));
    std::vector<double> highest;
    for (std::size_t i = 0; i < parts; ++i)
      highest.push_back(static_cast<double>(dice.pick(1, 10)) / 10);
    for (Plane& plane : planes) {
      plane.at_zero = static_cast<double>(dice.pick(-1000, 1000));
      for (std::size_t i = 0; i < parts; ++i)
        plane.slope.push_back(static_cast<double>(dice.pick(-5000, 5000)));
    }
    const Peak top = peak(planes, highest);
    EXPECT_NEAR(lowest(planes, top.at), top.value, 1e-6);
    for (int tries = 0; tries < 200; ++tries) {
      std::vector<double> x;
      for (const double most : highest)
        x.push_back(most * static_cast<double>(dice.pick(0, 20)) / 20);
      EXPECT_LE(lowest(planes, x), top.value + 1e-6);
    }
  }
}

} // namespace
} // namespace manciple::purchase
