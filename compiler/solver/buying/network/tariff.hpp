#pragma once

#include "buying/stops/multipliers.hpp"

#include <vector>

namespace manciple::buying {

/// What things cost at multipliers and with stops made, in the form in which a network's paths are
/// quickest to work out.
struct Tariff {
  Tariff(const Model& model, const Multipliers& at, const OpenStops& open);

  const Model* model;
  /// By stop, and one for none: what one Money spent there counts less than it is.
  std::vector<Fine> discount;
  /// Likewise: 1 if nothing can be bought there.
  std::vector<char> closed;
  std::array<std::vector<Fine>, place_count> room;
  bool room_costs = false;

  [[nodiscard]] RoomRates rates(const Item& item) const;
};

} // namespace manciple::buying
