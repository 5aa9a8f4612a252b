#pragma once

#include <boost/multiprecision/cpp_int.hpp>

#include <compare>
#include <concepts>
#include <cstdint>
#include <limits>
#include <memory>
#include <string>
#include <string_view>

namespace manciple::measure {

/// A whole number of any size.
using Integer = boost::multiprecision::number<boost::multiprecision::cpp_int_backend<>,
                                              boost::multiprecision::et_off>;

/// An exact number. Amounts stay exact from the file to the last rounding, so that thirds of a cup
/// add up to cups and the order of a sum never shows. Division by zero throws std::overflow_error.
///
/// Nearly every amount in a kitchen is a fraction of two small numbers: those are kept and worked
/// out in machine words. What does not fit goes over to Boost.Multiprecision's rational, whose
/// templates are compiled once, in rational.cpp. Each value has one form, so nobody can tell.
class Rational {
public:
  Rational() = default; ///< zero
  /// A whole number is a rational; it must fit 64 bits with a sign.
  template <std::integral T>
  Rational(T whole) : Rational(Whole{static_cast<std::int64_t>(whole)}) {} // NOLINT
  explicit Rational(const Integer& whole);
  Rational(const Integer& numerator, const Integer& denominator);
  /// A fraction of two that fit 64 bits with a sign.
  template <std::integral T, std::integral U>
  Rational(T numerator, U denominator)
      : Rational(
            Words{static_cast<std::int64_t>(numerator), static_cast<std::int64_t>(denominator)}) {}

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
  friend Integer floor(const Rational& number);
  /// To a double, for logs and drawings, never for a decision.
  friend double to_double(const Rational& number);

private:
  struct Whole {
    std::int64_t value;
  };
  explicit Rational(Whole whole) : top_(whole.value) {
    if (top_ == std::numeric_limits<std::int64_t>::min()) {
      grow();
    }
  }
  struct Words {
    std::int64_t top;
    std::int64_t bottom;
  };
  explicit Rational(Words words);
  struct Exact;
  void grow();

  // In lowest terms, the sign above; what is above is never the least 64-bit number, whose negative
  // does not fit. 0/1 where `big_` holds the number, and that is never one that would fit here.
  std::int64_t top_ = 0;
  std::int64_t bottom_ = 1;
  std::shared_ptr<const Exact> big_;
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
std::string print_decimal(const Rational& number, int places, char point = '.');
/// The same with exactly `places` digits: 2.50.
std::string print_fixed(const Rational& number, int places);
/// Exact, as a cook writes: "1 1/2", "3", "2/3".
std::string print_exact(const Rational& number);

/// To 64 bits; throws std::range_error when it does not fit.
std::int64_t to_int64(const Integer& number);

} // namespace manciple::measure
