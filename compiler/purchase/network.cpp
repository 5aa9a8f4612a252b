#include "purchase/network.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include "purchase/room_price.hpp"
#include "purchase/stages.hpp"
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
  }

  /// The cheapest plan by `cheapest` may cost less than any path: there, packs of one day are used
  /// in any order. Then the limit is raised until it leaves the slack above the shortest path.
  void build(Fine slack) {
    Workspace workspace;
    const Outcome least = cheapest(good_, terms_, workspace);
    if (!is_possible(least.cost))
      return;
    slack_ = std::min(slack, impossible.value / 8);
    limit_ = least.cost.value + slack_ + 2 * rounding;
    for (;;) {
      lay_out();
      if (!network_.finished)
        return;
      const Cost shortest = possible_ ? network_.to_end(lengths_).front() : impossible;
      const Fine longest = shortest.value + slack_ + rounding;
      if (is_possible(shortest) && longest <= limit_) {
        network_.shrink(lengths_, longest);
        return;
      }
      if (limit_ >= impossible.value / 4) { // no plan at all
        network_.nodes.clear();
        return;
      }
      limit_ = is_possible(shortest) ? longest : least.cost.value + 4 * (limit_ - least.cost.value);
    }
  }

private:
  void lay_out() {
    network_.nodes.assign(1, {});
    network_.edges.clear();
    network_.paid.clear();
    network_.held.clear();
    network_.all = true;
    lengths_.clear();
    from_start_.assign(1, 0);
    Layer layer{{stages_.start(), 0}};
    for (std::size_t stage = 0; stage < stages_.count() && network_.finished; ++stage) {
      Layer next;
      for (const auto& [state, node] : layer) {
        network_.nodes[node].edges = network_.edges.size();
        if (stages_.in_time(stage, state))
          add_edges(stage, state, node, next);
        network_.nodes[node].edges_end = network_.edges.size();
      }
      layer = std::move(next);
    }
    close_dead_ends(layer);
  }

  using Layer = std::map<std::vector<Amount>, std::size_t>;

  /// A lower bound on what the rest costs.
  double rest(std::size_t stage, const std::vector<Amount>& state) const {
    const std::size_t visit =
        stage < stages_.count() ? stages_.lines(stage).front().visit : good_.visits.size();
    double sum = 0;
    Amount before = 0;
    Amount kept = 0;
    for (std::size_t u = 0; u < good_.uses.size(); ++u) {
      const Use& use = good_.uses[u];
      const Amount served = good_.opened() ? state[0] - before : state[use.group] - use.before;
      before += use.amount;
      if (served < use.amount)
        sum +=
            static_cast<double>(use.amount - std::max<Amount>(0, served)) * to_go_.unit(visit, u);
    }
    if (good_.kept_cap > 0) {
      kept = good_.opened() ? state[0] - good_.total
                            : state[good_.kept_group] - good_.group_total[good_.kept_group];
      kept = std::clamp<Amount>(kept, 0, good_.kept_cap);
      sum -= to_go_.gain(visit) * static_cast<double>(good_.kept_cap - kept);
    }
    return sum;
  }

  /// Most packs worth considering: what can be used, and what it takes to reach a reduction.
  std::vector<int> most_packs(std::size_t stage, const std::vector<Amount>& state) const {
    std::vector<int> most = stages_.most(stage, state);
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
  void add_edges(std::size_t stage, const std::vector<Amount>& state, std::size_t node,
                 Layer& next) {
    const std::vector<int> most = most_packs(stage, state);
    std::vector<int> packs(most.size(), 0);
    const double so_far = static_cast<double>(from_start_[node]);
    const auto choose = [&](const auto& self, std::size_t line, double spent,
                            Amount amount) -> void {
      if (line == packs.size()) {
        add_edge(stage, state, node, packs, next);
        return;
      }
      const Buy& buy = stages_.lines(stage)[line];
      const Offer& offer = good_.good->offers[buy.offer];
      for (int n = 0; n <= most[line] && network_.finished; ++n) {
        const double then = spent + static_cast<double>(offer.cost.of(n)) *
                                        static_cast<double>(terms_.per_money[buy.visit]);
        const Amount bought = amount + n * offer.pack;
        if (so_far + then + rest_at_best(stage, state, bought) > static_cast<double>(limit_)) {
          network_.all = false;
          continue;
        }
        packs[line] = n;
        self(self, line + 1, then, bought);
      }
    };
    choose(choose, 0, 0, 0);
  }

  /// A lower bound on what the rest costs at the stage and after it if what is bought there serves
  /// the uses with nothing lost, the earliest first; which it does not if they are of many kinds.
  double rest_at_best(std::size_t stage, const std::vector<Amount>& state, Amount bought) const {
    if (state.size() > 1)
      return -std::numeric_limits<double>::infinity();
    const auto kept = [&](Amount served) {
      return std::clamp<Amount>(served - good_.total, 0, good_.kept_cap);
    };
    return rest(stage, {state[0] + bought}) -
           static_cast<double>(
               value_of(kept(state[0] + bought) - kept(state[0]), good_.good->salvage));
  }

  void add_edge(std::size_t stage, const std::vector<Amount>& state, std::size_t node,
                const std::vector<int>& packs, Layer& next) {
    const Move move = stages_.move(stage, state, packs);
    Network::Edge edge;
    edge.cost.value = move.leftover;
    Fine length = move.leftover;
    edge.paid = network_.paid.size();
    edge.held = network_.held.size();
    const auto drop = [&] {
      network_.paid.resize(edge.paid);
      network_.held.resize(edge.held);
    };
    for (const Buy& buy : move.buys) {
      const Money money = good_.good->offers[buy.offer].cost.of(buy.packs);
      edge.cost += Cost{fine(money), buy.packs};
      length += money * terms_.per_money[buy.visit];
      network_.paid.push_back({good_.visits[buy.visit].stop, money, buy});
    }
    for (const Stored& stored : move.stored) {
      const Day until = std::min(stored.until, good_.last_day + 1);
      if (until <= move.day)
        continue;
      network_.held.push_back({stored.amount, stored.frozen, move.day, until});
      if (!room_.free())
        length += priced(stored.amount, keep_price(room_, stored.frozen, move.day, until));
    }
    edge.paid_end = network_.paid.size();
    edge.held_end = network_.held.size();
    const Fine so_far = from_start_[node] + length;
    const double to_come = rest(stage + 1, move.next);
    if (std::isinf(to_come)) // demands that nothing can meet any more
      return drop();
    if (static_cast<double>(so_far) + to_come > static_cast<double>(limit_)) {
      network_.all = false;
      return drop();
    }
    const auto [it, is_new] = next.try_emplace(move.next, network_.nodes.size());
    if (is_new) {
      network_.nodes.emplace_back();
      from_start_.push_back(impossible.value);
    }
    edge.to = it->second;
    from_start_[edge.to] = std::min(from_start_[edge.to], so_far);
    network_.edges.push_back(edge);
    lengths_.push_back({length, 0});
    if (network_.edges.size() > most_ || (network_.edges.size() % 4096 == 0 && limits_.reached()))
      network_.finished = false;
  }

  /// A node without edges counts as an end: what leads to one that does not meet all demands, or
  /// is none, is barred.
  void close_dead_ends(const Layer& last) {
    std::vector<bool> alive(network_.nodes.size(), false);
    for (const auto& [state, node] : last)
      alive[node] = stages_.in_time(stages_.count(), state);
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
  RoomPrices room_;
  Terms terms_;
  ToGo to_go_;
  Fine slack_ = 0;
  /// There is a path to an end.
  bool possible_ = false;
  Fine limit_ = 0;
  std::vector<Fine> from_start_;
  std::vector<Cost> lengths_;
  Network& network_;
};

Network::Network(const Model& model, const Prepared& good, const std::vector<bool>& open,
                 const Prices& prices, Fine slack, std::size_t most, Limits& limits)
    : good_(&good) {
  NetworkBuilder(model, open, prices, most, limits, *this).build(slack);
}

std::vector<Cost> Network::lengths(const Model& model, const Prices& prices) const {
  const RoomPrices room = room_prices(model, prices, *good_->good);
  std::vector<Cost> lengths;
  lengths.reserve(edges.size());
  for (const Edge& edge : edges) {
    Cost length = edge.cost;
    for (std::size_t i = edge.paid; i < edge.paid_end; ++i)
      length.value -= paid[i].money * (fine_per_money - per_money(model, prices, paid[i].stop));
    if (!room.free())
      for (std::size_t i = edge.held; i < edge.held_end; ++i)
        length.value +=
            priced(held[i].amount, keep_price(room, held[i].frozen, held[i].from, held[i].until));
    lengths.push_back(length);
  }
  return lengths;
}

std::vector<Cost> Network::to_end(const std::vector<Cost>& lengths) const {
  std::vector<Cost> result(nodes.size(), impossible);
  for (std::size_t node = nodes.size(); node-- > 0;) {
    if (nodes[node].edges == nodes[node].edges_end)
      result[node] = Cost{};
    for (std::size_t e = nodes[node].edges; e < nodes[node].edges_end; ++e)
      result[node] = std::min(result[node], lengths[e] + result[edges[e].to]);
  }
  return result;
}

Path Network::shortest(const std::vector<Cost>& lengths, const std::vector<Cost>& to_end) const {
  Path path;
  std::size_t node = 0;
  while (nodes[node].edges < nodes[node].edges_end) {
    std::size_t e = nodes[node].edges;
    while (lengths[e] + to_end[edges[e].to] != to_end[node])
      ++e;
    path.push_back(e);
    node = edges[e].to;
  }
  return path;
}

std::vector<Buy> Network::buys(const Path& path) const {
  std::vector<Buy> buys;
  for (const std::size_t e : path)
    for (std::size_t i = edges[e].paid; i < edges[e].paid_end; ++i)
      buys.push_back(paid[i].buy);
  std::sort(buys.begin(), buys.end(), [](const Buy& a, const Buy& b) {
    return std::tie(a.visit, a.offer) < std::tie(b.visit, b.offer);
  });
  return buys;
}

void Network::shrink(const std::vector<Cost>& lengths, Fine longest) {
  Network small(*good_);
  small.all = all;
  small.finished = finished;
  const std::vector<Cost> ahead = to_end(lengths);
  std::vector<Fine> behind(nodes.size(), impossible.value);
  behind[0] = 0;
  std::vector<std::size_t> number(nodes.size(), 0);
  std::vector<bool> stays(nodes.size(), false);
  std::vector<bool> edge_stays(edges.size(), false);
  stays[0] = true;
  for (std::size_t node = 0; node < nodes.size(); ++node)
    for (std::size_t e = nodes[node].edges; stays[node] && e < nodes[node].edges_end; ++e) {
      const Fine so_far = behind[node] + lengths[e].value;
      if (!is_possible(lengths[e]) || !is_possible(ahead[edges[e].to]) ||
          so_far + ahead[edges[e].to].value > longest) {
        small.all = small.all && (!is_possible(lengths[e]) || !is_possible(ahead[edges[e].to]));
        continue;
      }
      edge_stays[e] = stays[edges[e].to] = true;
      behind[edges[e].to] = std::min(behind[edges[e].to], so_far);
    }
  for (std::size_t node = 0; node < nodes.size(); ++node) {
    if (!stays[node])
      continue;
    number[node] = small.nodes.size();
    Node kept{small.edges.size(), 0};
    for (std::size_t e = nodes[node].edges; e < nodes[node].edges_end; ++e) {
      if (!edge_stays[e])
        continue;
      Edge edge = edges[e];
      edge.paid = small.paid.size();
      edge.held = small.held.size();
      for (std::size_t i = edges[e].paid; i < edges[e].paid_end; ++i)
        small.paid.push_back(paid[i]);
      for (std::size_t i = edges[e].held; i < edges[e].held_end; ++i)
        small.held.push_back(held[i]);
      edge.paid_end = small.paid.size();
      edge.held_end = small.held.size();
      small.edges.push_back(edge);
    }
    kept.edges_end = small.edges.size();
    small.nodes.push_back(kept);
  }
  for (Edge& edge : small.edges)
    edge.to = number[edge.to];
  *this = std::move(small);
}

std::int64_t Network::room(const Held& part, Place place, Day night) const {
  const Good& facts = *good_->good;
  if (place != (part.frozen ? Place::freezer : facts.cool_place) || night < part.from ||
      night >= part.until)
    return 0;
  return part.amount * (part.frozen ? facts.room_frozen : facts.room_cool);
}

void Network::add_room(const Held& part, RoomSums& sums) const {
  const Good& facts = *good_->good;
  std::vector<std::int64_t>& nights =
      sums[static_cast<std::size_t>(part.frozen ? Place::freezer : facts.cool_place)];
  if (nights.empty())
    return;
  const std::int64_t room = part.amount * (part.frozen ? facts.room_frozen : facts.room_cool);
  for (Day night = std::max(0, part.from); night < part.until; ++night)
    nights[static_cast<std::size_t>(night)] += room;
}

} // namespace manciple::purchase
