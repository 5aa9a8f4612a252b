#pragma once

#include "measure/rational.hpp"
#include "measure/units.hpp"

#include <string>

namespace manciple::measure {

/// An amount in a unit, exact.
struct Quantity {
  Rational amount;
  Unit unit = Unit::each;

  friend bool operator==(const Quantity&, const Quantity&) = default;
};

Dimension dimension(const Quantity& quantity);
/// In grams, millilitres or pieces.
Rational in_base(const Quantity& quantity);
/// The same amount in another unit of the same dimension.
Quantity convert(const Quantity& quantity, Unit to);

} // namespace manciple::measure
