#pragma once

#include <compare>
#include <cstdint>
#include <limits>

namespace manciple::buying {

/// Money in the caller's smallest unit, for example 1/10000 of a dollar.
using Money = std::int64_t;
/// Money in millionths of that, in which the values of amounts are exact.
using Fine = std::int64_t;
constexpr Fine fine_per_money = 1'000'000;
/// Thousandths of an item's unit: of a gram, a millilitre or a piece.
using Amount = std::int64_t;
constexpr Amount amounts_per_unit = 1000;

/// For products and sums that may go beyond these.
__extension__ using Wide = __int128;

constexpr Fine fine(Money money) {
  return money * fine_per_money;
}
/// A rate is Money for so many units.
constexpr int units_of_a_rate = 1000;
/// The exact value of `amount` at `rate`: a million Amounts are 1000 units, so the factors cancel.
constexpr Fine value_of(Amount amount, Money rate) {
  return amount * rate;
}
/// Rounded to Money, half up.
constexpr Money to_money(Fine value) {
  const Fine shifted = value + fine_per_money / 2;
  return shifted >= 0 ? shifted / fine_per_money
                      : -((-shifted + fine_per_money - 1) / fine_per_money);
}

/// The most that all prices, values and penalties of a model may add up to (`validate` sees to
/// it): 10^12 Money, which is 100 million dollars at 1/10000 of a dollar. In Fine that is 10^18; no
/// cost, bound or difference of two is further from 0 than twice that, and `impossible` at 4 *
/// 10^18 can be told from all of them and still have a cost added to it: 9.2 * 10^18 is the end of
/// the range.
constexpr Money most_money = 1'000'000'000'000;

/// What is minimised: money first, then (only between equal money) stops, packs and convenience.
/// Ordered and added like a number, so every bound and every dominance holds for ties as well.
struct Cost {
  Fine value = 0;
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

/// Ties: a stop counts more than a million packs, a pack more than 16 million days too early or too
/// late.
constexpr std::int64_t tie_of_pack = std::int64_t{1} << 24U;
constexpr std::int64_t tie_of_stop = std::int64_t{1} << 44U;

/// Of what cannot be done.
constexpr Cost impossible{4'000'000'000'000'000'000, 0};
constexpr bool is_possible(Cost cost) {
  return cost.value < impossible.value / 2;
}

} // namespace manciple::buying
