#include "buying/network/price_change_cover.hpp"

#include <algorithm>
#include <utility>

namespace manciple::buying {

Least least_of_all(const Model& model, const OpenStops& open, const Pooled& pooled,
                   const Multipliers& at, Cost enough, WorkBudget& budget) {
  Least least{{}, empty_bundle(model)};
  const Tariff tariff(model, at, open);
  const Drop dropped = drop(model, pooled.pool.coupling(), pooled.pool.multipliers(), at);
  Network::Way way;
  least.bundle.plans.resize(pooled.networks.size());
  // How much less than what the networks have there may be, and of which item.
  std::vector<std::pair<Fine, std::size_t>> unsure;
  for (std::size_t i = 0; i < pooled.networks.size(); ++i) {
    const Network& network = pooled.networks[i]->network;
    const Cost shortest = network.shortest(tariff, way);
    const Fine beyond = pooled.networks[i]->beyond(dropped);
    if (beyond < shortest.value) {
      unsure.emplace_back(beyond - shortest.value, i);
      least.cost.value += beyond;
      continue;
    }
    least.cost += shortest;
    network.add(way.path, least.bundle);
    least.bundle.plans[ItemId(i)] = network.plan(way.path);
  }
  std::sort(unsure.begin(), unsure.end());
  Workspace workspace;
  for (const auto& [less, i] : unsure) {
    if (least.cost >= enough) {
      break;
    }
    const Prepared& item = pooled.networks[i]->network.item();
    const RoomRates room = room_rates(model, at, *item.item);
    const Outcome outcome =
        cheapest(item, terms_at(model, item, at, open, room), workspace, budget.work());
    least.cost += outcome.bound;
    least.cost.value -= pooled.networks[i]->beyond(dropped);
    add_item(item, play(item, outcome.plan), least.bundle);
    least.bundle.plans[ItemId(i)] = outcome.plan;
  }
  return least;
}

Cover::Cover(const Model& model, const OpenStops& open, const Pooled& pooled, const Multipliers& at,
             Fine slack, std::size_t most, WorkBudget& budget)
    : items_(pooled.networks.size()) {
  const Tariff tariff(model, at, open);
  const Drop dropped = drop(model, pooled.pool.coupling(), pooled.pool.multipliers(), at);
  Network::Way way;
  for (const PooledNetwork* const one : pooled.networks) {
    const Network* network = &one->network;
    Cost shortest = network->shortest(tariff, way);
    if (one->beyond(dropped) - shortest.value < slack) {
      const Prepared& item = network->item();
      std::vector<bool> visits;
      for (const Visit& visit : item.visits) {
        visits.push_back(open[visit.stop]);
      }
      own_.emplace_back(model, item, visits, at, slack, most, budget, shortest);
      network = &own_.back();
      if (!network->finished()) {
        return;
      }
      shortest = network->shortest(tariff, way);
    }
    least_ += shortest;
    networks_.push_back(network);
  }
}

} // namespace manciple::buying
