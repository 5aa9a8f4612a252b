#pragma once

#include "measure/rational.hpp"

#include <algorithm>
#include <vector>

namespace manciple::review {

/// The median of unit prices that were no sale, or else of all; the lower one of two in the middle.
template <typename Price>
measure::Rational usual(const std::vector<Price>& prices) {
  std::vector<measure::Rational> units;
  for (const bool sales : {false, true}) {
    for (const Price& one : prices) {
      if (!one.sale || sales) {
        units.push_back(one.unit);
      }
    }
    if (!units.empty()) {
      break;
    }
  }
  std::sort(units.begin(), units.end());
  return units[(units.size() - 1) / 2];
}

} // namespace manciple::review
