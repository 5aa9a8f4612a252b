#pragma once

#include "buying/network/network.hpp"
#include "buying/stops/subproblem_cache.hpp"

#include <array>
#include <optional>
#include <vector>

namespace manciple::buying {

/// Excess that networks are built for at first: 30 cents of a dollar.
constexpr Fine wide = fine(3'000);
/// Edges of an item's network after which a set of stops is left open, with the usual work.
constexpr std::size_t most_edges = 200'000;

/// How much cheaper things have become: a Money spent, by stop; and at most, as a part of what they
/// cost before, what is bought at a stop, and what stands in a place on a night.
struct Drop {
  Table<StopId, Fine> money;
  Table<StopId, double> stop;
  std::array<double, place_count> place{};
};
Drop drop(const Model& model, const Coupling& coupling, const Multipliers& from,
          const Multipliers& to);

/// An item's network for all stops that may be made, with what it is known not to have.
struct PooledNetwork {
  Network network;
  /// At the multipliers it was built for, any plan that is none of its paths costs more; none if
  /// such plans never matter.
  std::optional<Fine> longest;
  /// How much of that lies above the least cost.
  Fine slack = 0;
  /// By visit: the most that can be spent there on what is of use.
  std::vector<Money> useful;

  /// A lower bound, at other multipliers, on the cost of any plan that is none of the paths.
  [[nodiscard]] Fine beyond(const Drop& drop) const;
};

/// Networks of the items, all for the multipliers that the cache has as well. They serve for any
/// set of stops: what is bought at a stop that is not made is left out when paths are looked for.
class NetworkPool {
public:
  NetworkPool(SubproblemCache& cache, const Coupling& coupling, OpenStops may_be_open,
              const Multipliers& at);

  [[nodiscard]] const Coupling& coupling() const { return coupling_; }

  [[nodiscard]] const Multipliers& multipliers() const { return at_; }
  /// Forgets the networks.
  void set_multipliers(const Multipliers& at);

  /// By item, its network; with all plans that cost at most `slack` more than the cheapest when
  /// these stops are made. None if that takes more than `most` edges. The pointers stay good until
  /// the next call.
  std::optional<std::vector<const PooledNetwork*>> take(const OpenStops& open, Fine slack,
                                                        std::size_t most);
  /// Likewise, of all the stops that may be made, as far as they are not given up.
  void lay_out(Fine slack, std::size_t most);
  /// A lower bound on what the item costs, and what it does in its network. None if it has nothing
  /// there.
  std::optional<Outcome> at_least(ItemId item, const Terms& terms);

private:
  [[nodiscard]] bool matters(const Prepared& item) const;

  SubproblemCache& cache_;
  const Coupling& coupling_;
  OpenStops may_be_open_;
  Multipliers at_;
  /// What things cost at these, with the stops and charges of the question at hand.
  std::optional<Tariff> tariff_;
  Table<StopId, Cost> charge_;
  Network::Way way_;
  Table<ItemId, std::optional<PooledNetwork>> pool_;
  /// By item: a network with so much slack took more edges than this. At the multipliers as they
  /// are another one need not be tried.
  struct TooLarge {
    Fine slack = 0;
    std::size_t edges = 0;
  };
  Table<ItemId, std::optional<TooLarge>> too_large_;
};

} // namespace manciple::buying
