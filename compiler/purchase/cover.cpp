#include "purchase/cover.hpp"

#include <algorithm>
#include <utility>

namespace manciple::purchase {

Least least_of_all(const Model& model, const std::vector<bool>& made, const Shelf& shelf,
                   const std::vector<const Shelved*>& shelved, const Prices& prices, Cost enough) {
  Least least{{}, empty_bundle(model)};
  const Tariff rates = tariff(model, prices, made);
  const Drop dropped = drop(model, shelf.prices(), prices);
  Network::Way way;
  // How much less than what the networks have there may be, and of which good.
  std::vector<std::pair<Fine, std::size_t>> unsure;
  for (std::size_t i = 0; i < shelved.size(); ++i) {
    const Network& network = shelved[i]->network;
    const Cost shortest = network.shortest(rates, way);
    const Fine beyond = shelved[i]->beyond(dropped);
    if (beyond < shortest.value) {
      unsure.emplace_back(beyond - shortest.value, i);
      least.cost.value += beyond;
      continue;
    }
    least.cost += shortest;
    network.add(way.path, least.bundle);
  }
  std::sort(unsure.begin(), unsure.end());
  Workspace workspace;
  for (const auto& [less, i] : unsure) {
    if (least.cost >= enough)
      break;
    const Prepared& good = shelved[i]->network.good();
    const Outcome outcome = cheapest(model, good, prices, made, workspace);
    least.cost += outcome.cost;
    least.cost.value -= shelved[i]->beyond(dropped);
    add_good(good, outcome.buys, least.bundle);
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
      own_.emplace_back(model, good, open, prices, slack, most, limits, shortest);
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
