#pragma once

#include <algorithm>

#include "purchase/good.hpp"
#include "purchase/subproblem.hpp"

namespace manciple::purchase {

__extension__ using Wide = __int128;

/// amount * (price per unit), rounded down: a bound made of such costs stays a bound.
inline Fine priced(Amount amount, Fine per_unit) {
  // Mostly the product fits, and dividing it is far quicker then.
  Fine product = 0;
  if (!__builtin_mul_overflow(amount, per_unit, &product))
    return product / 1'000'000;
  return static_cast<Fine>(Wide{amount} * per_unit / 1'000'000);
}

/// Price of keeping one unit from `bought` to `until`.
inline Fine keep_price(const RoomPrices& room, bool frozen, Day bought, Day until) {
  const std::vector<Fine>& sums = frozen ? room.frozen : room.cool;
  const auto at = [&](Day day) {
    return sums[static_cast<std::size_t>(
        std::clamp<Day>(day, 0, static_cast<Day>(sums.size()) - 1))];
  };
  return until > bought ? at(until) - at(bought) : 0;
}

/// Per unit: kept for a use, to the end, and until it is thrown away.
inline Fine use_price(const RoomPrices& room, const Use& use, Day bought) {
  return keep_price(room, bought < use.cool_from, bought, use.day);
}
inline Fine kept_price(const RoomPrices& room, const Prepared& good, Day bought) {
  return keep_price(room, bought < good.kept_cool_from, bought, good.last_day + 1);
}
inline Fine waste_price(const RoomPrices& room, const Prepared& good, Day bought) {
  return keep_price(room, false, bought,
                    std::min(bought + good.good->keeps_cool, good.last_day) + 1);
}

} // namespace manciple::purchase
