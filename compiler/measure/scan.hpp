#pragma once

#include "measure/quantity.hpp"

#include <optional>
#include <string_view>

namespace manciple::measure {

/// A place in a text that is read from left to right. A scan_* function moves it past what it has
/// read, and leaves it where it was when it finds nothing.
struct Cursor {
  std::string_view text;
  std::size_t at = 0;

  [[nodiscard]] std::string_view rest() const { return text.substr(at); }
  [[nodiscard]] bool done() const { return at >= text.size(); }
  void skip_spaces();
};

/// Two ends of an amount; equal when it is no range. "1-2 tsp" is bought for the upper end.
struct Range {
  Rational low;
  Rational high;

  friend bool operator==(const Range&, const Range&) = default;
};

/// "3", "2.5", "2,5", "1/2", "1 1/2", "½", "1½", "one" to "twelve", "a", "an", "half", "half a", "a
/// dozen". Nothing when there is no number, when a denominator is 0, when it has over nine
/// digits, or for "1,500", which some read as 1500.
std::optional<Rational> scan_number(Cursor& cursor);

/// A number, or two of them with "-", "–" or "to" between.
std::optional<Range> scan_range(Cursor& cursor);

/// A unit of one to three words, the longest that is known.
std::optional<Unit> scan_unit(Cursor& cursor, const Customs& customs);

/// A number and a unit, or several that add up: "1 lb 4 oz", "8-oz". No range.
std::optional<Quantity> scan_quantity(Cursor& cursor, const Customs& customs);

/// The whole of `text` as a quantity.
std::optional<Quantity> parse_quantity(std::string_view text, const Customs& customs);

} // namespace manciple::measure
