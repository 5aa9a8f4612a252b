#include "kitchen/read.hpp"

#include "kitchen/errors.hpp"
#include "measure/scan.hpp"
#include "text/nearest.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <charconv>

namespace manciple::kitchen {
namespace {

template <typename Parse>
auto read(const text::Node& node, text::Diagnostics& diagnostics, std::string_view wanted,
          Parse parse) -> decltype(parse(std::string_view())) {
  const std::string* text = text::text_of(node, wanted, diagnostics);
  if (text == nullptr) {
    return std::nullopt;
  }
  auto value = parse(std::string_view(*text));
  if (!value) {
    diagnostics.error(errors::bad_value, node.span, fmt::format("'{}' is not {}", *text, wanted));
  }
  return value;
}

std::optional<measure::Rational> parse_number(std::string_view text) {
  measure::Cursor cursor{text};
  const auto number = measure::scan_number(cursor);
  return cursor.done() ? number : std::nullopt;
}

} // namespace

std::optional<text::Date> read_date(const text::Node& node, text::Diagnostics& diagnostics) {
  return read(node, diagnostics, "a date such as 2027-03-02", text::parse_date);
}

std::optional<int> read_clock(const text::Node& node, text::Diagnostics& diagnostics) {
  return read(node, diagnostics, "a time of day such as \"13:00\"", text::parse_clock);
}

std::optional<int> read_minutes(const text::Node& node, text::Diagnostics& diagnostics) {
  return read(node, diagnostics, "a time such as 8 min or 1 h 30 min, at most 60 days",
              text::parse_minutes);
}

std::optional<int> read_days(const text::Node& node, text::Diagnostics& diagnostics) {
  return read(node, diagnostics, "a time such as 4 days or 3 months, at most 100 years",
              text::parse_days);
}

std::optional<int> read_months(const text::Node& node, text::Diagnostics& diagnostics) {
  constexpr int a_year = 12;
  constexpr int oldest = 150;
  const std::string_view said = node.scalar;
  int number = 0;
  const auto [end, wrong] = std::from_chars(said.data(), said.data() + said.size(), number);
  std::string_view unit = said.substr(static_cast<std::size_t>(end - said.data()));
  unit.remove_prefix(std::min(unit.size(), unit.find_first_not_of(' ')));
  const bool years = unit.empty() || unit == "year" || unit == "years";
  const bool months = unit == "month" || unit == "months";
  if (wrong != std::errc() || number < 0 || number > oldest || !(years || months)) {
    diagnostics.error(errors::bad_value, node.span, fmt::format("'{}' is not an age", node.scalar),
                      "write 6, 6 years or 8 months");
    return std::nullopt;
  }
  return years ? number * a_year : number;
}

std::optional<measure::Rational> read_number(const text::Node& node,
                                             text::Diagnostics& diagnostics) {
  return read(node, diagnostics, "a number", parse_number);
}

std::optional<measure::Rational> read_positive(const text::Node& node,
                                               text::Diagnostics& diagnostics) {
  return read(node, diagnostics, "a number above 0", [](std::string_view text) {
    const auto number = parse_number(text);
    return number && *number > 0 ? number : std::nullopt;
  });
}

std::optional<int> read_count(const text::Node& node, text::Diagnostics& diagnostics, int least) {
  constexpr int most = 1'000'000;
  const std::string wanted = least == 0 ? fmt::format("a whole number up to {}", most)
                                        : fmt::format("a whole number from {} to {}", least, most);
  return read(node, diagnostics, wanted, [&](std::string_view text) -> std::optional<int> {
    const auto number = parse_number(text);
    if (!number || denominator(*number) != 1 || *number < least || *number > most) {
      return std::nullopt;
    }
    return static_cast<int>(measure::to_int64(numerator(*number)));
  });
}

std::vector<foods::Allergen> read_allergens(const std::vector<const text::Node*>& words,
                                            text::Diagnostics& diagnostics) {
  std::vector<foods::Allergen> out;
  for (const text::Node* word : words) {
    if (const auto allergen = foods::parse_allergen(word->scalar)) {
      out.push_back(*allergen);
      continue;
    }
    const auto known = foods::allergen_words();
    diagnostics.error(errors::bad_value, word->span,
                      fmt::format("'{}' is not an allergen class", word->scalar),
                      text::did_you_mean(word->scalar, {known.begin(), known.end()}));
  }
  return out;
}

std::optional<bool> read_yes_no(const text::Node& node, text::Diagnostics& diagnostics) {
  return read(node, diagnostics, "yes or no", [](std::string_view text) -> std::optional<bool> {
    if (text == "yes" || text == "true") {
      return true;
    }
    return text == "no" || text == "false" ? std::optional(false) : std::nullopt;
  });
}

std::optional<measure::Rational> read_percent(const text::Node& node,
                                              text::Diagnostics& diagnostics) {
  return read(node, diagnostics, "a share such as 8.25 %, at most 100 %",
              [](std::string_view text) -> std::optional<measure::Rational> {
                measure::Cursor cursor{text};
                const auto number = measure::scan_number(cursor);
                if (!number || text::trim(cursor.rest()) != "%" || *number > 100) {
                  return std::nullopt;
                }
                return measure::Rational(*number / 100);
              });
}

std::optional<Cents> read_money(const text::Node& node, const Currency& currency,
                                text::Diagnostics& diagnostics) {
  constexpr Cents example = 1250;
  return read(node, diagnostics,
              fmt::format("an amount of money such as {}", currency.figure(example)),
              [&](std::string_view text) { return currency.parse(text); });
}

} // namespace manciple::kitchen
