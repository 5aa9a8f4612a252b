#include "purchase/plans.hpp"

#include <algorithm>
#include <limits>
#include <tuple>

namespace manciple::purchase {
namespace {

constexpr std::size_t most_looks = 40;
constexpr std::size_t none = std::numeric_limits<std::size_t>::max();

/// The paths of a network, with what each edge takes of the rows.
class PlanSearch {
public:
  PlanSearch(const Model& model, const Network& network, const Prices& prices, const Rows& rows,
             std::size_t most, Limits& limits)
      : network_(network),
        rows_(rows),
        most_(most),
        limits_(limits),
        lengths_(network.lengths(model, prices)),
        to_end_(network.to_end(lengths_)) {
    for (const Network::Edge& edge : network_.edges)
      add_taken(edge);
  }

  PlanSet run(Fine slack) {
    result_.all = network_.all;
    if (network_.nodes.empty() || !is_possible(to_end_[0]))
      return result_;
    limit_ = slack < impossible.value - to_end_[0].value ? to_end_[0].value + slack + rounding
                                                         : impossible.value;
    walk();
    return finish();
  }

  PlanSet follow(const std::vector<Path>& paths) {
    for (const Path& path : paths) {
      Plan plan{Cost{}, 0, std::vector<std::int64_t>(rows_.room.size(), 0),
                std::vector<Money>(rows_.spend.size(), 0), path};
      for (const std::size_t e : path) {
        plan.cost += network_.edges[e].cost;
        plan.priced += lengths_[e].value;
        add(plan, e);
      }
      result_.plans.push_back(std::move(plan));
    }
    return finish();
  }

private:
  static bool counts(const Rows::Spend& row, StopId stop) {
    return std::find(row.stops.begin(), row.stops.end(), stop) != row.stops.end();
  }

  PlanSet finish() {
    std::sort(result_.plans.begin(), result_.plans.end(), [](const Plan& a, const Plan& b) {
      return std::tie(a.priced, a.cost) < std::tie(b.priced, b.cost);
    });
    drop_beaten();
    return std::move(result_);
  }

  /// Adds what an edge takes of the rows.
  template <typename Way>
  void add(Way& way, std::size_t e) const {
    for (std::size_t row = 0; row < way.room.size(); ++row)
      way.room[row] += taken_[e].room[row];
    for (std::size_t row = 0; row < way.spend.size(); ++row)
      way.spend[row] += taken_[e].spend[row];
  }
  struct Taken {
    std::vector<std::int64_t> room;
    std::vector<Money> spend;
  };
  struct Label {
    Cost cost;
    Fine priced = 0;
    std::vector<std::int64_t> room;
    std::vector<Money> spend;
    std::size_t parent_node = 0;
    std::size_t parent = 0;
    std::size_t edge = none;
  };

  void add_taken(const Network::Edge& edge) {
    Taken taken{std::vector<std::int64_t>(rows_.room.size(), 0),
                std::vector<Money>(rows_.spend.size(), 0)};
    for (std::size_t i = edge.held; i < edge.held_end; ++i)
      for (std::size_t row = 0; row < rows_.room.size(); ++row)
        taken.room[row] +=
            network_.room(network_.held[i], rows_.room[row].first, rows_.room[row].second);
    for (std::size_t i = edge.paid; i < edge.paid_end; ++i)
      for (std::size_t row = 0; row < rows_.spend.size(); ++row)
        if (counts(rows_.spend[row], network_.paid[i].stop))
          taken.spend[row] += network_.paid[i].money;
    taken_.push_back(std::move(taken));
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
    std::vector<std::vector<Label>> labels(network_.nodes.size());
    Label first;
    first.room.assign(rows_.room.size(), 0);
    first.spend.assign(rows_.spend.size(), 0);
    labels[0].push_back(std::move(first));
    for (std::size_t node = 0; node < labels.size(); ++node)
      for (std::size_t i = 0; i < labels[node].size(); ++i) {
        const Network::Node& here = network_.nodes[node];
        if (here.edges == here.edges_end)
          collect(labels, labels[node][i]);
        for (std::size_t e = here.edges; e < here.edges_end; ++e)
          if (!extend(labels, node, i, e))
            return;
      }
  }

  /// Follows an edge; false to give up.
  bool extend(std::vector<std::vector<Label>>& labels, std::size_t node, std::size_t i,
              std::size_t e) {
    const Network::Edge& edge = network_.edges[e];
    const Label& label = labels[node][i];
    const Fine priced = label.priced + lengths_[e].value;
    if (!is_possible(to_end_[edge.to]) || priced + to_end_[edge.to].value > limit_) {
      result_.all = result_.all && !is_possible(to_end_[edge.to]);
      return true;
    }
    Label next{label.cost + edge.cost, priced, label.room, label.spend, node, i, e};
    add(next, e);
    std::vector<Label>& others = labels[edge.to];
    if (beaten(next, others))
      return true;
    others.push_back(std::move(next));
    if (++steps_ > most_ || (steps_ % 4096 == 0 && limits_.reached()))
      result_.finished = false;
    return result_.finished;
  }

  void collect(const std::vector<std::vector<Label>>& labels, const Label& end) {
    Plan plan{end.cost, end.priced, end.room, end.spend, {}};
    for (const Label* label = &end; label->edge != none;
         label = &labels[label->parent_node][label->parent])
      plan.path.push_back(label->edge);
    std::reverse(plan.path.begin(), plan.path.end());
    result_.plans.push_back(std::move(plan));
  }

  void drop_beaten() {
    std::vector<Plan> kept;
    for (Plan& plan : result_.plans) {
      if (!beaten(plan, kept))
        kept.push_back(std::move(plan));
    }
    result_.plans = std::move(kept);
  }

  const Network& network_;
  const Rows& rows_;
  std::size_t most_;
  Limits& limits_;
  std::vector<Cost> lengths_;
  std::vector<Cost> to_end_;
  std::vector<Taken> taken_;
  Fine limit_ = 0;
  std::size_t steps_ = 0;
  PlanSet result_;
};

} // namespace

PlanSet plans_within(const Model& model, const Network& network, const Prices& prices,
                     const Rows& rows, Fine slack, std::size_t most, Limits& limits) {
  return PlanSearch(model, network, prices, rows, most, limits).run(slack);
}

PlanSet plans_along(const Model& model, const Network& network, const std::vector<Path>& paths,
                    const Prices& prices, const Rows& rows) {
  Limits unlimited{Options{}};
  return PlanSearch(model, network, prices, rows, 0, unlimited).follow(paths);
}

} // namespace manciple::purchase
