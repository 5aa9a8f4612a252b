#pragma once

#include <boost/multiprecision/cpp_int.hpp>

#include <cstdint>
#include <string>
#include <string_view>

namespace manciple::measure {

/// An exact number. Amounts stay exact from the file to the last rounding, so that thirds of a cup
/// add up to cups and the order of a sum never shows. Expression templates are off: an `auto` is a
/// number and not a reference to its operands.
using Rational = boost::multiprecision::number<boost::multiprecision::cpp_rational_backend,
                                               boost::multiprecision::et_off>;
using Integer = boost::multiprecision::number<boost::multiprecision::cpp_int_backend<>,
                                              boost::multiprecision::et_off>;

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

/// To a double, for logs and drawings, never for a decision.
double to_double(const Rational& number);
/// To 64 bits; throws std::range_error when it does not fit.
std::int64_t to_int64(const Integer& number);

} // namespace manciple::measure
