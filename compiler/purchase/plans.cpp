#include "purchase/plans.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include "purchase/room_price.hpp"
#include "purchase/stages.hpp"
#include "purchase/to_go.hpp"

namespace manciple::purchase {
namespace {

/// Bounds are compared with a little to spare: priced room is rounded down piece by piece.
constexpr Fine rounding = 1'000'000;
constexpr std::size_t most_looks = 40;

/// The network of a good's stages with, on every edge, what the purchase takes of the rows; paths
/// through it are plans.
class PlanSearch {
public:
  PlanSearch(const Model& model, const Prepared& good, const std::vector<bool>& open,
             const Prices& prices, const Rows& rows, std::size_t most, Limits& limits)
      : model_(model),
        good_(good),
        rows_(rows),
        most_(most),
        limits_(limits),
        stages_(good, open),
        room_(room_prices(model, prices, *good.good)) {
    terms_.charge.assign(good.visits.size(), impossible);
    for (std::size_t v = 0; v < open.size(); ++v) {
      if (open[v])
        terms_.charge[v] = Cost{};
      terms_.per_money.push_back(per_money(model, prices, good.visits[v].stop));
    }
    terms_.room = &room_;
    to_go_.prepare(good, terms_);
  }

  PlanSet run(Fine slack) {
    Workspace workspace;
    const Outcome least = cheapest(good_, terms_, workspace);
    if (!is_possible(least.cost))
      return result_;
    limit_ = slack < impossible.value - least.cost.value ? least.cost.value + slack + rounding
                                                         : impossible.value;
    build();
    if (result_.finished)
      walk();
    std::sort(result_.plans.begin(), result_.plans.end(), [](const Plan& a, const Plan& b) {
      return std::tie(a.priced, a.cost) < std::tie(b.priced, b.cost);
    });
    drop_beaten();
    return std::move(result_);
  }

private:
  struct Edge {
    std::size_t to = 0;
    Cost cost;
    Fine priced = 0;
    std::vector<std::int64_t> room;
    std::vector<Money> spend;
    std::vector<Buy> buys;
  };
  struct Node {
    Fine from_start = impossible.value;
    Fine to_end = impossible.value;
    std::vector<Edge> edges;
  };
  struct Label {
    Cost cost;
    Fine priced = 0;
    std::vector<std::int64_t> room;
    std::vector<Money> spend;
    std::size_t parent_node = 0;
    std::size_t parent = 0;
    const Edge* edge = nullptr;
  };
  using Layer = std::map<std::vector<Amount>, std::size_t>;

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

  /// Most packs worth considering: what can be used, and what it takes to spend enough.
  std::vector<int> most_packs(std::size_t stage, const std::vector<Amount>& state) const {
    std::vector<int> most = stages_.most(stage, state);
    for (std::size_t i = 0; i < most.size(); ++i) {
      const Buy& line = stages_.lines(stage)[i];
      const PackCost& cost = good_.good->offers[line.offer].cost;
      for (const Rows::Spend& row : rows_.spend) {
        if (row.least == 0 || row.stop != good_.visits[line.visit].stop)
          continue;
        const Money unit = std::max<Money>(1, cost.table.empty() ? cost.unit : 1);
        const Money extra = std::min<Money>(row.least / unit + 1, cost.most());
        most[i] = static_cast<int>(std::min<Money>(most[i] + extra, cost.most()));
      }
    }
    return most;
  }

  void build() {
    nodes_.assign(1, Node{});
    nodes_[0].from_start = 0;
    Layer layer{{stages_.start(), 0}};
    for (std::size_t stage = 0; stage < stages_.count(); ++stage) {
      Layer next;
      for (const auto& [state, node] : layer)
        if (stages_.in_time(stage, state))
          add_edges(stage, state, node, next);
      if (!result_.finished)
        return;
      layer = std::move(next);
    }
    for (const auto& [state, node] : layer)
      if (stages_.in_time(stages_.count(), state))
        nodes_[node].to_end = 0;
    // Nodes are numbered by stage.
    for (std::size_t node = nodes_.size(); node-- > 0;)
      for (const Edge& edge : nodes_[node].edges)
        nodes_[node].to_end = std::min(nodes_[node].to_end, edge.priced + nodes_[edge.to].to_end);
  }

  void add_edges(std::size_t stage, const std::vector<Amount>& state, std::size_t node,
                 Layer& next) {
    const std::vector<int> most = most_packs(stage, state);
    std::vector<int> packs(most.size(), 0);
    for (;;) {
      add_edge(stage, state, node, packs, next);
      std::size_t digit = 0;
      while (digit < packs.size() && packs[digit] == most[digit])
        packs[digit++] = 0;
      if (digit == packs.size() || !result_.finished)
        return;
      ++packs[digit];
    }
  }

  void add_edge(std::size_t stage, const std::vector<Amount>& state, std::size_t node,
                const std::vector<int>& packs, Layer& next) {
    const Move move = stages_.move(stage, state, packs);
    Edge edge;
    edge.buys = move.buys;
    edge.cost.value = edge.priced = move.leftover;
    edge.spend.assign(rows_.spend.size(), 0);
    for (const Buy& buy : move.buys) {
      const StopId stop = good_.visits[buy.visit].stop;
      const Money money = good_.good->offers[buy.offer].cost.of(buy.packs);
      edge.cost += Cost{fine(money), buy.packs};
      edge.priced += money * terms_.per_money[buy.visit];
      for (std::size_t row = 0; row < rows_.spend.size(); ++row)
        if (rows_.spend[row].stop == stop)
          edge.spend[row] += money;
    }
    edge.room.assign(rows_.room.size(), 0);
    for (const Stored& stored : move.stored) {
      if (!room_.free())
        edge.priced +=
            priced(stored.amount, keep_price(room_, stored.frozen, move.day,
                                             std::min(stored.until, good_.last_day + 1)));
      const Place place = stored.frozen ? Place::freezer : good_.good->cool_place;
      const Volume unit = stored.frozen ? good_.good->room_frozen : good_.good->room_cool;
      for (std::size_t row = 0; row < rows_.room.size(); ++row)
        if (rows_.room[row].first == place && move.day <= rows_.room[row].second &&
            rows_.room[row].second < stored.until)
          edge.room[row] += stored.amount * unit;
    }
    const Fine so_far = nodes_[node].from_start + edge.priced;
    const double to_come = rest(stage + 1, move.next);
    if (std::isinf(to_come)) // demands that nothing can meet any more
      return;
    if (static_cast<double>(so_far) + to_come > static_cast<double>(limit_)) {
      result_.all = false;
      return;
    }
    const auto [it, is_new] = next.try_emplace(move.next, nodes_.size());
    if (is_new)
      nodes_.emplace_back();
    edge.to = it->second;
    nodes_[edge.to].from_start = std::min(nodes_[edge.to].from_start, so_far);
    nodes_[node].edges.push_back(std::move(edge));
    count();
  }

  /// Counts a step of the work.
  void count() {
    ++steps_;
    if (steps_ > most_ || (steps_ % 4096 == 0 && limits_.reached()))
      result_.finished = false;
  }

  /// Way a is no worse than way b whatever else is bought: it takes no more room, spends what it
  /// must, and what b spends more cannot gain more credit than it costs.
  template <typename Way>
  bool beats(const Way& a, const Way& b) const {
    for (std::size_t row = 0; row < a.room.size(); ++row)
      if (a.room[row] > b.room[row])
        return false;
    Cost with_gain = a.cost;
    for (std::size_t row = 0; row < a.spend.size(); ++row) {
      if (a.spend[row] >= b.spend[row])
        continue;
      if (a.spend[row] < rows_.spend[row].least)
        return false;
      with_gain.value += fine(std::min(rows_.spend[row].credit, b.spend[row] - a.spend[row]));
    }
    return with_gain <= b.cost;
  }

  /// Looks at some of the others only: it saves work but nothing depends on it.
  template <typename Way>
  bool beaten(const Way& way, const std::vector<Way>& others) const {
    const std::size_t looks = std::min(others.size(), most_looks);
    const auto beats_way = [&](const Way& other) { return beats(other, way); };
    return std::any_of(others.begin(), others.begin() + static_cast<std::ptrdiff_t>(looks),
                       beats_way) ||
           std::any_of(others.end() - static_cast<std::ptrdiff_t>(looks), others.end(), beats_way);
  }

  /// All paths within the limit, but for those that another path to the same node beats.
  void walk() {
    std::vector<std::vector<Label>> labels(nodes_.size());
    Label first;
    first.room.assign(rows_.room.size(), 0);
    first.spend.assign(rows_.spend.size(), 0);
    labels[0].push_back(first);
    std::vector<std::pair<std::size_t, std::size_t>> ends;
    for (std::size_t node = 0; node < nodes_.size(); ++node) {
      if (nodes_[node].edges.empty() && nodes_[node].to_end == 0)
        for (std::size_t i = 0; i < labels[node].size(); ++i)
          ends.emplace_back(node, i);
      for (std::size_t i = 0; i < labels[node].size(); ++i)
        for (const Edge& edge : nodes_[node].edges) {
          Label next = labels[node][i];
          next.priced += edge.priced;
          if (nodes_[edge.to].to_end == impossible.value)
            continue;
          if (next.priced + nodes_[edge.to].to_end > limit_) {
            result_.all = false;
            continue;
          }
          next.cost += edge.cost;
          for (std::size_t row = 0; row < next.room.size(); ++row)
            next.room[row] += edge.room[row];
          for (std::size_t row = 0; row < next.spend.size(); ++row)
            next.spend[row] += edge.spend[row];
          next.parent_node = node;
          next.parent = i;
          next.edge = &edge;
          std::vector<Label>& others = labels[edge.to];
          if (beaten(next, others))
            continue;
          others.push_back(std::move(next));
          count();
          if (!result_.finished)
            return;
        }
    }
    collect(labels, ends);
  }

  void collect(const std::vector<std::vector<Label>>& labels,
               const std::vector<std::pair<std::size_t, std::size_t>>& ends) {
    for (const auto& [node, i] : ends) {
      const Label* label = &labels[node][i];
      Plan plan{label->cost, label->priced, label->room, label->spend, {}};
      while (label->edge != nullptr) {
        plan.buys.insert(plan.buys.end(), label->edge->buys.begin(), label->edge->buys.end());
        label = &labels[label->parent_node][label->parent];
      }
      std::sort(plan.buys.begin(), plan.buys.end(), [](const Buy& a, const Buy& b) {
        return std::tie(a.visit, a.offer) < std::tie(b.visit, b.offer);
      });
      result_.plans.push_back(std::move(plan));
    }
  }

  void drop_beaten() {
    std::vector<Plan> kept;
    for (Plan& plan : result_.plans) {
      if (!beaten(plan, kept))
        kept.push_back(std::move(plan));
    }
    result_.plans = std::move(kept);
  }

  const Model& model_;
  const Prepared& good_;
  const Rows& rows_;
  std::size_t most_;
  Limits& limits_;
  Stages stages_;
  RoomPrices room_;
  Terms terms_;
  ToGo to_go_;
  Fine limit_ = 0;
  std::size_t steps_ = 0;
  std::vector<Node> nodes_;
  PlanSet result_;
};

} // namespace

PlanSet plans_within(const Model& model, const Prepared& good, const std::vector<bool>& open,
                     const Prices& prices, const Rows& rows, Fine slack, std::size_t most,
                     Limits& limits) {
  return PlanSearch(model, good, open, prices, rows, most, limits).run(slack);
}

} // namespace manciple::purchase
