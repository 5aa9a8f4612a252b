#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace manciple::kitchen {

/// An amount of money in the smallest unit of the house's currency: cents, or what it has instead.
using Cents = std::int64_t;

/// How a house writes money. Amounts have no separator of thousands, so that no reader takes one
/// for a decimal point.
struct Currency {
  std::string code;       ///< ISO 4217; empty where the house gives a sign of its own
  std::string sign = "$"; ///< "€", "CHF"
  bool after = false;     ///< the sign stands after the amount
  bool spaced = false;    ///< with a no-break space between
  char point = '.';       ///< or a comma
  int digits = 2;         ///< after the decimal point: how many of the smallest unit make one, as a
                          ///< power of ten (ISO 4217)

  /// How many of the smallest unit make one: 100.
  [[nodiscard]] Cents per_unit() const;
  /// "12.50": the amount alone.
  [[nodiscard]] std::string figure(Cents amount) const;
  /// "$12.50", "12,50 €".
  [[nodiscard]] std::string print(Cents amount) const;
  /// "12.50", "12,50", "$12.50", "12,5 EUR". Nothing where it has more places than the currency:
  /// "1.200" is no yen.
  [[nodiscard]] std::optional<Cents> parse(std::string_view text) const;
  /// A text without the currency's sign or code at its ends; the usual signs of others go, too.
  [[nodiscard]] std::string_view without_sign(std::string_view text) const;
};

/// By the code of ISO 4217 ("EUR"): as it is usually written where it is used. A code of which no
/// more is known stands before the amount, and so does anything else: a sign of the house's own.
Currency currency_called(std::string_view words);

} // namespace manciple::kitchen
