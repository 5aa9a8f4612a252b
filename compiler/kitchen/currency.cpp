#include "kitchen/currency.hpp"

#include "measure/scan.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace manciple::kitchen {
namespace {

enum class Sign { before, before_spaced, after_spaced };

struct Known {
  std::string_view code;
  std::string_view sign;
  Sign place;
  char point;
  int digits;
};

// Digits: ISO 4217, minor units. Sign, its place and the decimal point: as the Unicode CLDR gives
// them for the country (of the euro: for most of its countries). Both from memory.
constexpr auto table = std::to_array<Known>({
    {"AED", "AED", Sign::before_spaced, '.', 2}, {"ARS", "$", Sign::before_spaced, ',', 2},
    {"AUD", "$", Sign::before, '.', 2},          {"BGN", "лв.", Sign::after_spaced, ',', 2},
    {"BHD", "BHD", Sign::before_spaced, '.', 3}, {"BRL", "R$", Sign::before_spaced, ',', 2},
    {"CAD", "$", Sign::before, '.', 2},          {"CHF", "CHF", Sign::before_spaced, '.', 2},
    {"CLP", "$", Sign::before, ',', 0},          {"CNY", "¥", Sign::before, '.', 2},
    {"COP", "$", Sign::before_spaced, ',', 2},   {"CZK", "Kč", Sign::after_spaced, ',', 2},
    {"DKK", "kr.", Sign::after_spaced, ',', 2},  {"EUR", "€", Sign::after_spaced, ',', 2},
    {"GBP", "£", Sign::before, '.', 2},          {"HKD", "HK$", Sign::before, '.', 2},
    {"HUF", "Ft", Sign::after_spaced, ',', 2},   {"IDR", "Rp", Sign::before_spaced, ',', 2},
    {"ILS", "₪", Sign::after_spaced, '.', 2},    {"INR", "₹", Sign::before, '.', 2},
    {"ISK", "kr.", Sign::after_spaced, ',', 0},  {"JOD", "JOD", Sign::before_spaced, '.', 3},
    {"JPY", "¥", Sign::before, '.', 0},          {"KRW", "₩", Sign::before, '.', 0},
    {"KWD", "KWD", Sign::before_spaced, '.', 3}, {"MXN", "$", Sign::before, '.', 2},
    {"MYR", "RM", Sign::before_spaced, '.', 2},  {"NOK", "kr", Sign::after_spaced, ',', 2},
    {"NZD", "$", Sign::before, '.', 2},          {"OMR", "OMR", Sign::before_spaced, '.', 3},
    {"PHP", "₱", Sign::before, '.', 2},          {"PLN", "zł", Sign::after_spaced, ',', 2},
    {"RON", "RON", Sign::after_spaced, ',', 2},  {"RSD", "RSD", Sign::after_spaced, ',', 2},
    {"RUB", "₽", Sign::after_spaced, ',', 2},  {"SAR", "SAR", Sign::before_spaced, '.', 2},
    {"SEK", "kr", Sign::after_spaced, ',', 2},   {"SGD", "$", Sign::before, '.', 2},
    {"THB", "฿", Sign::before, '.', 2},          {"TND", "TND", Sign::before_spaced, ',', 3},
    {"TRY", "₺", Sign::before, ',', 2},          {"TWD", "$", Sign::before, '.', 2},
    {"UAH", "₴", Sign::after_spaced, ',', 2},    {"USD", "$", Sign::before, '.', 2},
    {"VND", "₫", Sign::after_spaced, ',', 0},    {"ZAR", "R", Sign::before_spaced, ',', 2},
});

constexpr std::string_view no_break_space = "\u00a0";

std::string_view trimmed(std::string_view text) {
  text = text::trim(text);
  while (text.starts_with(no_break_space)) {
    text = text::trim(text.substr(no_break_space.size()));
  }
  while (text.ends_with(no_break_space)) {
    text = text::trim(text.substr(0, text.size() - no_break_space.size()));
  }
  return text;
}

bool is_code(std::string_view words) {
  constexpr std::size_t letters = 3;
  return words.size() == letters &&
         std::all_of(words.begin(), words.end(), [](char c) { return c >= 'A' && c <= 'Z'; });
}

} // namespace

Cents Currency::per_unit() const {
  Cents out = 1;
  for (int i = 0; i < digits; ++i) {
    out *= 10;
  }
  return out;
}

std::string Currency::figure(Cents amount) const {
  const Cents size = amount < 0 ? -amount : amount;
  const Cents one = per_unit();
  const std::string whole = fmt::format("{}{}", amount < 0 ? "-" : "", size / one);
  return digits == 0 ? whole : fmt::format("{}{}{:0{}}", whole, point, size % one, digits);
}

std::string Currency::print(Cents amount) const {
  const std::string_view space = spaced ? no_break_space : std::string_view();
  const std::string size = figure(amount < 0 ? -amount : amount);
  return fmt::format("{}{}", amount < 0 ? "-" : "",
                     after ? fmt::format("{}{}{}", size, space, sign)
                           : fmt::format("{}{}{}", sign, space, size));
}

std::string_view Currency::without_sign(std::string_view text) const {
  text = trimmed(text);
  for (const std::string_view one :
       {std::string_view(sign), std::string_view(code), std::string_view("$"),
        std::string_view("€"), std::string_view("£"), std::string_view("EUR")}) {
    if (one.empty()) {
      continue;
    }
    if (text.starts_with(one)) {
      return trimmed(text.substr(one.size()));
    }
    if (text.ends_with(one)) {
      return trimmed(text.substr(0, text.size() - one.size()));
    }
  }
  return text;
}

std::optional<Cents> Currency::parse(std::string_view text) const {
  text = without_sign(text);
  const std::size_t mark = text.find_first_of(".,");
  const auto places = static_cast<int>(mark == std::string_view::npos ? 0 : text.size() - mark - 1);
  if (text.empty() || places > digits || text::is_letter(text.front())) {
    return std::nullopt;
  }
  measure::Cursor cursor{text};
  const auto number = measure::scan_number(cursor);
  constexpr int most = 10'000'000;
  if (!number || !cursor.done() || *number > most) {
    return std::nullopt;
  }
  const measure::Rational smallest = *number * per_unit();
  return denominator(smallest) == 1 ? std::optional(measure::to_int64(numerator(smallest)))
                                    : std::nullopt;
}

Currency currency_called(std::string_view words) {
  const auto* const known =
      std::find_if(table.begin(), table.end(), [&](const Known& one) { return one.code == words; });
  if (known == table.end()) {
    return {is_code(words) ? std::string(words) : std::string(),
            std::string(words),
            false,
            is_code(words),
            '.',
            2};
  }
  return {std::string(known->code),
          std::string(known->sign),
          known->place == Sign::after_spaced,
          known->place != Sign::before,
          known->point,
          known->digits};
}

} // namespace manciple::kitchen
