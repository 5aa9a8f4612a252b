#include "buying/coupled/fitting.hpp"

#include <algorithm>

namespace manciple::buying {
namespace {

/// From next to nothing to the dearest, doubling.
constexpr int doublings = 28;

ItemPlan cheapest_plan(const Model& model, const Prepared& item, const Multipliers& at,
                       const OpenStops& open, Workspace& workspace, WorkBudget& budget) {
  const RoomRates room = room_rates(model, at, *item.item);
  return cheapest(item, terms_at(model, item, at, open, room), workspace, budget.work()).plan;
}

/// Makes room dearer on the nights on which it is over-full. False if nothing could be raised.
bool raise(const Model& model, const Coupling& coupling, const Bundle& bundle, Multipliers& at) {
  const Fine first = std::max<Fine>(1, coupling.dearest_room >> doublings);
  bool raised = false;
  for (std::size_t place = 0; place < place_count; ++place) {
    for (std::size_t night = 0; night < bundle.room[place].size(); ++night) {
      Fine& price = at.room[place][night];
      const bool full = bundle.room[place][night] > model.room[place][night] * amounts_per_unit;
      if (full && price < coupling.dearest_room) {
        price = std::min(coupling.dearest_room, std::max(first, 2 * price));
        raised = true;
      }
    }
  }
  return raised;
}

/// The plans with another one for an item, if that fits and is cheaper.
void try_plan(const Model& model, const Prepared& item, ItemId id, const ItemPlan& plan,
              Bundle& bundle) {
  Bundle tried = bundle;
  add_item(item, play(item, bundle.plans[id]), tried, -1);
  add_item(item, play(item, plan), tried);
  if (fits(model, tried) && tried.cost < bundle.cost) {
    bundle = std::move(tried);
    bundle.plans[id] = plan;
  }
}

} // namespace

Table<ItemId, ItemPlan> fitting_plans(const Model& model, const Coupling& coupling,
                                      const Table<ItemId, Prepared>& items, const OpenStops& open,
                                      WorkBudget& budget) {
  Workspace workspace;
  Multipliers at = no_multipliers(model);
  const auto plans_at = [&](const Table<ItemId, ItemPlan>& otherwise, const OpenStops& stops) {
    Table<ItemId, ItemPlan> plans;
    for (const ItemId id : ids(items)) {
      plans.push_back(items[id].takes_room || otherwise.empty()
                          ? cheapest_plan(model, items[id], at, stops, workspace, budget)
                          : otherwise[id]);
    }
    return plans;
  };
  const Table<ItemId, ItemPlan> free = plans_at({}, open);
  Bundle bundle = bundle_of(model, items, free);
  Table<ItemId, ItemPlan> priced = free;
  while (!fits(model, bundle) && !budget.spent() && raise(model, coupling, bundle, at)) {
    priced = plans_at(free, open);
    bundle = bundle_of(model, items, priced);
  }
  if (!fits(model, bundle)) {
    // With nothing bought, there is room for what is there.
    at = no_multipliers(model);
    bundle = bundle_of(model, items, plans_at({}, OpenStops(model.stops.size(), false)));
    for (const ItemId id : ids(items)) {
      try_plan(model, items[id], id, priced[id], bundle);
    }
  }
  for (const ItemId id : ids(items)) {
    if (bundle.plans[id] != free[id]) {
      try_plan(model, items[id], id, free[id], bundle);
    }
  }
  return std::move(bundle.plans);
}

} // namespace manciple::buying
