#pragma once

#include "buying/network/network_pool.hpp"

#include <deque>
#include <vector>

namespace manciple::buying {

/// Networks of a pool, by item, for a set of stops.
struct Pooled {
  const NetworkPool& pool;
  std::vector<const PooledNetwork*> networks;
};

/// What the items cost at the multipliers if they choose among all plans, not only the networks',
/// and what they then take. As soon as it is sure that they cost `enough`, only that.
struct Least {
  Cost cost;
  Bundle bundle;
};
Least least_of_all(const Model& model, const OpenStops& open, const Pooled& pooled,
                   const Multipliers& at, Cost enough, WorkBudget& budget);

/// Networks with all plans of up to a slack at other multipliers than those of the pool: its own
/// ones where they are sure to have them, new ones for the other items.
class Cover {
public:
  /// Gives up at `most` edges.
  Cover(const Model& model, const OpenStops& open, const Pooled& pooled, const Multipliers& at,
        Fine slack, std::size_t most, WorkBudget& budget);

  [[nodiscard]] bool finished() const { return networks_.size() == items_; }
  /// Of all items, at the multipliers, whatever the slack.
  [[nodiscard]] Cost least() const { return least_; }
  /// By item.
  [[nodiscard]] const std::vector<const Network*>& networks() const { return networks_; }

private:
  std::size_t items_;
  std::deque<Network> own_;
  std::vector<const Network*> networks_;
  Cost least_;
};

} // namespace manciple::buying
