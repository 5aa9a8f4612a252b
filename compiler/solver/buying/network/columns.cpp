#include "buying/network/columns.hpp"

#include <algorithm>
#include <limits>
#include <tuple>

namespace manciple::buying {
namespace {

/// A path is compared with so many others.
constexpr std::size_t compared_paths = 40;
constexpr std::size_t none = std::numeric_limits<std::size_t>::max();

/// The paths of a network, with what each edge takes of the rows.
class ColumnSearch {
public:
  ColumnSearch(const Network& network, const Tariff& tariff, const Rows& rows, std::size_t most,
               WorkBudget& budget)
      : network_(network),
        rows_(rows),
        most_(most),
        budget_(budget),
        lengths_(network.lengths(tariff)),
        to_end_(network.to_end(lengths_)),
        row_of_stop_(tariff.closed.size(), none) {
    for (std::size_t row = 0; row < rows.spend.size(); ++row) {
      for (const StopId stop : rows.spend[row].stops) {
        row_of_stop_[stop.index()] = row;
      }
    }
  }

  ColumnSet run(Fine slack) {
    if (!is_possible(to_end_[0])) {
      return result_;
    }
    limit_ = slack < impossible.value / 4 ? to_end_[0].value + slack + rounding : impossible.value;
    walk();
    return finish();
  }

  Alike run_like(const Path& path, Fine slack) {
    Label end;
    end.rows = new_rows();
    for (const std::size_t e : path) {
      end.cost += network_.edges()[e].cost;
      end.priced += lengths_[e].value;
      add_taken(network_.edges()[e], end.rows);
    }
    Alike alike{{}, column_of(end, path)};
    const bool spends = std::any_of(rows_.spend.begin(), rows_.spend.end(), [&](const auto& row) {
      return std::any_of(row.stops.begin(), row.stops.end(),
                         [&](StopId stop) { return network_.buys_at(stop); });
    });
    if (spends) {
      alike.set = run(end.priced - to_end_[0].value + slack);
    }
    if (!spends || !alike.set.finished) {
      alike.set.columns = {alike.column};
    }
    return alike;
  }

private:
  std::size_t width() const { return rows_.room.size() + rows_.spend.size(); }

  ColumnSet finish() {
    std::sort(result_.columns.begin(), result_.columns.end(), [](const Column& a, const Column& b) {
      return std::tie(a.priced, a.cost, a.path) < std::tie(b.priced, b.cost, b.path);
    });
    drop_dominated();
    return std::move(result_);
  }

  /// A way to a node.
  struct Label {
    Cost cost;
    Fine priced = 0;
    /// Where its rows begin in the pool: room, then spending.
    std::size_t rows = 0;
    std::size_t parent_node = 0;
    std::size_t parent = 0;
    std::size_t edge = none;
  };

  std::size_t new_rows() {
    pool_.resize(pool_.size() + width(), 0);
    return pool_.size() - width();
  }

  Column column_of(const Label& label, Path path) const {
    const auto begin = pool_.begin() + static_cast<std::ptrdiff_t>(label.rows);
    const auto middle = begin + static_cast<std::ptrdiff_t>(rows_.room.size());
    return {label.cost,
            label.priced,
            {begin, middle},
            {middle, middle + static_cast<std::ptrdiff_t>(rows_.spend.size())},
            std::move(path)};
  }

  /// Adds what an edge takes of the rows that begin here.
  void add_taken(const Network::Edge& edge, std::size_t at) {
    for (std::size_t i = edge.stays; i < edge.stays_end; ++i) {
      for (std::size_t row = 0; row < rows_.room.size(); ++row) {
        pool_[at + row] +=
            network_.room(network_.stays()[i], rows_.room[row].first, rows_.room[row].second);
      }
    }
    for (std::size_t i = edge.paid; i < edge.paid_end; ++i) {
      const std::size_t row = row_of_stop_[network_.paid()[i].stop.index()];
      if (row != none) {
        pool_[at + rows_.room.size() + row] += network_.paid()[i].till;
      }
    }
  }

  /// Way a is no worse than way b whatever else is bought: it takes no more room, spends what it
  /// must, and what b spends more cannot gain more credit than it costs.
  bool dominates(Cost cost, const std::int64_t* room, const std::int64_t* spend, Cost other_cost,
                 const std::int64_t* other_room, const std::int64_t* other_spend) const {
    for (std::size_t row = 0; row < rows_.room.size(); ++row) {
      if (room[row] > other_room[row]) {
        return false;
      }
    }
    for (std::size_t row = 0; row < rows_.spend.size(); ++row) {
      if (spend[row] >= other_spend[row]) {
        continue;
      }
      if (spend[row] < rows_.spend[row].least) {
        return false;
      }
      cost.value += fine(std::min(rows_.spend[row].credit, other_spend[row] - spend[row]));
    }
    return cost <= other_cost;
  }
  bool dominates(const Label& a, const Label& b) const {
    const std::int64_t* first = &pool_[a.rows];
    const std::int64_t* second = &pool_[b.rows];
    const std::size_t rooms = rows_.room.size();
    return dominates(a.cost, first, first + rooms, b.cost, second, second + rooms);
  }
  bool dominates(const Column& a, const Column& b) const {
    return dominates(a.cost, a.room.data(), a.spend.data(), b.cost, b.room.data(), b.spend.data());
  }

  /// Looks at some of the others only: it saves work but nothing depends on it.
  template <typename Way>
  bool dominated(const Way& way, const std::vector<Way>& others) const {
    const std::size_t looks = std::min(others.size(), compared_paths);
    const auto dominates_way = [&](const Way& other) { return dominates(other, way); };
    return std::any_of(others.begin(), others.begin() + static_cast<std::ptrdiff_t>(looks),
                       dominates_way) ||
           std::any_of(others.end() - static_cast<std::ptrdiff_t>(looks), others.end(),
                       dominates_way);
  }

  /// All paths within the limit, but for those that another path to the same node dominates.
  void walk() {
    std::vector<std::vector<Label>> labels(network_.nodes().size());
    Label first;
    first.rows = new_rows();
    labels[0].push_back(first);
    for (std::size_t node = 0; node < labels.size(); ++node) {
      for (std::size_t i = 0; i < labels[node].size(); ++i) {
        const Network::Node& here = network_.nodes()[node];
        if (here.edges == here.edges_end) {
          collect(labels, labels[node][i]);
        }
        for (std::size_t e = here.edges; e < here.edges_end; ++e) {
          if (!extend(labels, node, i, e)) {
            return;
          }
        }
      }
    }
  }

  /// Follows an edge; false to give up.
  bool extend(std::vector<std::vector<Label>>& labels, std::size_t node, std::size_t i,
              std::size_t e) {
    const Network::Edge& edge = network_.edges()[e];
    const Label& label = labels[node][i];
    if (!is_possible(lengths_[e]) || !is_possible(to_end_[edge.to])) {
      return true;
    }
    const Fine priced = label.priced + lengths_[e].value;
    if (priced + to_end_[edge.to].value > limit_) {
      return true;
    }
    const Label next{label.cost + edge.cost, priced, new_rows(), node, i, e};
    std::copy_n(pool_.begin() + static_cast<std::ptrdiff_t>(label.rows), width(),
                pool_.begin() + static_cast<std::ptrdiff_t>(next.rows));
    add_taken(edge, next.rows);
    budget_.add(1);
    std::vector<Label>& others = labels[edge.to];
    if (dominated(next, others)) {
      pool_.resize(next.rows);
      return true;
    }
    others.push_back(next);
    if (++steps_ > most_ || (steps_ % 1024 == 0 && budget_.spent())) {
      result_.finished = false;
    }
    return result_.finished;
  }

  void collect(const std::vector<std::vector<Label>>& labels, const Label& end) {
    Path path;
    for (const Label* label = &end; label->edge != none;
         label = &labels[label->parent_node][label->parent]) {
      path.push_back(label->edge);
    }
    std::reverse(path.begin(), path.end());
    result_.columns.push_back(column_of(end, std::move(path)));
  }

  void drop_dominated() {
    std::vector<Column> kept;
    for (Column& column : result_.columns) {
      if (!dominated(column, kept)) {
        kept.push_back(std::move(column));
      }
    }
    result_.columns = std::move(kept);
  }

  const Network& network_;
  const Rows& rows_;
  std::size_t most_;
  WorkBudget& budget_;
  std::vector<Cost> lengths_;
  std::vector<Cost> to_end_;
  /// The spend row that a stop is part of.
  std::vector<std::size_t> row_of_stop_;
  std::vector<std::int64_t> pool_;
  Fine limit_ = 0;
  std::size_t steps_ = 0;
  ColumnSet result_;
};

} // namespace

ColumnSet columns_within(const Network& network, const Tariff& tariff, const Rows& rows, Fine slack,
                         std::size_t most, WorkBudget& budget) {
  return ColumnSearch(network, tariff, rows, most, budget).run(slack);
}

Alike columns_like(const Network& network, const Tariff& tariff, const Rows& rows, const Path& path,
                   Fine slack, std::size_t most, WorkBudget& budget) {
  return ColumnSearch(network, tariff, rows, most, budget).run_like(path, slack);
}

} // namespace manciple::buying
