#include "measure/rational.hpp"

#include <fmt/format.h>

#include <limits>
#include <stdexcept>

namespace manciple::measure {
namespace {

Integer power_of_ten(int exponent) {
  return boost::multiprecision::pow(Integer(10), static_cast<unsigned>(exponent));
}

} // namespace

// The special members stand here so that no other file compiles the library's.
Rational::Rational() = default;
Rational::Rational(const Rational& other) = default;
Rational::Rational(Rational&& other) noexcept = default;
Rational& Rational::operator=(const Rational& other) = default;
Rational& Rational::operator=(Rational&& other) noexcept = default;
Rational::~Rational() = default;
Rational::Rational(Whole whole) : value_(whole.value) {}
Rational::Rational(Value value) : value_(std::move(value)) {}

Rational::Rational(const Integer& whole) : value_(whole) {}

Rational::Rational(const Integer& numerator, const Integer& denominator) {
  if (denominator == 0) {
    throw std::overflow_error("division by zero");
  }
  value_ = Value(numerator, denominator);
}

Rational& Rational::operator+=(const Rational& other) {
  value_ += other.value_;
  return *this;
}
Rational& Rational::operator-=(const Rational& other) {
  value_ -= other.value_;
  return *this;
}
Rational& Rational::operator*=(const Rational& other) {
  value_ *= other.value_;
  return *this;
}
Rational& Rational::operator/=(const Rational& other) {
  value_ /= other.value_;
  return *this;
}

Rational operator+(const Rational& a, const Rational& b) {
  return Rational(Rational::Value(a.value_ + b.value_));
}
Rational operator-(const Rational& a, const Rational& b) {
  return Rational(Rational::Value(a.value_ - b.value_));
}
Rational operator*(const Rational& a, const Rational& b) {
  return Rational(Rational::Value(a.value_ * b.value_));
}
Rational operator/(const Rational& a, const Rational& b) {
  return Rational(Rational::Value(a.value_ / b.value_));
}
Rational operator-(const Rational& a) {
  return Rational(Rational::Value(-a.value_));
}
bool operator==(const Rational& a, const Rational& b) {
  return a.value_ == b.value_;
}
std::strong_ordering operator<=>(const Rational& a, const Rational& b) {
  return a.value_.compare(b.value_) <=> 0;
}

Integer numerator(const Rational& number) {
  return Integer(boost::multiprecision::numerator(number.value_));
}
Integer denominator(const Rational& number) {
  return Integer(boost::multiprecision::denominator(number.value_));
}
Rational abs(const Rational& number) {
  return number < 0 ? -number : number;
}
double to_double(const Rational& number) {
  return number.value_.convert_to<double>();
}

Rational decimal(std::string_view literal) {
  const std::size_t point = literal.find('.');
  std::string digits(literal.substr(0, point));
  int places = 0;
  if (point != std::string_view::npos) {
    const std::string_view fraction = literal.substr(point + 1);
    digits += fraction;
    places = static_cast<int>(fraction.size());
  }
  // A leading zero would make the text octal.
  const std::size_t first = digits.find_first_not_of('0');
  digits = first == std::string::npos ? "0" : digits.substr(first);
  return Rational(Integer(digits), power_of_ten(places));
}

Integer floor(const Rational& number) {
  const Integer n = numerator(number);
  const Integer d = denominator(number);
  const Integer q = n / d;
  return n < 0 && q * d != n ? Integer(q - 1) : q;
}

Integer ceil(const Rational& number) {
  return -floor(-number);
}

Integer round(const Rational& number) {
  return floor(number + Rational(1, 2));
}

std::string print_fixed(const Rational& number, int places) {
  const Integer scaled = round(number * Rational(power_of_ten(places)));
  std::string digits = Integer(abs(scaled)).str();
  const auto width = static_cast<std::size_t>(places) + 1;
  if (digits.size() < width) {
    digits.insert(0, width - digits.size(), '0');
  }
  if (places > 0) {
    digits.insert(digits.size() - static_cast<std::size_t>(places), ".");
  }
  return scaled < 0 ? "-" + digits : digits;
}

std::string print_decimal(const Rational& number, int places) {
  std::string text = print_fixed(number, places);
  if (text.find('.') != std::string::npos) {
    text.erase(text.find_last_not_of('0') + 1);
    if (text.ends_with('.')) {
      text.pop_back();
    }
  }
  return text;
}

std::string print_exact(const Rational& number) {
  const Integer whole = floor(number);
  const Rational rest = number - Rational(whole);
  if (rest == 0) {
    return whole.str();
  }
  const std::string fraction = fmt::format("{}/{}", numerator(rest).str(), denominator(rest).str());
  return whole == 0 ? fraction : fmt::format("{} {}", whole.str(), fraction);
}

std::int64_t to_int64(const Integer& number) {
  if (number > std::numeric_limits<std::int64_t>::max() ||
      number < std::numeric_limits<std::int64_t>::min()) {
    throw std::range_error("a number does not fit 64 bits");
  }
  return number.convert_to<std::int64_t>();
}

} // namespace manciple::measure
