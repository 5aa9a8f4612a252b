#include <algorithm>
#include <limits>

#include "purchase/network.hpp"
#include "purchase/room_price.hpp"
#include "purchase/stages.hpp"
#include "purchase/states.hpp"
#include "purchase/to_go.hpp"

namespace manciple::purchase {

/// Goes through the states stage by stage and leaves out what the least cost of the rest shows to
/// be too dear.
class NetworkBuilder {
public:
  NetworkBuilder(const Model& model, const std::vector<bool>& open, const Prices& prices,
                 std::size_t most, Limits& limits, Network& network)
      : model_(model),
        good_(network.good()),
        most_(most),
        limits_(limits),
        stages_(good_, open),
        layer_(stages_.start().size()),
        next_layer_(layer_),
        room_(room_prices(model, prices, *good_.good)),
        network_(network) {
    terms_.charge.assign(good_.visits.size(), impossible);
    for (std::size_t v = 0; v < open.size(); ++v) {
      if (open[v])
        terms_.charge[v] = Cost{};
      terms_.per_money.push_back(per_money(model, prices, good_.visits[v].stop));
    }
    terms_.room = &room_;
    to_go_.prepare(good_, terms_);
    most_kept_ = std::max(to_go_.gain(0), static_cast<double>(good_.good->salvage)) *
                 static_cast<double>(good_.kept_cap);
  }

  /// The cheapest plan by `cheapest` may cost less than any path: there, packs of one day are used
  /// in any order. Then the limit is raised until it leaves the slack above the shortest path.
  void build(Fine slack, std::optional<Cost> known) {
    Workspace workspace;
    const Cost least = known ? *known : cheapest(good_, terms_, workspace).cost;
    if (!is_possible(least))
      return;
    slack_ = std::min(slack, impossible.value / 8);
    limit_ = least.value + slack_ + 2 * rounding;
    for (;;) {
      lay_out();
      if (!network_.finished)
        return;
      const Cost shortest = possible_ ? network_.to_end(lengths_).front() : impossible;
      const Fine longest = shortest.value + slack_ + rounding;
      if (is_possible(shortest) && longest <= limit_) {
        network_.least = shortest.value;
        network_.shrink(lengths_, longest);
        network_.add_arcs(model_.stops.size());
        return;
      }
      if (limit_ >= impossible.value / 4) { // no plan at all
        network_.nodes.clear();
        return;
      }
      limit_ = is_possible(shortest) ? longest : least.value + 4 * (limit_ - least.value);
    }
  }

private:
  void lay_out() {
    network_.nodes.assign(1, {});
    network_.edges.clear();
    network_.paid.clear();
    network_.held.clear();
    lengths_.clear();
    from_start_.assign(1, 0);
    layer_.clear();
    layer_.add(stages_.start());
    std::size_t first = 0;
    for (std::size_t stage = 0; stage < stages_.count() && network_.finished; ++stage) {
      next_layer_.clear();
      next_first_ = network_.nodes.size();
      for (std::size_t i = 0; i < layer_.size(); ++i) {
        network_.nodes[first + i].edges = network_.edges.size();
        network_.nodes[first + i].stop = good_.visits[stages_.lines(stage).front().visit].stop;
        take_state(i);
        if (stages_.in_time(stage, state_))
          add_edges(stage, first + i);
        network_.nodes[first + i].edges_end = network_.edges.size();
      }
      std::swap(layer_, next_layer_);
      first = next_first_;
    }
    close_dead_ends(first);
  }

  void take_state(std::size_t number) {
    state_.assign(layer_.at(number), layer_.at(number) + stages_.start().size());
  }

  /// A lower bound on what the rest costs.
  double rest(std::size_t stage, const std::vector<Amount>& state) const {
    const std::size_t visit =
        stage < stages_.count() ? stages_.lines(stage).front().visit : good_.visits.size();
    double sum = 0;
    if (good_.opened()) {
      Amount before = 0;
      for (std::size_t u = 0; u < good_.uses.size(); ++u) {
        const Amount served = std::max<Amount>(0, state[0] - before);
        before += good_.uses[u].amount;
        if (served < good_.uses[u].amount)
          sum += static_cast<double>(good_.uses[u].amount - served) * to_go_.unit(visit, u);
      }
    } else {
      for (std::size_t group = 0; group < good_.groups.size(); ++group)
        sum += to_go_.rest(visit, group, state[group]);
    }
    if (good_.kept_cap > 0) {
      const Amount kept = good_.opened()
                              ? state[0] - good_.total
                              : state[good_.kept_group] - good_.group_total[good_.kept_group];
      sum -= to_go_.gain(visit) *
             static_cast<double>(good_.kept_cap - std::clamp<Amount>(kept, 0, good_.kept_cap));
    }
    return sum;
  }

  /// Most packs worth considering: what can be used, and what it takes to reach a reduction.
  std::vector<int> most_packs(std::size_t stage) const {
    std::vector<int> most = stages_.most(stage, state_);
    for (std::size_t i = 0; i < most.size(); ++i) {
      const Buy& line = stages_.lines(stage)[i];
      const PackCost& cost = good_.good->offers[line.offer].cost;
      const Shop& shop = model_.shops[model_.stops[good_.visits[line.visit].stop].shop];
      if (shop.off == 0)
        continue;
      // What is of no use otherwise costs all that it is worth, within the slack.
      const Money unit = std::max<Money>(1, cost.table.empty() ? cost.unit : 1);
      const Fine least = std::max<Fine>(1, unit * terms_.per_money[line.visit]);
      const Money extra = std::min<Money>({shop.over / unit + 1, slack_ / least, cost.most()});
      most[i] = static_cast<int>(std::min<Money>(most[i] + extra, cost.most()));
    }
    return most;
  }

  /// Chooses packs line by line, as long as what follows may be cheap enough.
  void add_edges(std::size_t stage, std::size_t node) {
    const std::vector<int> most = most_packs(stage);
    packs_.assign(most.size(), 0);
    choose(stage, node, most, 0, static_cast<double>(from_start_[node]), 0);
  }

  void choose(std::size_t stage, std::size_t node, const std::vector<int>& most, std::size_t line,
              double so_far, Amount amount) {
    if (line == packs_.size()) {
      add_edge(stage, node);
      return;
    }
    const Buy& buy = stages_.lines(stage)[line];
    const Offer& offer = good_.good->offers[buy.offer];
    for (int n = 0; n <= most[line] && network_.finished; ++n) {
      const double then = so_far + static_cast<double>(offer.cost.of(n)) *
                                       static_cast<double>(terms_.per_money[buy.visit]);
      // Once all is served, more packs only cost more, unless a table makes them cheaper.
      if (then - most_kept_ > static_cast<double>(limit_) && offer.cost.table.empty())
        break;
      const Amount bought = amount + n * offer.pack;
      if (then + rest_at_best(stage, bought) > static_cast<double>(limit_))
        continue;
      packs_[line] = n;
      choose(stage, node, most, line + 1, then, bought);
    }
  }

  /// A lower bound on what the rest costs at the stage and after it if what is bought there serves
  /// the uses with nothing lost, the earliest first; which it does not if they are of many kinds.
  double rest_at_best(std::size_t stage, Amount bought) {
    if (state_.size() > 1)
      return -std::numeric_limits<double>::infinity();
    const auto kept = [&](Amount served) {
      return std::clamp<Amount>(served - good_.total, 0, good_.kept_cap);
    };
    const Amount before = state_[0];
    state_[0] += bought;
    const double at_best =
        rest(stage, state_) -
        static_cast<double>(value_of(kept(state_[0]) - kept(before), good_.good->salvage));
    state_[0] = before;
    return at_best;
  }

  void add_edge(std::size_t stage, std::size_t node) {
    stages_.move(stage, state_, packs_, move_);
    Network::Edge edge;
    edge.cost.value = move_.leftover;
    Fine length = move_.leftover;
    for (const Buy& buy : move_.buys) {
      const Money money = good_.good->offers[buy.offer].cost.of(buy.packs);
      edge.cost += Cost{fine(money), buy.packs};
      length += money * terms_.per_money[buy.visit];
    }
    if (!room_.free())
      for (const Stored& stored : move_.stored)
        length +=
            priced(stored.amount, keep_price(room_, stored.frozen, move_.day, end_of(stored)));
    const Fine so_far = from_start_[node] + length;
    const double to_come = rest(stage + 1, move_.next);
    if (static_cast<double>(so_far) + to_come > static_cast<double>(limit_))
      return;
    edge.paid = network_.paid.size();
    for (const Buy& buy : move_.buys)
      network_.paid.push_back(
          {good_.visits[buy.visit].stop, good_.good->offers[buy.offer].cost.of(buy.packs), buy});
    edge.paid_end = network_.paid.size();
    edge.held = network_.held.size();
    for (const Stored& stored : move_.stored)
      if (end_of(stored) > move_.day)
        network_.held.push_back({stored.amount, stored.frozen, move_.day, end_of(stored)});
    edge.held_end = network_.held.size();
    edge.to = next_first_ + next_layer_.add(move_.next);
    if (edge.to == network_.nodes.size()) {
      network_.nodes.emplace_back();
      from_start_.push_back(impossible.value);
    }
    from_start_[edge.to] = std::min(from_start_[edge.to], so_far);
    network_.edges.push_back(edge);
    lengths_.push_back({length, 0});
    if (network_.edges.size() > most_ || (network_.edges.size() % 4096 == 0 && limits_.reached()))
      network_.finished = false;
  }

  /// What is stored after the plan's last night does not count.
  Day end_of(const Stored& stored) const { return std::min(stored.until, good_.last_day + 1); }

  /// A node without edges counts as an end: what leads to one that does not meet all demands, or
  /// is none, is barred.
  void close_dead_ends(std::size_t last) {
    std::vector<bool> alive(network_.nodes.size(), false);
    for (std::size_t i = 0; i < layer_.size(); ++i) {
      take_state(i);
      alive[last + i] = stages_.in_time(stages_.count(), state_);
    }
    for (std::size_t node = network_.nodes.size(); node-- > 0;)
      for (std::size_t e = network_.nodes[node].edges; e < network_.nodes[node].edges_end; ++e)
        if (alive[network_.edges[e].to])
          alive[node] = true;
        else
          lengths_[e] = impossible;
    possible_ = alive[0];
  }

  const Model& model_;
  const Prepared& good_;
  std::size_t most_;
  Limits& limits_;
  Stages stages_;
  /// The states of a stage, whose nodes follow one another, and of the next stage.
  States layer_;
  States next_layer_;
  std::size_t next_first_ = 0;
  /// The state, the packs and the move at hand.
  std::vector<Amount> state_;
  std::vector<int> packs_;
  Move move_;
  RoomPrices room_;
  Terms terms_;
  ToGo to_go_;
  /// What may be gained by keeping food.
  double most_kept_ = 0;
  Fine slack_ = 0;
  /// There is a path to an end.
  bool possible_ = false;
  Fine limit_ = 0;
  std::vector<Fine> from_start_;
  std::vector<Cost> lengths_;
  Network& network_;
};

Network::Network(const Model& model, const Prepared& good, const std::vector<bool>& open,
                 const Prices& prices, Fine slack, std::size_t most, Limits& limits,
                 std::optional<Cost> cheapest)
    : good_(&good) {
  NetworkBuilder(model, open, prices, most, limits, *this).build(slack, cheapest);
}

} // namespace manciple::purchase
