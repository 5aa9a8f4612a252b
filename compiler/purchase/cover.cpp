#include "purchase/cover.hpp"

namespace manciple::purchase {

Least least_of_all(const Model& model, const std::vector<bool>& made, const Shelf& shelf,
                   const std::vector<const Shelved*>& shelved, const Prices& prices) {
  Least least{{}, empty_bundle(model)};
  const Tariff rates = tariff(model, prices, made);
  const Drop dropped = drop(model, shelf.prices(), prices);
  Workspace workspace;
  Network::Way way;
  for (const Shelved* const one : shelved) {
    const Prepared& good = one->network.good();
    const Cost shortest = one->network.shortest(rates, way);
    if (one->beyond(dropped) >= shortest.value) {
      least.cost += shortest;
      one->network.add(way.path, least.bundle);
      least.bundle.buys.push_back(one->network.buys(way.path));
      continue;
    }
    const RoomPrices room = room_prices(model, prices, *good.good);
    Terms terms;
    terms.room = &room;
    for (const Visit& visit : good.visits) {
      terms.charge.push_back(made[visit.stop] ? Cost{} : impossible);
      terms.per_money.push_back(per_money(model, prices, visit.stop));
    }
    Outcome outcome = cheapest(good, terms, workspace);
    least.cost += outcome.cost;
    add_good(good, outcome.buys, least.bundle);
    least.bundle.buys.push_back(std::move(outcome.buys));
  }
  return least;
}

Cover::Cover(const Model& model, const std::vector<bool>& made, const Shelf& shelf,
             const std::vector<const Shelved*>& shelved, const Prices& prices, Fine slack,
             std::size_t most, Limits& limits)
    : goods_(shelved.size()) {
  const Tariff rates = tariff(model, prices, made);
  const Drop dropped = drop(model, shelf.prices(), prices);
  Network::Way way;
  for (const Shelved* const one : shelved) {
    const Network* network = &one->network;
    Cost shortest = network->shortest(rates, way);
    if (one->beyond(dropped) - shortest.value < slack) {
      const Prepared& good = network->good();
      std::vector<bool> open;
      for (const Visit& visit : good.visits)
        open.push_back(made[visit.stop]);
      own_.emplace_back(model, good, open, prices, slack, most, limits);
      network = &own_.back();
      if (!network->finished)
        return;
      shortest = network->shortest(rates, way);
    }
    least_ += shortest;
    networks_.push_back(network);
  }
}

} // namespace manciple::purchase
