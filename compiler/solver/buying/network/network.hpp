#pragma once

#include "buying/network/tariff.hpp"
#include "buying/stops/bundle.hpp"
#include "buying/work_budget.hpp"

#include <optional>
#include <vector>

namespace manciple::buying {

/// Indices of edges.
using Path = std::vector<std::size_t>;

/// What one item does with the stops given, purchase by purchase, as a network: every path from the
/// first node to an end is a plan, and every plan whose cost exceeds the least by at most a given
/// slack, at given multipliers, is a path. Other multipliers only change the lengths of the edges,
/// so that a shortest path is found without going through the rules of use again.
class Network {
public:
  struct Paid {
    StopId stop;
    Money till = 0;
    Buy buy;
  };
  struct Edge {
    std::size_t to = 0;
    Cost cost;
    /// Ranges of `paid`, of `stays` and of `choices`.
    std::size_t paid = 0, paid_end = 0;
    std::size_t stays = 0, stays_end = 0;
    std::size_t choices = 0, choices_end = 0;
  };
  struct Node {
    /// Range of `edges`; they lead to nodes of higher numbers. A node without edges is an end.
    std::size_t edges = 0, edges_end = 0;
    /// Where its edges buy; none before the first visit.
    std::optional<StopId> stop;
  };

  /// `open` says which of the item's visits can be used. Gives up (`finished` is false, and paths
  /// may be missing) at `most` edges or when the budget is spent. `least` is a plan's cost, near
  /// the least, if one is known.
  Network(const Model& model, const Prepared& item, const std::vector<bool>& open,
          const Multipliers& at, Fine slack, std::size_t most, WorkBudget& budget,
          std::optional<Cost> least = {});

  [[nodiscard]] const Prepared& item() const { return *item_; }
  [[nodiscard]] bool finished() const { return finished_; }
  /// The least cost at the multipliers it was built for; any plan that is no path exceeds it by
  /// more than the slack.
  [[nodiscard]] Fine least() const { return least_; }
  [[nodiscard]] const std::vector<Node>& nodes() const { return nodes_; }
  [[nodiscard]] const std::vector<Edge>& edges() const { return edges_; }
  [[nodiscard]] const std::vector<Paid>& paid() const { return paid_; }
  [[nodiscard]] const std::vector<Stay>& stays() const { return stays_; }

  /// By edge: what it costs; `impossible` if something is bought at a closed stop.
  [[nodiscard]] std::vector<Cost> lengths(const Tariff& tariff) const;
  /// By node: the least from there to an end.
  [[nodiscard]] std::vector<Cost> to_end(const std::vector<Cost>& lengths) const;
  /// A shortest path, with memory that is used again.
  struct Way {
    /// Empty if there is none.
    Path path;
    /// By node; with charges, then once more for when the node's stop is paid for.
    std::vector<Cost> to_end;
    std::vector<std::uint32_t> next;
    RoomRates room;

    [[nodiscard]] Cost length() const { return to_end.front(); }
  };
  /// Finds it, and returns its length.
  Cost shortest(const Tariff& tariff, Way& way) const;
  /// The same where the way is a shortest one at another tariff: if room costs the same, only what
  /// leads to a stop where things cost otherwise now is looked at again.
  Cost shortest(const Tariff& tariff, const Tariff& before, Way& way) const;
  /// The same if each stop where anything is bought costs a charge, too.
  Cost shortest(const Tariff& tariff, const Table<StopId, Cost>& charge, Way& way) const;
  /// Adds what a path costs and takes.
  void add(const Path& path, Bundle& bundle) const;
  [[nodiscard]] ItemPlan plan(const Path& path) const;
  /// Something is bought there by some plan.
  [[nodiscard]] bool buys_at(StopId stop) const;
  /// Leaves out what is not part of a path of at most this length.
  void shrink(const std::vector<Cost>& lengths, Fine longest);

  /// What a stay takes of a place on a night, in thousandths of a microlitre.
  [[nodiscard]] std::int64_t room(const Stay& stay, Place place, Day night) const;

private:
  friend class NetworkBuilder;

  explicit Network(const Prepared& item) : item_(&item) {}
  void add_arcs(std::size_t stops);
  [[nodiscard]] Cost length(const Edge& edge, const Tariff& tariff, const RoomRates& room) const;
  /// Works out the way again from the nodes [0, count), those after them being as they were.
  Cost shortest(const Tariff& tariff, Way& way, std::size_t count) const;
  void follow(Way& way) const;
  /// Of all the stops where the edge buys something; `paid_for` may be one of them.
  [[nodiscard]] Cost charges(const Edge& edge, const Table<StopId, Cost>& charge,
                             std::optional<StopId> paid_for) const;

  /// An edge in few bytes: shortest paths are looked for over and over.
  struct Arc {
    Cost cost;
    Money till = 0;
    /// The number of stops if nothing is bought.
    std::uint32_t stop = 0;
    std::uint32_t to = 0;
    bool stays = false;
  };

  const Prepared* item_;
  bool finished_ = true;
  Fine least_ = impossible.value;
  std::vector<Node> nodes_;
  std::vector<Edge> edges_;
  std::vector<Paid> paid_;
  std::vector<Stay> stays_;
  std::vector<std::uint32_t> choices_;
  std::vector<Arc> arcs_;
  /// Where anything is bought, with the number of the last node from which that is done.
  std::vector<std::pair<StopId, std::size_t>> last_at_;
};

/// Bounds are compared with a little to spare: priced room is rounded down piece by piece.
constexpr Fine rounding = 100'000;

} // namespace manciple::buying
