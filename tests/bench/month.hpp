#pragma once

#include "purchase/model.hpp"

namespace manciple::purchase {

struct MonthSize {
  /// Multiplies foods, shops and stops of a month of 90 foods, 4 shops and 11 stops.
  int foods = 1;
  int shops = 1;
  std::uint64_t seed = 1;
  /// With limits of room, credit and spend-over-X reductions.
  bool coupled = false;
};

/// A made-up month on the scale of a household's: some foods keep for days, some for weeks, some in
/// the freezer; each is sold in about three shops, in packs of different sizes or by weight. The
/// figures are drawn at random in the ranges that a price book has (common practice, no source).
Model make_month(const MonthSize& size);

} // namespace manciple::purchase
