#pragma once

#include "buying/item/prepared.hpp"
#include "buying/item/room_rates.hpp"

#include <vector>

namespace manciple::buying {

/// What things cost for one item while something is tried out.
struct Terms {
  /// By visit: what using it costs once; `impossible` if it is closed.
  std::vector<Cost> charge;
  /// By visit: what one Money at the till takes off; empty: nothing anywhere.
  std::vector<Fine> discount;
  const RoomRates* room = nullptr;

  /// None where room costs nothing.
  [[nodiscard]] const RoomRates* priced_room() const {
    return room != nullptr && !room->free() ? room : nullptr;
  }
  [[nodiscard]] bool is_open(std::size_t visit) const { return is_possible(charge[visit]); }
  [[nodiscard]] Fine discount_at(std::size_t visit) const {
    return discount.empty() ? 0 : discount[visit];
  }
  /// What n packs cost there, ties included.
  [[nodiscard]] Cost of(const Prepared& item, std::size_t visit, OfferId id, int n) const {
    const Offer& offer = item.item->offers[id];
    return {fine(offer.cost.of(n)) - discount_at(visit) * offer.till.of(n),
            ties_of(item, visit, n)};
  }
  /// Packs, and how little the day suits the item.
  static std::int64_t ties_of(const Prepared& item, std::size_t visit, int n) {
    const Day day = item.visits[visit].day;
    return n * tie_of_pack + (item.item->buy_late ? item.last_day - day : day);
  }
};

} // namespace manciple::buying
