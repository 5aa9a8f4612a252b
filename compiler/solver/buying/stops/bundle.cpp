#include "buying/stops/bundle.hpp"

#include <algorithm>

namespace manciple::buying {

void add_stay(const Item& item, const Stay& stay, RoomSums& sums, std::int64_t times) {
  std::vector<std::int64_t>& nights = sums[index(stay.place)];
  const Volume unit = stay.frozen ? item.room_frozen : item.room_cool;
  const std::int64_t taken = times * stay.amount * unit;
  const Day end = std::min(stay.until, static_cast<Day>(nights.size()));
  for (Day night = std::max(0, stay.from); night < end; ++night) {
    nights[static_cast<std::size_t>(night)] += taken;
  }
}

Bundle empty_bundle(const Model& model) {
  Bundle bundle;
  bundle.spent.assign(model.stops.size(), 0);
  for (std::size_t place = 0; place < place_count; ++place) {
    bundle.room[place].assign(model.room[place].size(), 0);
  }
  return bundle;
}

Cost cost_of(const Prepared& item, const ItemSolution& solution) {
  Cost cost{solution.total(), 0};
  for (const Purchase& purchase : solution.purchases) {
    cost.ties += Terms::ties_of(item, *item.visit_at(purchase.stop), purchase.packs);
  }
  return cost;
}

void add_item(const Prepared& item, const Played& played, Bundle& bundle, int times) {
  const Cost cost = cost_of(item, played.solution);
  bundle.cost += {times * cost.value, times * cost.ties};
  for (const Purchase& purchase : played.solution.purchases) {
    bundle.spent[purchase.stop] += times * purchase.till;
  }
  for (const Stay& stay : played.stays) {
    add_stay(*item.item, stay, bundle.room, times);
  }
}

Bundle bundle_of(const Model& model, const Table<ItemId, Prepared>& items,
                 Table<ItemId, ItemPlan> plans) {
  Bundle bundle = empty_bundle(model);
  for (const ItemId item : ids(items)) {
    add_item(items[item], play(items[item], plans[item]), bundle);
  }
  bundle.plans = std::move(plans);
  return bundle;
}

TillReductions till_reductions(const Model& model, const Table<StopId, Money>& spent) {
  TillReductions result;
  result.off.assign(model.stops.size(), 0);
  result.credit.assign(model.shops.size(), 0);
  Table<ShopId, Money> to_pay(model.shops.size(), 0);
  for (const StopId stop : ids(model.stops)) {
    const Shop& shop = model.shops[model.stops[stop].shop];
    if (shop.off > 0 && spent[stop] >= shop.over) {
      result.off[stop] = shop.off;
    }
    result.worth += fine(result.off[stop]);
    to_pay[model.stops[stop].shop] += spent[stop] - result.off[stop];
  }
  for (const ShopId shop : ids(model.shops)) {
    result.credit[shop] = std::min(model.shops[shop].credit, to_pay[shop]);
    result.worth += result.credit[shop] * model.shops[shop].credit_worth;
  }
  return result;
}

Cost stop_cost(const Stop& stop) {
  return {fine(stop.cost), tie_of_stop};
}

Cost total_cost(const Model& model, const OpenStops& open, const Bundle& bundle) {
  Cost cost = bundle.cost;
  for (const StopId stop : ids(model.stops)) {
    if (open[stop]) {
      cost += stop_cost(model.stops[stop]);
    }
  }
  cost.value -= till_reductions(model, bundle.spent).worth;
  return cost;
}

bool fits(const Model& model, const Bundle& bundle) {
  for (std::size_t place = 0; place < place_count; ++place) {
    for (std::size_t night = 0; night < bundle.room[place].size(); ++night) {
      if (bundle.room[place][night] > model.room[place][night] * amounts_per_unit) {
        return false;
      }
    }
  }
  return true;
}

Solution assemble(const Model& model, const Table<ItemId, Prepared>& items, const OpenStops& open,
                  const Table<ItemId, ItemPlan>& plans) {
  Solution solution;
  Bundle bundle = empty_bundle(model);
  for (const ItemId item : ids(items)) {
    Played played = play(items[item], plans[item]);
    add_item(items[item], played, bundle);
    solution.items.push_back(std::move(played.solution));
  }
  TillReductions reductions = till_reductions(model, bundle.spent);
  solution.room = std::move(bundle.room);
  solution.off = std::move(reductions.off);
  solution.credit = std::move(reductions.credit);
  for (const StopId stop : ids(model.stops)) {
    if (open[stop]) {
      solution.stops.push_back(stop);
      solution.stop_cost += model.stops[stop].cost;
    }
  }
  solution.total_fine = bundle.cost.value - reductions.worth + fine(solution.stop_cost);
  solution.total = to_money(solution.total_fine);
  return solution;
}

} // namespace manciple::buying
