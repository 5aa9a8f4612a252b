#include "measure/quantity.hpp"

#include <stdexcept>

namespace manciple::measure {

Dimension dimension(const Quantity& quantity) {
  return facts(quantity.unit).dimension;
}

Rational in_base(const Quantity& quantity) {
  return quantity.amount * facts(quantity.unit).factor;
}

Quantity convert(const Quantity& quantity, Unit to) {
  if (dimension(quantity) != facts(to).dimension) {
    throw std::invalid_argument("a quantity has no amount in a unit of another dimension");
  }
  return {in_base(quantity) / facts(to).factor, to};
}

} // namespace manciple::measure
