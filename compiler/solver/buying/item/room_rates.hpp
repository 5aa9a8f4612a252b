#pragma once

#include "buying/model/model.hpp"

#include <algorithm>
#include <array>
#include <vector>

namespace manciple::buying {

/// amount * (price per unit), rounded down: a bound made of such costs stays a bound.
inline Fine priced(Amount amount, Fine per_unit) {
  // Mostly the product fits, and dividing it is far quicker then.
  Fine product = 0;
  if (!__builtin_mul_overflow(amount, per_unit, &product)) {
    return product / amounts_per_unit;
  }
  return static_cast<Fine>(Wide{amount} * per_unit / amounts_per_unit);
}

/// A part of an item in a place, from one day until another.
struct Stay {
  Amount amount = 0;
  Place place = Place::pantry;
  /// Takes the room of what is frozen (else of what is cool).
  bool frozen = false;
  Day from = 0;
  Day until = 0;
};

/// Prices of room for one item, summed over nights: keeping a unit from day b to day d costs
/// sums[d] - sums[b]. Sizes: last_day + 2. Empty where room is free.
struct RoomRates {
  std::array<std::vector<Fine>, place_count> cool;
  std::vector<Fine> frozen;

  [[nodiscard]] bool free() const {
    return frozen.empty() &&
           std::all_of(cool.begin(), cool.end(), [](const auto& place) { return place.empty(); });
  }
  [[nodiscard]] Fine of(const Stay& stay) const {
    const std::vector<Fine>& sums = stay.frozen ? frozen : cool[index(stay.place)];
    if (sums.empty() || stay.until <= stay.from) {
      return 0;
    }
    const auto at = [&](Day day) {
      return sums[static_cast<std::size_t>(
          std::clamp<Day>(day, 0, static_cast<Day>(sums.size()) - 1))];
    };
    return priced(stay.amount, at(stay.until) - at(stay.from));
  }

  friend bool operator==(const RoomRates&, const RoomRates&) = default;
};

} // namespace manciple::buying
