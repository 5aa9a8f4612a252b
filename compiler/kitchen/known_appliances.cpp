#include "kitchen/known_appliances.hpp"

#include <algorithm>
#include <array>

namespace manciple::kitchen {
namespace {

using measure::Unit;

constexpr std::array all_appliances{
    KnownAppliance{.name = "burner",
                   .takes_pots = true,
                   .boils = Boils::perhaps,
                   .usual = 4,
                   .usual_words = "four burners"},
    KnownAppliance{.name = "hob", .takes_pots = true, .boils = Boils::perhaps},
    // Two shelves.
    KnownAppliance{.name = "oven", .is_oven = true, .usual = 2, .usual_words = "an oven"},
    KnownAppliance{.name = "slow cooker", .is_slow = true, .holds = {6, Unit::us_quart}},
    KnownAppliance{.name = "rice cooker", .boils = Boils::perhaps},
    KnownAppliance{.name = "pressure cooker", .boils = Boils::always},
    KnownAppliance{.name = "sink", .heats = false, .usual = 1, .usual_words = "a sink"},
    KnownAppliance{.name = "fridge", .heats = false},
    KnownAppliance{.name = "freezer", .heats = false},
    KnownAppliance{.name = "food processor", .heats = false, .holds = {11, Unit::us_cup}},
    KnownAppliance{.name = "blender", .heats = false, .holds = {6, Unit::us_cup}},
    KnownAppliance{.name = "mixer", .heats = false, .holds = {5, Unit::us_quart}},
    KnownAppliance{.name = "grinder", .heats = false},
    KnownAppliance{.name = "juicer", .heats = false},
};

} // namespace

std::span<const KnownAppliance> known_appliances() {
  return all_appliances;
}

KnownAppliance known_appliance(std::string_view name) {
  const auto* const found =
      std::find_if(all_appliances.begin(), all_appliances.end(),
                   [&](const KnownAppliance& one) { return one.name == name; });
  return found == all_appliances.end() ? KnownAppliance{.name = name, .heats = !name.empty()}
                                       : *found;
}

} // namespace manciple::kitchen
