#pragma once

#include "purchase/model.hpp"

namespace manciple::purchase {

/// One unit (gram, piece) in micro-units, and one dollar in Money.
constexpr Amount unit = 1'000'000;
constexpr Money dollar = 10'000;

/// A model of one shop that is visited, at no cost, on the given days.
inline Model one_shop(Day last_day, const std::vector<Day>& days) {
  Model model;
  model.last_day = last_day;
  model.shops.resize(1);
  for (const Day day : days)
    model.stops.push_back({day, 0, 0, false});
  return model;
}

inline Demand need(Day day, Amount units) {
  Demand demand;
  demand.day = day;
  demand.amount = units * unit;
  return demand;
}

inline Demand fresh(Day day, Amount units) {
  Demand demand = need(day, units);
  demand.takes_frozen = false;
  return demand;
}

inline Offer pack(ShopId shop, Amount units, Money cost) {
  Offer offer;
  offer.shop = shop;
  offer.pack = units * unit;
  offer.cost.unit = cost;
  return offer;
}

inline Good good(int keeps_cool, std::vector<Demand> demands, std::vector<Offer> offers) {
  Good result;
  result.keeps_cool = keeps_cool;
  result.demands = std::move(demands);
  result.offers = std::move(offers);
  return result;
}

} // namespace manciple::purchase
