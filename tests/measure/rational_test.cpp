// Numbers of words against Boost.Multiprecision's rationals of any size, mostly near where a word
// ends: whichever form a number has, it is the same number.

#include "dice.hpp"
#include "measure/rational.hpp"

#include <gtest/gtest.h>

#include <limits>

namespace manciple::measure {
namespace {

using Big = boost::multiprecision::cpp_rational;
constexpr std::int64_t most = std::numeric_limits<std::int64_t>::max();
constexpr std::int64_t least = std::numeric_limits<std::int64_t>::min();

Big big(const Rational& number) {
  return {boost::multiprecision::cpp_int(numerator(number)),
          boost::multiprecision::cpp_int(denominator(number))};
}

// Small, of any length in bits, next to the end of a word, or a power of two.
std::int64_t drawn(Dice& dice) {
  switch (dice.number(0, 4)) {
  case 0:
    return dice.pick(-12, 12);
  case 1:
    return static_cast<std::int64_t>(dice.next() >> dice.pick(1, 63)) * (dice.one_in(2) ? 1 : -1);
  case 2:
    return most - dice.pick(0, 3);
  case 3:
    return least + dice.pick(0, 3);
  default:
    return (dice.one_in(2) ? 1 : -1) * (std::int64_t{1} << dice.pick(0, 62));
  }
}

Rational drawn_rational(Dice& dice) {
  std::int64_t bottom = drawn(dice);
  bottom = bottom == 0 ? 1 : bottom;
  Rational out(Integer(drawn(dice)), Integer(bottom));
  if (dice.one_in(4)) { // beyond a word
    const std::int64_t factor = drawn(dice);
    out *= factor == 0 ? Rational(1) : Rational(Integer(1), Integer(factor));
  }
  return out;
}

// Equal values have equal forms, so that numbers can be compared by their parts.
void expect_same(const Rational& number, const Big& value, const char* what) {
  ASSERT_EQ(numerator(number).str(), boost::multiprecision::numerator(value).str()) << what;
  ASSERT_EQ(denominator(number).str(), boost::multiprecision::denominator(value).str()) << what;
  ASSERT_TRUE(number == Rational(Integer(numerator(number)), Integer(denominator(number)))) << what;
}

TEST(Rationals, AreWorkedOutLikeThoseOfAnySize) {
  Dice dice(20270301);
  int beyond = 0; // results that do not fit a word
  for (int round = 0; round < 8'000; ++round) {
    const Rational a = drawn_rational(dice);
    const Rational b = drawn_rational(dice);
    expect_same(a + b, big(a) + big(b), "+");
    expect_same(a - b, big(a) - big(b), "-");
    expect_same(a * b, big(a) * big(b), "*");
    expect_same(-a, -big(a), "negative");
    expect_same(abs(a), big(a) < 0 ? -big(a) : big(a), "abs");
    if (b != 0) {
      expect_same(a / b, big(a) / big(b), "/");
    }
    ASSERT_EQ(a < b, big(a) < big(b)) << round;
    ASSERT_EQ(a == b, big(a) == big(b)) << round;
    ASSERT_EQ(a > b, big(a) > big(b)) << round;
    ASSERT_EQ(to_double(a), big(a).convert_to<double>()) << round;
    beyond += numerator(a * b) > most ? 1 : 0;
    if (HasFatalFailure()) {
      FAIL() << "round " << round;
    }
  }
  EXPECT_GT(beyond, 100);
}

TEST(Rationals, OfTwoWordsAreAsOfTwoWholeNumbersOfAnySize) {
  Dice dice(20270302);
  for (int round = 0; round < 3'000; ++round) {
    const std::int64_t top = drawn(dice);
    std::int64_t bottom = drawn(dice);
    bottom = bottom == 0 ? 1 : bottom;
    const Big same = Big(top) / Big(bottom);
    expect_same(Rational(top, bottom), same, "of words");
    expect_same(Rational(Integer(top), Integer(bottom)), same, "of whole numbers");
    expect_same(Rational(Integer(top)), Big(top), "of one whole number");
    const Rational below(floor(Rational(top, bottom)));
    ASSERT_TRUE(big(below) <= same && same < big(below) + 1) << top << " / " << bottom;
    if (HasFatalFailure()) {
      FAIL() << top << " / " << bottom;
    }
  }
}

TEST(Rationals, ComeBackFromBeyondAWord) {
  Rational number(most);
  number += 1;
  EXPECT_EQ(numerator(number), Integer(most) + 1);
  number -= 1;
  EXPECT_EQ(number, Rational(most));
  EXPECT_EQ(Rational(least), -(Rational(most) + 1));
  EXPECT_EQ(Rational(least) / Rational(least), Rational(1));
  EXPECT_EQ(Rational(1) / Rational(least) * Rational(least), Rational(1));
  EXPECT_EQ(Rational(most) * Rational(most) / Rational(most), Rational(most));
}

TEST(Rationals, RoundAlsoBeyondAWord) {
  const Rational half(1, 2);
  EXPECT_EQ(floor(Rational(most) + half), Integer(most));
  EXPECT_EQ(ceil(Rational(most) + half), Integer(most) + 1);
  EXPECT_EQ(round(Rational(most) + half), Integer(most) + 1);
  EXPECT_EQ(floor(Rational(least) - half), Integer(least) - 1);
  EXPECT_EQ(ceil(Rational(least) - half), Integer(least));
  EXPECT_EQ(floor(Rational(-1, 3)), -1);
  EXPECT_EQ(ceil(Rational(-1, 3)), 0);
}

TEST(Rationals, AreStillNumbersAfterTheyWereMoved) {
  Rational number = Rational(most) * 2;
  const Rational copy = number;
  const Rational moved = std::move(number);
  EXPECT_EQ(moved, copy);
  number = 3;
  EXPECT_EQ(number + 1, Rational(4));
}

TEST(Rationals, CannotBeDividedByNothing) {
  EXPECT_THROW(Rational(1) / Rational(0), std::overflow_error);
  EXPECT_THROW(Rational(most) * 2 / Rational(0), std::overflow_error);
  EXPECT_THROW(Rational(Integer(1), Integer(0)), std::overflow_error);
  EXPECT_THROW(Rational(1, 0), std::overflow_error);
}

} // namespace
} // namespace manciple::measure
