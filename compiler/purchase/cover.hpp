#pragma once

#include <deque>
#include <vector>

#include "purchase/shelf.hpp"

namespace manciple::purchase {

/// What the goods cost at the prices if they choose among all plans, not only the networks', and
/// what they then take. As soon as it is sure that they cost `enough`, only that.
struct Least {
  Cost cost;
  Bundle bundle;
};
Least least_of_all(const Model& model, const std::vector<bool>& made, const Shelf& shelf,
                   const std::vector<const Shelved*>& shelved, const Prices& prices, Cost enough);

/// Networks with all plans of up to a slack at other prices than those of a shelf: its own ones
/// where they are sure to have them, new ones for the other goods.
class Cover {
public:
  /// `shelved` is what `shelf` has for the stops made. Gives up at `most` edges.
  Cover(const Model& model, const std::vector<bool>& made, const Shelf& shelf,
        const std::vector<const Shelved*>& shelved, const Prices& prices, Fine slack,
        std::size_t most, Limits& limits);

  bool finished() const { return networks_.size() == goods_; }
  /// Of all goods, at the prices, whatever the slack.
  Cost least() const { return least_; }
  /// By good.
  const std::vector<const Network*>& networks() const { return networks_; }

private:
  std::size_t goods_;
  std::deque<Network> own_;
  std::vector<const Network*> networks_;
  Cost least_;
};

} // namespace manciple::purchase
