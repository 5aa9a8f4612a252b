#pragma once

#include "purchase/shopping.hpp"

#include <vector>

/// What a shop turns out not to have: where else the plan could still get it, and who waits for it.
namespace manciple::purchase {

/// Another way to buy what a line is for, at a stop that comes after it.
struct OtherOffer {
  std::size_t visit = 0;         ///< of Shopping::visits
  std::size_t offer = 0;         ///< of that visit's shop
  int packs = 0;                 ///< or steps of the scale
  std::optional<Cents> cost;     ///< added to that stop's receipt, before tax, where it is known
  Rational amount;               ///< as purchased, in the food's basis
  std::vector<std::size_t> late; ///< uses of the line that cannot wait so long
};

/// A line that the shop does not have.
struct OutOfStock {
  std::vector<std::size_t> uses; ///< that the line is for, the one that needs it first first
  /// One a stop, the best first: that for which no use, or as few as may be, comes too late; of
  /// those the cheapest; of those the earliest. Empty when nobody else has it in time.
  std::vector<OtherOffer> offers;
};

/// For every line of the list, as if it alone could not be had.
///
/// Looked at are the stops that the plan makes after the line's own, later that day or on a later
/// trip, with the offers that hold there and then and that the household's rules allow. Bought is
/// what the line's uses need that are still in time; what was bought later than planned is no older
/// when it is used, so that it keeps whenever the line would have.
///
/// Not looked at: another pack at the same stop, a stop that the plan does not make, a mix of
/// packs, another food in its place, what other lines leave over, a clock that opening starts, the
/// room in the house, a store credit, and two lines that are missing at once.
std::vector<OutOfStock> out_of_stock(const kitchen::Kitchen& kitchen, const Shopping& shopping);

/// The dishes that uses end up in, through makings of makings, each once, the first one first.
std::vector<resolve::DishRef> dishes_of(const resolve::Resolved& resolved,
                                        const std::vector<std::size_t>& uses);

} // namespace manciple::purchase
