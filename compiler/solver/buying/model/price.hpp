#pragma once

#include "buying/model/money.hpp"

#include <limits>

namespace manciple::buying {

/// What n packs cost: so much each, and `deal` for every `deal_packs` of them. A deal is no dearer
/// than its packs one by one, so that two purchases never cost less than both in one. It may be
/// cheaper than fewer packs.
struct PackPrice {
  Money each = 0;
  int deal_packs = 0; ///< 0: no deal
  Money deal = 0;

  [[nodiscard]] constexpr Money of(int n) const {
    return deal_packs == 0 ? n * each : n / deal_packs * deal + n % deal_packs * each;
  }
  [[nodiscard]] constexpr bool has_deal() const { return deal_packs != 0; }
  friend constexpr bool operator==(const PackPrice&, const PackPrice&) = default;
};

/// What n packs are sure to count for at the till: towards a reduction, and for a credit to take
/// off. Where the till rounds (a weighed price, a tax), it may be a trifle less than what it will
/// show, the same for every n > 0.
struct TillPrice {
  PackPrice packs;
  Money less = 0;

  [[nodiscard]] constexpr Money of(int n) const {
    const Money sum = packs.of(n);
    return sum > less ? sum - less : 0;
  }
};

} // namespace manciple::buying
