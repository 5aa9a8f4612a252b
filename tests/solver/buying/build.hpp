#pragma once

#include "buying/model/solution.hpp"

namespace manciple::buying {

/// One unit (gram, piece) as an Amount, and one dollar in Money.
constexpr Amount unit = amounts_per_unit;
constexpr Money dollar = 10'000;

/// Noon of a day.
constexpr Minute noon(Day day) {
  return day * minutes_per_day + 12 * 60;
}

/// A model of one shop that is visited, at no cost, on the given days at noon.
inline Model one_shop(Day last_day, const std::vector<Day>& days) {
  Model model;
  model.last_day = last_day;
  model.shops.resize(1);
  for (const Day day : days) {
    model.stops.push_back({noon(day), ShopId(0), 0, false});
  }
  return model;
}

/// In the evening of a day.
inline Demand need(Day day, Amount units) {
  Demand demand;
  demand.day = day;
  demand.at = noon(day) + 6 * 60;
  demand.amount = units * unit;
  return demand;
}

inline Demand fresh(Day day, Amount units) {
  Demand demand = need(day, units);
  demand.takes_frozen = false;
  return demand;
}

inline Demand giving(Day day, Amount units, Amount give) {
  Demand demand = need(day, units);
  demand.give = give * unit;
  return demand;
}

inline Offer pack(std::size_t shop, Amount units, Money cost, int keeps = 365) {
  Offer offer;
  offer.shop = ShopId(shop);
  offer.pack = units * unit;
  offer.cost.each = offer.till.packs.each = cost;
  offer.life.cool = keeps;
  return offer;
}

/// Missing food costs 100 dollars a unit: more than anything else here.
inline Item item(std::vector<Demand> demands, std::vector<Offer> offers) {
  Item result;
  result.demands.assign(demands.begin(), demands.end());
  result.offers.assign(offers.begin(), offers.end());
  result.missing = 100'000 * dollar;
  result.kept_day = 100;
  return result;
}

inline Lot lot(Amount units, int keeps, Place place = Place::fridge) {
  Lot result;
  result.amount = units * unit;
  result.place = place;
  result.life.cool = keeps;
  return result;
}

} // namespace manciple::buying
