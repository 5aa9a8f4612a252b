#include "buying/coupled/fitting.hpp"

#include <algorithm>

namespace manciple::buying {
namespace {

/// From next to nothing to the dearest, doubling.
constexpr int doublings = 28;

Plan cheapest_plan(const Model& model, const Prepared& item, const Multipliers& at,
                   const OpenStops& open, Workspace& workspace, Effort& effort) {
  const RoomRates room = room_rates(model, at, *item.item);
  return cheapest(item, terms_at(model, item, at, open, room), workspace, effort.work()).plan;
}

/// Makes room dearer on the nights on which it is over-full. False if nothing could be raised.
bool raise(const Model& model, const Coupling& coupling, const Bundle& bundle, Multipliers& at) {
  const Fine first = std::max<Fine>(1, coupling.dearest_room >> doublings);
  bool raised = false;
  for (std::size_t place = 0; place < place_count; ++place) {
    for (std::size_t night = 0; night < bundle.room[place].size(); ++night) {
      Fine& price = at.room[place][night];
      const bool full =
          bundle.room[place][night] > model.room[place][night] * amounts_per_unit;
      if (full && price < coupling.dearest_room) {
        price = std::min(coupling.dearest_room, std::max(first, 2 * price));
        raised = true;
      }
    }
  }
  return raised;
}

} // namespace

std::optional<Table<ItemId, Plan>> fitting_plans(const Model& model, const Coupling& coupling,
                                                 const Table<ItemId, Prepared>& items,
                                                 const OpenStops& open, Effort& effort) {
  Workspace workspace;
  Multipliers at = no_multipliers(model);
  Table<ItemId, Plan> free;
  for (const Prepared& item : items) {
    free.push_back(cheapest_plan(model, item, at, open, workspace, effort));
  }
  Bundle bundle = bundle_of(model, items, free);
  while (!fits(model, bundle)) {
    if (!raise(model, coupling, bundle, at)) {
      return std::nullopt;
    }
    Table<ItemId, Plan> plans;
    for (const Prepared& item : items) {
      plans.push_back(item.takes_room ? cheapest_plan(model, item, at, open, workspace, effort)
                                      : free[ItemId(plans.size())]);
    }
    bundle = bundle_of(model, items, std::move(plans));
  }
  for (const ItemId id : ids(items)) {
    if (bundle.plans[id] == free[id]) {
      continue;
    }
    const Played now = play(items[id], bundle.plans[id]);
    const Played other = play(items[id], free[id]);
    Bundle tried = bundle;
    add_item(items[id], now, tried, -1);
    add_item(items[id], other, tried);
    if (fits(model, tried) && tried.cost < bundle.cost) {
      bundle = std::move(tried);
      bundle.plans[id] = free[id];
    }
  }
  return std::move(bundle.plans);
}

} // namespace manciple::buying
