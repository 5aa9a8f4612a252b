#pragma once

#include "kitchen/kitchen.hpp"
#include "kitchen/known_appliances.hpp"

#include <string>

namespace manciple::prep {

/// In a plan: a session in which two cooks have time.
inline constexpr const char* sunday_afternoon =
    "prep: [{every: Sunday, from: \"13:00\", until: \"19:00\", cooks: 2}]\n";

/// A step of a method: minutes with hands, then alone.
inline kitchen::MethodStep step_of(std::string what, int hands_on = 10, int then = 0,
                                   std::string appliance = {}) {
  kitchen::MethodStep out;
  out.what = std::move(what);
  out.hands_on = hands_on;
  out.then = then;
  out.is_hot = kitchen::known_appliance(appliance).heats;
  out.appliance = std::move(appliance);
  return out;
}

} // namespace manciple::prep
