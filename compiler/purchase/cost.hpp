#pragma once

#include <compare>
#include <cstdint>
#include <limits>

#include "purchase/model.hpp"

namespace manciple::purchase {

/// What is minimised: money first, then (only between equal money) stops and packs. Ordered and
/// added like a number, so every bound and every dominance holds for the tie-breaking as well.
struct Cost {
  Fine value = 0;
  /// Stops made * one_stop + packs bought.
  std::int64_t ties = 0;

  friend constexpr auto operator<=>(const Cost&, const Cost&) = default;
  constexpr Cost& operator+=(Cost other) {
    value += other.value;
    ties += other.ties;
    return *this;
  }
  constexpr Cost& operator-=(Cost other) {
    value -= other.value;
    ties -= other.ties;
    return *this;
  }
  friend constexpr Cost operator+(Cost a, Cost b) { return a += b; }
  friend constexpr Cost operator-(Cost a, Cost b) { return a -= b; }
};

constexpr std::int64_t one_stop = std::int64_t{1} << 32;

/// Of what cannot be done. Far enough from the ends of the range that a few can be added up.
constexpr Cost impossible{std::numeric_limits<Fine>::max() / 8, 0};
constexpr bool is_possible(Cost cost) {
  return cost.value < impossible.value / 2;
}

constexpr Fine fine(Money money) {
  return money * fine_per_money;
}
/// The exact value of `amount` at `rate` per 1000 units: 1e9 micro-units are 1000 units, so the
/// factors cancel.
constexpr Fine value_of(Amount amount, Money rate) {
  return amount * rate;
}
/// Rounded to Money, half up.
constexpr Money to_money(Fine value) {
  const Fine shifted = value + fine_per_money / 2;
  return shifted >= 0 ? shifted / fine_per_money
                      : -((-shifted + fine_per_money - 1) / fine_per_money);
}

} // namespace manciple::purchase
