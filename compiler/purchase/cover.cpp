#include "purchase/cover.hpp"

namespace manciple::purchase {

Cover::Cover(const Model& model, const std::vector<bool>& made, const Shelf& shelf,
             const std::vector<const Shelved*>& shelved, const Prices& prices, Fine slack,
             std::size_t most, Limits& limits)
    : goods_(shelved.size()), bundle_(empty_bundle(model)) {
  const Tariff rates = tariff(model, prices, made);
  const Drop dropped = drop(model, shelf.prices(), prices);
  Path path;
  for (const Shelved* const one : shelved) {
    const Network* network = &one->network;
    Cost shortest = network->shortest(rates, path);
    if (one->beyond(dropped) - shortest.value < slack) {
      const Prepared& good = network->good();
      std::vector<bool> open;
      for (const Visit& visit : good.visits)
        open.push_back(made[visit.stop]);
      own_.emplace_back(model, good, open, prices, slack, most, limits);
      network = &own_.back();
      if (!network->finished)
        return;
      shortest = network->shortest(rates, path);
    }
    least_ += shortest;
    network->add(path, bundle_);
    bundle_.buys.push_back(network->buys(path));
    networks_.push_back(network);
  }
}

} // namespace manciple::purchase
