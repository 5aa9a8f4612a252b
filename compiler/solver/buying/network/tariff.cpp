#include "buying/network/tariff.hpp"

#include <algorithm>

namespace manciple::buying {

Tariff::Tariff(const Model& model_, const Multipliers& at, const OpenStops& open)
    : model(&model_), room(at.room) {
  for (const StopId stop : ids(model_.stops)) {
    discount.push_back(buying::discount(model_, at, stop));
    closed.push_back(open[stop] ? 0 : 1);
  }
  discount.push_back(0);
  closed.push_back(0);
  for (const std::vector<Fine>& place : room) {
    room_costs =
        room_costs || std::any_of(place.begin(), place.end(), [](Fine night) { return night > 0; });
  }
}

RoomRates Tariff::rates(const Item& item) const {
  if (!room_costs) {
    return {};
  }
  Multipliers at;
  at.room = room;
  return room_rates(*model, at, item);
}

} // namespace manciple::buying
