#include "measure/rational.hpp"

#include <fmt/format.h>

#include <numeric>
#include <stdexcept>
#include <utility>

namespace manciple::measure {
namespace {

// Holds the product of any two 64-bit numbers, and the sum of two products of numbers that are not
// the least of them.
__extension__ using Wide = __int128;

using Big = boost::multiprecision::number<boost::multiprecision::cpp_rational_backend,
                                          boost::multiprecision::et_off>;

constexpr std::int64_t most_small = std::numeric_limits<std::int64_t>::max();

Integer power_of_ten(int exponent) {
  return boost::multiprecision::pow(Integer(10), static_cast<unsigned>(exponent));
}

// Whether a fraction above or below the line may have it.
bool fits_word(const Integer& number) {
  return -most_small <= number && number <= most_small;
}

std::string digits_of(const Integer& number) {
  return fits_word(number) ? fmt::format_int(number.convert_to<std::int64_t>()).str()
                           : number.str();
}

} // namespace

// All that is known of the two forms of a number stands here; the rest of the file asks for a
// fraction of words, and takes the big one where there is none.
struct Rational::Exact {
  Big value;

  static Big of(const Rational& number) {
    return number.big_ ? number.big_->value : Big(number.top_, number.bottom_);
  }

  static Rational from(Big value) {
    const Integer top(boost::multiprecision::numerator(value));
    const Integer bottom(boost::multiprecision::denominator(value));
    Rational out;
    if (fits_word(top) && fits_word(bottom)) {
      out.top_ = top.convert_to<std::int64_t>();
      out.bottom_ = bottom.convert_to<std::int64_t>();
    } else {
      out.big_ = std::make_shared<const Exact>(Exact{std::move(value)});
    }
    return out;
  }

  static bool small(const Rational& a, const Rational& b) { return !a.big_ && !b.big_; }

  // In lowest terms and not negative below; false if it does not fit.
  static bool fit(Wide top, Wide bottom, Rational& out) {
    if (top > most_small || top < -most_small || bottom > most_small) {
      return false;
    }
    out = Rational(static_cast<std::int64_t>(top));
    out.bottom_ = static_cast<std::int64_t>(bottom);
    return true;
  }

  // Henrici's way (Knuth, The Art of Computer Programming 2, 4.5.1): the factors that the two
  // denominators share are the only ones that the sum can lose.
  static bool add(const Rational& a, std::int64_t b_top, std::int64_t b_bottom, Rational& out) {
    const std::int64_t shared = std::gcd(a.bottom_, b_bottom);
    const Wide top = Wide{a.top_} * (b_bottom / shared) + Wide{b_top} * (a.bottom_ / shared);
    const std::int64_t lost =
        shared == 1 ? 1 : std::gcd(static_cast<std::int64_t>(top % shared), shared);
    return fit(top / lost, Wide{a.bottom_ / shared} * (b_bottom / lost), out);
  }

  static bool multiply(const Rational& a, std::int64_t b_top, std::int64_t b_bottom,
                       Rational& out) {
    const std::int64_t left = std::gcd(a.top_, b_bottom);
    const std::int64_t right = std::gcd(b_top, a.bottom_);
    std::int64_t top = 0;
    std::int64_t bottom = 0;
    return !__builtin_mul_overflow(a.top_ / left, b_top / right, &top) &&
           !__builtin_mul_overflow(a.bottom_ / right, b_bottom / left, &bottom) &&
           fit(top, bottom, out);
  }
};

void Rational::grow() {
  big_ = std::make_shared<const Exact>(Exact{Big(std::exchange(top_, 0))});
}

Rational::Rational(const Integer& whole)
    : Rational(fits_word(whole) ? Rational(whole.convert_to<std::int64_t>())
                                : Exact::from(Big(whole))) {}

Rational::Rational(Words words) {
  if (words.top < -most_small || words.bottom < -most_small) {
    *this = Rational(Integer(words.top), Integer(words.bottom));
    return;
  }
  if (words.bottom == 0) {
    throw std::overflow_error("division by zero");
  }
  const std::int64_t shared = std::gcd(words.top, words.bottom);
  const std::int64_t part = words.bottom < 0 ? -shared : shared; // the sign goes above
  top_ = words.top / part;
  bottom_ = words.bottom / part;
}

Rational::Rational(const Integer& numerator, const Integer& denominator) {
  if (denominator == 0) {
    throw std::overflow_error("division by zero");
  }
  if (fits_word(numerator) && fits_word(denominator)) {
    *this = Rational(
        Words{numerator.convert_to<std::int64_t>(), denominator.convert_to<std::int64_t>()});
    return;
  }
  // Boost's own constructor takes no denominator below zero, whatever its size.
  *this = Exact::from(denominator < 0 ? Big(Integer(-numerator), Integer(-denominator))
                                      : Big(numerator, denominator));
}

Rational& Rational::operator+=(const Rational& other) {
  return *this = *this + other;
}
Rational& Rational::operator-=(const Rational& other) {
  return *this = *this - other;
}
Rational& Rational::operator*=(const Rational& other) {
  return *this = *this * other;
}
Rational& Rational::operator/=(const Rational& other) {
  return *this = *this / other;
}

Rational operator+(const Rational& a, const Rational& b) {
  using Exact = Rational::Exact;
  Rational out;
  return Exact::small(a, b) && Exact::add(a, b.top_, b.bottom_, out)
             ? out
             : Exact::from(Exact::of(a) + Exact::of(b));
}
Rational operator-(const Rational& a, const Rational& b) {
  using Exact = Rational::Exact;
  Rational out;
  return Exact::small(a, b) && Exact::add(a, -b.top_, b.bottom_, out)
             ? out
             : Exact::from(Exact::of(a) - Exact::of(b));
}
Rational operator*(const Rational& a, const Rational& b) {
  using Exact = Rational::Exact;
  Rational out;
  return Exact::small(a, b) && Exact::multiply(a, b.top_, b.bottom_, out)
             ? out
             : Exact::from(Exact::of(a) * Exact::of(b));
}
Rational operator/(const Rational& a, const Rational& b) {
  using Exact = Rational::Exact;
  if (b == 0) {
    throw std::overflow_error("division by zero");
  }
  Rational out;
  const bool below = b.top_ < 0; // the sign goes above
  return Exact::small(a, b) &&
                 Exact::multiply(a, below ? -b.bottom_ : b.bottom_, below ? -b.top_ : b.top_, out)
             ? out
             : Exact::from(Exact::of(a) / Exact::of(b));
}
Rational operator-(const Rational& a) {
  using Exact = Rational::Exact;
  if (a.big_) {
    return Exact::from(-a.big_->value);
  }
  Rational out = a;
  out.top_ = -out.top_;
  return out;
}
bool operator==(const Rational& a, const Rational& b) {
  return Rational::Exact::small(a, b) ? a.top_ == b.top_ && a.bottom_ == b.bottom_
                                      : a.big_ && b.big_ && a.big_->value == b.big_->value;
}
std::strong_ordering operator<=>(const Rational& a, const Rational& b) {
  using Exact = Rational::Exact;
  return Exact::small(a, b) ? Wide{a.top_} * b.bottom_ <=> Wide{b.top_} * a.bottom_
                            : Exact::of(a).compare(Exact::of(b)) <=> 0;
}

Integer numerator(const Rational& number) {
  return number.big_ ? Integer(boost::multiprecision::numerator(number.big_->value))
                     : Integer(number.top_);
}
Integer denominator(const Rational& number) {
  return number.big_ ? Integer(boost::multiprecision::denominator(number.big_->value))
                     : Integer(number.bottom_);
}
Rational abs(const Rational& number) {
  return number < 0 ? -number : number;
}
double to_double(const Rational& number) {
  // What a double holds exactly, its division rounds as it should.
  constexpr std::int64_t most_exact = std::int64_t{1} << std::numeric_limits<double>::digits;
  if (!number.big_ && number.bottom_ <= most_exact && -most_exact <= number.top_ &&
      number.top_ <= most_exact) {
    return static_cast<double>(number.top_) / static_cast<double>(number.bottom_);
  }
  return Rational::Exact::of(number).convert_to<double>();
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
  if (!number.big_) {
    const std::int64_t whole = number.top_ / number.bottom_;
    return number.top_ < 0 && number.top_ % number.bottom_ != 0 ? whole - 1 : whole;
  }
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
  std::string digits = digits_of(Integer(abs(scaled)));
  const auto width = static_cast<std::size_t>(places) + 1;
  if (digits.size() < width) {
    digits.insert(0, width - digits.size(), '0');
  }
  if (places > 0) {
    digits.insert(digits.size() - static_cast<std::size_t>(places), ".");
  }
  return scaled < 0 ? "-" + digits : digits;
}

std::string print_decimal(const Rational& number, int places, char point) {
  std::string text = print_fixed(number, places);
  if (const std::size_t mark = text.find('.'); mark != std::string::npos) {
    text.erase(text.find_last_not_of('0') + 1);
    if (text.ends_with('.')) {
      text.pop_back();
    } else {
      text[mark] = point;
    }
  }
  return text;
}

std::string print_exact(const Rational& number) {
  const Integer whole = floor(number);
  const Rational rest = number - Rational(whole);
  if (rest == 0) {
    return digits_of(whole);
  }
  const std::string fraction =
      fmt::format("{}/{}", digits_of(numerator(rest)), digits_of(denominator(rest)));
  return whole == 0 ? fraction : fmt::format("{} {}", digits_of(whole), fraction);
}

std::int64_t to_int64(const Integer& number) {
  if (number > std::numeric_limits<std::int64_t>::max() ||
      number < std::numeric_limits<std::int64_t>::min()) {
    throw std::range_error("a number does not fit 64 bits");
  }
  return number.convert_to<std::int64_t>();
}

} // namespace manciple::measure
