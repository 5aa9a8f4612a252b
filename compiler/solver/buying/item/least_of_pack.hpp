#pragma once

#include "buying/model/model.hpp"

#include <algorithm>

namespace manciple::buying {

/// Keeps sums of a bound below the exact value in spite of rounding.
constexpr double rounded_down = 1 - 1e-12;

/// The least that a pack of an offer costs, in Fine, as part of a deal or not, with so much taken
/// off what a Money at the till costs.
inline double least_of_pack(const Offer& offer, Fine discount) {
  const auto net = [&](Money cost, Money till) {
    return static_cast<double>(fine(cost)) -
           static_cast<double>(discount) * static_cast<double>(till);
  };
  double least = net(offer.cost.each, offer.till.packs.each);
  if (offer.cost.has_deal() && offer.limit >= offer.cost.deal_packs) {
    least = std::min(least, net(offer.cost.deal, offer.till.packs.deal) /
                                static_cast<double>(offer.cost.deal_packs));
  }
  return least * rounded_down;
}

} // namespace manciple::buying
