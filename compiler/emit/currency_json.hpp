#pragma once

#include "emit/compiled.hpp"

#include <nlohmann/json.hpp>

namespace manciple::emit {

/// How the house writes money, for other programs and the page's script.
inline nlohmann::ordered_json currency_json(const Compiled& compiled) {
  const kitchen::Currency& currency = compiled.kitchen.household.currency;
  return {{"code", currency.code},
          {"sign", currency.sign},
          {"after", currency.after},
          {"spaced", currency.spaced},
          {"point", std::string(1, currency.point)},
          {"digits", currency.digits}};
}

} // namespace manciple::emit
