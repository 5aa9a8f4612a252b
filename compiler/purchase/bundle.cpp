#include "purchase/bundle.hpp"

#include "purchase/assemble.hpp"
#include "purchase/stops.hpp"
#include "purchase/use.hpp"

namespace manciple::purchase {

Bundle empty_bundle(const Model& model) {
  Bundle bundle;
  bundle.spent.assign(model.stops.size(), 0);
  for (std::size_t place = 0; place < place_count; ++place)
    bundle.room[place].assign(model.room[place].size(), 0);
  return bundle;
}

void add_good(const Prepared& good, const GoodSolution& solution, Bundle& bundle, int times) {
  bundle.cost.value +=
      times * (fine(solution.spent) + solution.waste_value - solution.salvage_value);
  for (const Purchase& purchase : solution.purchases) {
    bundle.cost.ties += times * purchase.packs;
    bundle.spent[purchase.stop] += times * purchase.cost;
  }
  const auto add = [&](Place place, const std::vector<std::int64_t>& nights) {
    std::vector<std::int64_t>& sums = bundle.room[static_cast<std::size_t>(place)];
    for (std::size_t night = 0; night < sums.size(); ++night)
      sums[night] += times * nights[night];
  };
  const RoomTaken taken = room_taken(good, solution);
  add(good.good->cool_place, taken.cool);
  add(Place::freezer, taken.frozen);
}

void add_good(const Prepared& good, const std::vector<Buy>& buys, Bundle& bundle) {
  add_good(good, use_up(good, buys), bundle);
}

Bundle bundle_of(const Model& model, const std::vector<Prepared>& goods,
                 std::vector<std::vector<Buy>> buys) {
  Bundle bundle = empty_bundle(model);
  for (GoodId good = 0; good < goods.size(); ++good)
    add_good(goods[good], buys[good], bundle);
  bundle.buys = std::move(buys);
  return bundle;
}

RoomSums all_room_taken(const Model& model, const std::vector<Prepared>& goods,
                        const Solution& solution) {
  Bundle all = empty_bundle(model);
  for (GoodId good = 0; good < goods.size(); ++good)
    add_good(goods[good], solution.goods[good], all);
  return all.room;
}

Cost total_cost(const Model& model, const std::vector<bool>& made, const Bundle& bundle) {
  Cost cost = bundle.cost;
  for (StopId stop = 0; stop < made.size(); ++stop)
    if (made[stop])
      cost += stop_cost(model.stops[stop]);
  cost.value -= fine(till_reductions(model, bundle.spent).sum);
  return cost;
}

bool fits(const Model& model, const Bundle& bundle) {
  for (std::size_t place = 0; place < place_count; ++place)
    for (std::size_t night = 0; night < bundle.room[place].size(); ++night)
      if (bundle.room[place][night] > model.room[place][night] * 1'000'000)
        return false;
  return true;
}

} // namespace manciple::purchase
