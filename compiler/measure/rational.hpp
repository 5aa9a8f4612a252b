#pragma once

#include <boost/multiprecision/cpp_int.hpp>

#include <compare>
#include <concepts>
#include <cstdint>
#include <string>
#include <string_view>
#include <utility>

namespace manciple::measure {

/// A whole number of any size.
using Integer = boost::multiprecision::number<boost::multiprecision::cpp_int_backend<>,
                                              boost::multiprecision::et_off>;

/// An exact number. Amounts stay exact from the file to the last rounding, so that thirds of a cup
/// add up to cups and the order of a sum never shows. A thin face before Boost.Multiprecision's
/// rational: its templates are compiled once, in rational.cpp, and not in every file that adds two
/// amounts. Division by zero throws std::overflow_error.
class Rational {
public:
  Rational();
  /// A whole number is a rational; it must fit 64 bits with a sign.
  template <std::integral T>
  Rational(T whole) : Rational(Whole{static_cast<std::int64_t>(whole)}) {} // NOLINT
  Rational(const Rational& other);
  Rational(Rational&& other) noexcept;
  Rational& operator=(const Rational& other);
  Rational& operator=(Rational&& other) noexcept;
  ~Rational();
  explicit Rational(const Integer& whole);
  Rational(const Integer& numerator, const Integer& denominator);

  Rational& operator+=(const Rational& other);
  Rational& operator-=(const Rational& other);
  Rational& operator*=(const Rational& other);
  Rational& operator/=(const Rational& other);

  friend Rational operator+(const Rational& a, const Rational& b);
  friend Rational operator-(const Rational& a, const Rational& b);
  friend Rational operator*(const Rational& a, const Rational& b);
  friend Rational operator/(const Rational& a, const Rational& b);
  friend Rational operator-(const Rational& a);
  friend bool operator==(const Rational& a, const Rational& b);
  friend std::strong_ordering operator<=>(const Rational& a, const Rational& b);

  friend Integer numerator(const Rational& number);
  friend Integer denominator(const Rational& number);
  friend Rational abs(const Rational& number);
  /// To a double, for logs and drawings, never for a decision.
  friend double to_double(const Rational& number);

private:
  struct Whole {
    std::int64_t value;
  };
  explicit Rational(Whole whole);
  using Value = boost::multiprecision::number<boost::multiprecision::cpp_rational_backend,
                                              boost::multiprecision::et_off>;
  explicit Rational(Value value);
  Value value_;
};

/// A number written as a decimal literal: "236.5882365". For constants; the text must be right.
Rational decimal(std::string_view literal);

/// The largest whole number that is not above, and the smallest that is not below.
Integer floor(const Rational& number);
Integer ceil(const Rational& number);
/// The nearest whole number; a half goes up.
Integer round(const Rational& number);

/// As a decimal with at most `places` digits after the point (a half goes up), without trailing
/// zeros: 2.5, 3, 0.33.
std::string print_decimal(const Rational& number, int places);
/// The same with exactly `places` digits: 2.50.
std::string print_fixed(const Rational& number, int places);
/// Exact, as a cook writes: "1 1/2", "3", "2/3".
std::string print_exact(const Rational& number);

/// To 64 bits; throws std::range_error when it does not fit.
std::int64_t to_int64(const Integer& number);

} // namespace manciple::measure
