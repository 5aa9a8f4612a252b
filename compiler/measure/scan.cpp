#include "measure/scan.hpp"

#include "text/words.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <utility>

namespace manciple::measure {
namespace {

using text::is_digit;
using text::is_letter;

constexpr std::size_t most_digits = 9;

struct Vulgar {
  std::string_view glyph;
  int numerator;
  int denominator;
};

// The vulgar fractions of Unicode (U+00BC to U+00BE, U+2150 to U+215E) that stand for a value.
constexpr std::array<Vulgar, 18> vulgar{{
    {"\u00BC", 1, 4},
    {"\u00BD", 1, 2},
    {"\u00BE", 3, 4},
    {"\u2150", 1, 7},
    {"\u2151", 1, 9},
    {"\u2152", 1, 10},
    {"\u2153", 1, 3},
    {"\u2154", 2, 3},
    {"\u2155", 1, 5},
    {"\u2156", 2, 5},
    {"\u2157", 3, 5},
    {"\u2158", 4, 5},
    {"\u2159", 1, 6},
    {"\u215A", 5, 6},
    {"\u215B", 1, 8},
    {"\u215C", 3, 8},
    {"\u215D", 5, 8},
    {"\u215E", 7, 8},
}};

constexpr std::array<std::pair<std::string_view, int>, 14> number_words{{
    {"a", 1},
    {"an", 1},
    {"one", 1},
    {"two", 2},
    {"three", 3},
    {"four", 4},
    {"five", 5},
    {"six", 6},
    {"seven", 7},
    {"eight", 8},
    {"nine", 9},
    {"ten", 10},
    {"eleven", 11},
    {"twelve", 12},
}};

std::string_view word_at(std::string_view text, std::size_t at) {
  std::size_t end = at;
  while (end < text.size() && is_letter(text[end])) {
    ++end;
  }
  return text.substr(at, end - at);
}

std::optional<Integer> scan_digits(Cursor& cursor) {
  std::size_t end = cursor.at;
  while (end < cursor.text.size() && is_digit(cursor.text[end])) {
    ++end;
  }
  const std::size_t length = end - cursor.at;
  if (length == 0 || length > most_digits) {
    return std::nullopt;
  }
  std::string digits(cursor.text.substr(cursor.at, length));
  digits.erase(0, std::min(digits.find_first_not_of('0'), digits.size() - 1));
  cursor.at = end;
  return Integer(digits);
}

// "/2", right after a numerator; U+2044 is the fraction slash.
std::optional<Integer> scan_denominator(Cursor& cursor) {
  const Cursor start = cursor;
  const std::string_view rest = cursor.rest();
  if (rest.starts_with('/')) {
    cursor.at += 1;
  } else if (rest.starts_with("\u2044")) {
    cursor.at += 3;
  } else {
    return std::nullopt;
  }
  std::optional<Integer> digits = scan_digits(cursor);
  if (!digits || *digits == 0) {
    cursor = start;
    return std::nullopt;
  }
  return digits;
}

std::optional<Rational> scan_vulgar(Cursor& cursor) {
  for (const Vulgar& v : vulgar) {
    if (cursor.rest().starts_with(v.glyph)) {
      cursor.at += v.glyph.size();
      return Rational(v.numerator, v.denominator);
    }
  }
  return std::nullopt;
}

// A fraction after a whole number: " 1/2", "½", " ½".
std::optional<Rational> scan_added_fraction(Cursor& cursor) {
  const Cursor start = cursor;
  cursor.skip_spaces();
  if (auto glyph = scan_vulgar(cursor)) {
    return glyph;
  }
  if (cursor.at > start.at) {
    if (const auto top = scan_digits(cursor)) {
      if (const auto bottom = scan_denominator(cursor); bottom && *top < *bottom) {
        return Rational(*top, *bottom);
      }
    }
  }
  cursor = start;
  return std::nullopt;
}

std::optional<Rational> scan_digit_number(Cursor& cursor) {
  const Cursor start = cursor;
  const auto whole = scan_digits(cursor);
  if (!whole) {
    // ".5"
    if (!cursor.rest().starts_with('.')) {
      return std::nullopt;
    }
  }
  if (whole) {
    if (const auto bottom = scan_denominator(cursor)) {
      return Rational(*whole, *bottom);
    }
    if (cursor.rest().starts_with('/')) {
      cursor = start; // "1/0"
      return std::nullopt;
    }
  }
  const bool comma = cursor.rest().starts_with(',');
  if (cursor.rest().size() > 1 && (comma || cursor.rest()[0] == '.') &&
      is_digit(cursor.rest()[1])) {
    ++cursor.at;
    const std::size_t first = cursor.at;
    constexpr std::size_t thousands = 3;
    if (!scan_digits(cursor) || (comma && *whole > 0 && cursor.at - first == thousands)) {
      cursor = start;
      return std::nullopt;
    }
    const std::string literal = (whole ? whole->str() : "0") + "." +
                                std::string(cursor.text.substr(first, cursor.at - first));
    return decimal(literal);
  }
  if (!whole) {
    return std::nullopt;
  }
  const auto fraction = scan_added_fraction(cursor);
  return fraction ? Rational(*whole) + *fraction : Rational(*whole);
}

// "half an onion", "a dozen", "two".
std::optional<Rational> scan_word_number(Cursor& cursor) {
  const std::string word = text::lower(word_at(cursor.text, cursor.at));
  if (word == "half") {
    cursor.at += word.size();
    const Cursor after = cursor;
    cursor.skip_spaces();
    const std::string article = text::lower(word_at(cursor.text, cursor.at));
    if (article == "a" || article == "an") {
      cursor.at += article.size();
    } else {
      cursor = after;
    }
    return Rational(1, 2);
  }
  for (const auto& [name, value] : number_words) {
    if (word == name) {
      cursor.at += word.size();
      // "a half cup" and "one half" are a half.
      const Cursor after = cursor;
      cursor.skip_spaces();
      if (value == 1 && text::lower(word_at(cursor.text, cursor.at)) == "half") {
        cursor.at += 4;
        return Rational(1, 2);
      }
      cursor = after;
      return Rational(value);
    }
  }
  return std::nullopt;
}

} // namespace

void Cursor::skip_spaces() {
  while (at < text.size() && (text[at] == ' ' || text[at] == '\t')) {
    ++at;
  }
}

std::optional<Rational> scan_number(Cursor& cursor) {
  if (auto glyph = scan_vulgar(cursor)) {
    return glyph;
  }
  if (auto digits = scan_digit_number(cursor)) {
    return digits;
  }
  return scan_word_number(cursor);
}

std::optional<Range> scan_range(Cursor& cursor) {
  const auto low = scan_number(cursor);
  if (!low) {
    return std::nullopt;
  }
  const Cursor after = cursor;
  cursor.skip_spaces();
  const std::string_view rest = cursor.rest();
  for (const std::string_view between : {"-", "\u2013", "\u2014", "to "}) {
    if (rest.starts_with(between)) {
      cursor.at += between.size();
      cursor.skip_spaces();
      // "3-lb" is no range: a number must follow.
      const bool digit = !cursor.done() && !is_letter(cursor.rest().front());
      const auto high = digit || between == "to " ? scan_number(cursor) : std::nullopt;
      if (high && *high >= *low) {
        return Range{*low, *high};
      }
      break;
    }
  }
  cursor = after;
  return Range{*low, *low};
}

std::optional<Unit> scan_unit(Cursor& cursor, const Customs& customs) {
  Cursor look = cursor;
  look.skip_spaces();
  const std::size_t from = look.at;
  // A word of the house's own may have letters that ours have not.
  if (const std::string_view own = look.text.substr(from, look.rest().find_first_of(" ,;("));
      customs.words.contains(text::lower(own))) {
    const auto unit = find_unit(own, customs);
    cursor.at = unit ? from + own.size() : cursor.at;
    return unit;
  }
  std::optional<Unit> found;
  std::size_t end = look.at;
  for (int words = 0; words < 3; ++words) {
    const std::string_view word = word_at(look.text, look.at);
    if (word.empty()) {
      break;
    }
    look.at += word.size();
    const bool dot = look.rest().starts_with('.');
    look.at += dot ? 1 : 0;
    if (const auto unit = find_unit(look.text.substr(from, look.at - from), customs)) {
      found = unit;
      end = look.at;
    }
    look.skip_spaces();
  }
  if (found) {
    cursor.at = end;
  }
  return found;
}

std::optional<Quantity> scan_quantity(Cursor& cursor, const Customs& customs) {
  std::optional<Quantity> sum;
  for (;;) {
    Cursor look = cursor;
    look.skip_spaces();
    const auto number = scan_number(look);
    if (!number) {
      return sum;
    }
    if (look.rest().starts_with('-')) {
      ++look.at;
    }
    const auto unit = scan_unit(look, customs);
    if (!unit || (sum && facts(*unit).dimension != dimension(*sum))) {
      return sum;
    }
    const Quantity part{*number, *unit};
    sum = sum ? Quantity{sum->amount + convert(part, sum->unit).amount, sum->unit} : part;
    cursor = look;
  }
}

std::optional<Quantity> parse_quantity(std::string_view text, const Customs& customs) {
  Cursor cursor{text};
  const auto quantity = scan_quantity(cursor, customs);
  cursor.skip_spaces();
  return cursor.done() ? quantity : std::nullopt;
}

} // namespace manciple::measure
