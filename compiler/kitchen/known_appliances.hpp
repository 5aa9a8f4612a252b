#pragma once

#include "measure/units.hpp"

#include <cstdint>
#include <span>
#include <string_view>

namespace manciple::kitchen {

/// Whether what is done on an appliance comes to the boil.
enum class Boils : std::uint8_t {
  if_said, ///< only where the words of a step say so
  perhaps, ///< it may, even if no word says so
  always,
};

/// So much, as a maker gives the size of a machine.
struct Size {
  int number = 0;
  measure::Unit unit = measure::Unit::us_quart;
};

/// What is known about an appliance by its name. Common practice, no source.
struct KnownAppliance {
  std::string_view name;
  bool heats = true;       ///< what comes from it is hot
  bool is_oven = false;    ///< food is baked and roasted in it
  bool takes_pots = false; ///< what simmers on it is in a pot
  bool is_slow = false;    ///< food is warm in it for hours before it is hot
  Boils boils = Boils::if_said;
  Size holds = {}; ///< 0: no limit
  /// How many things it takes at once in a house that says nothing of itself, and that in words; 0:
  /// such a house has none.
  int usual = 0;
  std::string_view usual_words = {};
};

std::span<const KnownAppliance> known_appliances();

/// By its name in lower case. An appliance of any other name heats, and nothing else is known about
/// it; where there is none (an empty name), nothing heats.
KnownAppliance known_appliance(std::string_view name);

} // namespace manciple::kitchen
