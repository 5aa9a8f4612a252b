#pragma once

#include <optional>
#include <vector>

#include "purchase/bundle.hpp"
#include "purchase/prices.hpp"
#include "purchase/stops.hpp"

namespace manciple::purchase {

/// What a purchase stores for a time, in the freezer or the good's cool place.
struct Held {
  Amount amount = 0;
  bool frozen = false;
  Day from = 0;
  Day until = 0;
};

/// Indices of edges.
using Path = std::vector<std::size_t>;

/// What one good buys with the stops given, stage by stage, as a network: every path from the first
/// node to an end is a plan, and every plan whose cost exceeds the least by at most a given slack,
/// at given prices, is a path. Other prices only change the lengths of the edges, so that a
/// shortest path is found without going through the rules of use again.
class Network {
public:
  struct Paid {
    StopId stop = 0;
    Money money = 0;
    Buy buy;
  };
  struct Edge {
    std::size_t to = 0;
    Cost cost;
    /// Ranges of `paid` and of `held`.
    std::size_t paid = 0, paid_end = 0;
    std::size_t held = 0, held_end = 0;
  };
  struct Node {
    /// Range of `edges`; they lead to nodes of higher numbers. A node without edges is an end.
    std::size_t edges = 0, edges_end = 0;
    /// Of the stage that follows, the (first) stop; none after the last stage.
    std::optional<StopId> stop;
  };

  /// `open` says which of the good's visits can be used. Gives up (`finished` is false, and paths
  /// may be missing) at `most` edges or when the limits are reached. `cheapest` is a plan's cost,
  /// near the least, if one is known.
  Network(const Model& model, const Prepared& good, const std::vector<bool>& open,
          const Prices& prices, Fine slack, std::size_t most, Limits& limits,
          std::optional<Cost> cheapest = {});

  const Prepared& good() const { return *good_; }
  bool finished = true;
  /// The least cost at the prices it was built for; any plan that is no path exceeds it by more
  /// than the slack.
  Fine least = impossible.value;
  std::vector<Node> nodes;
  std::vector<Edge> edges;
  std::vector<Paid> paid;
  std::vector<Held> held;

  /// By edge: what it costs at the prices; `impossible` if something is bought at a closed stop.
  std::vector<Cost> lengths(const Tariff& tariff) const;
  /// By node: the least from there to an end.
  std::vector<Cost> to_end(const std::vector<Cost>& lengths) const;
  /// A shortest path, with memory that is used again.
  struct Way {
    /// None if there is none.
    Path path;
    /// By node; with charges, then once more for when the node's stop is paid for.
    std::vector<Cost> to_end;
    std::vector<std::uint32_t> next;

    Cost length() const { return to_end.front(); }
  };
  /// Finds it, and returns its length.
  Cost shortest(const Tariff& tariff, Way& way) const;
  /// The same where the way is a shortest one at another tariff: if room cost the same, only what
  /// leads to a stop where things cost otherwise now is looked at again.
  Cost shortest(const Tariff& tariff, const Tariff& before, Way& way) const;
  /// The same if each stop where anything is bought costs a charge, too; by stop.
  Cost shortest(const Tariff& tariff, const std::vector<Cost>& charge, Way& way) const;
  /// Adds what a path costs and takes.
  void add(const Path& path, Bundle& bundle) const;
  /// What a path buys, by visit and offer.
  std::vector<Buy> buys(const Path& path) const;
  /// Something is bought there by some plan.
  bool buys_at(StopId stop) const;
  /// Leaves out what is not part of a path of at most this length.
  void shrink(const std::vector<Cost>& lengths, Fine longest);

  /// What is held takes of a place on a night, in 1e-6 microlitres.
  std::int64_t room(const Held& part, Place place, Day night) const;
  /// Adds what is held to the nights' sums, by place, in 1e-6 microlitres.
  void add_room(const Held& part, RoomSums& sums) const;

private:
  friend class NetworkBuilder;

  explicit Network(const Prepared& good) : good_(&good) {}
  void add_arcs(std::size_t stops);
  Cost length(const Edge& edge, const Tariff& tariff) const;
  /// Works out the way again from the nodes [0, count), those after them being as they were.
  Cost shortest(const Tariff& tariff, Way& way, std::size_t count) const;
  /// Of all the stops where the edge buys something; `paid_for` may be one of them.
  Cost charges(const Edge& edge, const std::vector<Cost>& charge,
               std::optional<StopId> paid_for) const;

  /// An edge in few bytes: shortest paths are looked for over and over.
  struct Arc {
    Fine cost = 0;
    Money money = 0;
    /// The number of stops if nothing is bought.
    std::uint32_t stop = 0;
    std::int32_t packs = 0;
    std::uint32_t to = 0;
    /// More than money spent at one stop.
    bool mixed = false;
    bool holds = false;
  };

  const Prepared* good_;
  std::vector<Arc> arcs_;
  /// Where anything is bought, with the number of the last node from which that is done.
  std::vector<std::pair<StopId, std::size_t>> last_at_;
};

/// Bounds are compared with a little to spare: priced room is rounded down piece by piece.
constexpr Fine rounding = 1'000'000;

} // namespace manciple::purchase
