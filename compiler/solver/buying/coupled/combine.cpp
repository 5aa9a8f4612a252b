#include "buying/coupled/combine.hpp"

#include <algorithm>
#include <numeric>

namespace manciple::buying {
namespace {

/// Of the first walk.
constexpr std::size_t narrow_labels = 200;
/// A label is compared with so many of those that are kept.
constexpr std::size_t compared_labels = 150;
/// After so many labels it is asked whether the budget is spent: in pruning, which looks at each
/// once, and in extending, where each makes many more.
constexpr std::size_t pruned_between_questions = 4096;
constexpr std::size_t extended_between_questions = 64;
/// A label that is a whole limit away from keeping it ranks so many gaps behind, of which none is
/// wider than this, in Money.
constexpr double gaps_a_limit = 100;
constexpr Money widest_gap = 100'000;
/// Below this, limits of what is spent are all the same to the order of the items.
constexpr Money small_limit = 10'000;

/// Items are taken one after the other; a label is one choice of columns for the items so far.
class Combination {
public:
  Combination(const Model& model, const std::vector<const ColumnSet*>& items, const Joint& joint,
              Cost below, WorkBudget& budget, std::size_t most)
      : model_(model),
        items_(items),
        joint_(joint),
        budget_(budget),
        most_(most),
        order_(items.size()),
        rooms_(joint.room.size()),
        spends_(joint.least_spend.size()) {
    best_.cost = below;
    std::iota(order_.begin(), order_.end(), std::size_t{0});
    // Whose choice moves most comes first: at the end little is open and labels become equal.
    std::stable_sort(order_.begin(), order_.end(), [&](std::size_t a, std::size_t b) {
      return spread(*items_[a]) > spread(*items_[b]);
    });
    add_rests();
  }

  /// First with a few labels only, for an upper limit, then with all that count.
  Choice run() {
    const Cost below = best_.cost;
    penalty_ =
        gaps_a_limit *
        std::min(static_cast<double>(best_.cost.value - joint_.priced_constant - rests_[0].priced),
                 static_cast<double>(fine(widest_gap)));
    walk(narrow_labels);
    best_.finished = walk(most_);
    if (best_.cost == below) {
      best_.cost = impossible;
    }
    return best_;
  }

private:
  struct Label {
    Cost cost;
    Fine priced = 0;
    std::uint32_t parent = 0;
    std::uint32_t column = 0;
    /// Where its rows begin in the layer's pool.
    std::size_t rows = 0;
  };
  struct Layer {
    std::vector<Label> labels;
    std::vector<std::int64_t> pool;
  };
  /// What the items from a position on add to each row, at least and at most.
  struct Rest {
    Fine priced = 0;
    std::vector<std::int64_t> least;
    std::vector<std::int64_t> most;
  };

  std::size_t rows() const { return rooms_ + spends_; }
  std::int64_t amount(const Column& column, std::size_t row) const {
    return row < rooms_ ? column.room[row] : column.spend[row - rooms_];
  }

  double spread(const ColumnSet& set) const {
    double widest = 0;
    for (std::size_t row = 0; row < rows(); ++row) {
      std::int64_t least = amount(set.columns[0], row);
      std::int64_t most = least;
      for (const Column& column : set.columns) {
        least = std::min(least, amount(column, row));
        most = std::max(most, amount(column, row));
      }
      const auto limit = static_cast<double>(
          row < rooms_ ? joint_.room[row]
                       : std::max<Money>(joint_.least_spend[row - rooms_], small_limit));
      widest = std::max(widest, static_cast<double>(most - least) / (limit + 1));
    }
    return widest;
  }

  void add_rests() {
    rests_.assign(items_.size() + 1, Rest{0, std::vector<std::int64_t>(rows(), 0),
                                          std::vector<std::int64_t>(rows(), 0)});
    for (std::size_t i = items_.size(); i-- > 0;) {
      const std::vector<Column>& columns = items_[order_[i]]->columns;
      rests_[i] = rests_[i + 1];
      rests_[i].priced += columns.front().priced;
      for (std::size_t row = 0; row < rows(); ++row) {
        std::int64_t least = amount(columns[0], row);
        std::int64_t most = least;
        for (const Column& column : columns) {
          least = std::min(least, amount(column, row));
          most = std::max(most, amount(column, row));
        }
        rests_[i].least[row] += least;
        rests_[i].most[row] += most;
      }
    }
  }

  bool credit_counts(std::size_t spend_row) const {
    return joint_.credit_shop[spend_row].has_value();
  }

  /// Writes the rows of a label with a column more to the layer's pool, each at the value beyond
  /// which it makes no difference; false if a limit cannot be kept.
  bool add_rows(const Layer& from, const Label& label, const Column& column, const Rest& rest,
                Layer& to) const {
    const std::size_t begin = to.pool.size();
    for (std::size_t row = 0; row < rows(); ++row) {
      std::int64_t value = from.pool[label.rows + row] + amount(column, row);
      if (row < rooms_) {
        if (value + rest.least[row] > joint_.room[row]) {
          to.pool.resize(begin);
          return false;
        }
        value = std::max(value, joint_.room[row] - rest.most[row]);
      } else {
        const Money least = joint_.least_spend[row - rooms_];
        if (value + rest.most[row] < least) {
          to.pool.resize(begin);
          return false;
        }
        if (!credit_counts(row - rooms_)) {
          value = std::min(value, std::max<Money>(0, least - rest.least[row]));
        }
      }
      to.pool.push_back(value);
    }
    return true;
  }

  /// Whatever columns follow, the first label leads to no higher cost.
  bool dominates(const Layer& layer, const Label& a, const Label& b) const {
    const std::int64_t* first = layer.pool.data() + a.rows;
    const std::int64_t* second = layer.pool.data() + b.rows;
    for (std::size_t row = 0; row < rooms_; ++row) {
      if (first[row] > second[row]) {
        return false;
      }
    }
    Cost cost = a.cost;
    for (std::size_t row = rooms_; row < rows(); ++row) {
      if (first[row] >= second[row]) {
        continue;
      }
      const std::size_t spend = row - rooms_;
      if (!credit_counts(spend) || first[row] < joint_.least_spend[spend]) {
        return false;
      }
      cost.value +=
          fine(std::min(model_.shops[*joint_.credit_shop[spend]].credit, second[row] - first[row]));
    }
    return cost <= b.cost;
  }

  void prune(Layer& layer, const Rest& rest, std::size_t most) const {
    std::sort(layer.labels.begin(), layer.labels.end(), [](const Label& a, const Label& b) {
      if (a.cost != b.cost) {
        return a.cost < b.cost;
      }
      return a.parent != b.parent ? a.parent < b.parent : a.column < b.column;
    });
    std::size_t kept = 0;
    std::size_t seen = 0;
    for (const Label label : layer.labels) {
      if (++seen % pruned_between_questions == 0 && budget_.spent()) {
        break; // the caller gives up
      }
      bool dominated = false;
      const std::size_t looks = std::min(kept, compared_labels);
      for (std::size_t i = 0; i < looks && !dominated; ++i) {
        dominated = dominates(layer, layer.labels[kept - 1 - i], label) ||
                    dominates(layer, layer.labels[i], label);
      }
      if (!dominated) {
        layer.labels[kept++] = label;
      }
    }
    layer.labels.resize(kept);
    if (kept <= most) {
      return;
    }
    // The most promising ones: cheap, and on the way to keeping the limits.
    std::vector<std::pair<double, std::size_t>> ranks;
    for (std::size_t i = 0; i < kept; ++i) {
      ranks.emplace_back(
          static_cast<double>(layer.labels[i].priced) + strain(layer, layer.labels[i], rest), i);
    }
    std::nth_element(ranks.begin(), ranks.begin() + static_cast<std::ptrdiff_t>(most), ranks.end());
    ranks.resize(most);
    std::sort(ranks.begin(), ranks.end());
    std::vector<Label> best;
    for (const auto& [rank, i] : ranks) {
      best.push_back(layer.labels[i]);
    }
    layer.labels = std::move(best);
  }

  /// How far the label is from keeping its limits if the rest takes the middle of its range, as
  /// money.
  double strain(const Layer& layer, const Label& label, const Rest& rest) const {
    double sum = 0;
    for (std::size_t row = 0; row < rows(); ++row) {
      const double middle = static_cast<double>(rest.least[row] + rest.most[row]) / 2;
      const double value = static_cast<double>(layer.pool[label.rows + row]) + middle;
      const auto limit =
          static_cast<double>(row < rooms_ ? joint_.room[row] : joint_.least_spend[row - rooms_]);
      const double over = row < rooms_ ? value - limit : limit - value;
      if (over > 0) {
        sum += over / (limit + 1);
      }
    }
    return sum * penalty_;
  }

  /// False if it gave up or left out labels for being too many.
  bool walk(std::size_t most) {
    layers_.assign(items_.size() + 1, Layer{});
    Label first;
    first.priced = joint_.priced_constant;
    first.cost = joint_.constant;
    layers_[0].labels.push_back(first);
    layers_[0].pool.assign(rows(), 0);
    bool all = true;
    std::size_t total = 0;
    for (std::size_t i = 0; i < items_.size(); ++i) {
      Layer& to = layers_[i + 1];
      for (std::size_t l = 0; l < layers_[i].labels.size() && total <= most_; ++l) {
        const std::size_t before = to.labels.size();
        extend(i, l, to);
        total += to.labels.size() - before;
        budget_.add(static_cast<std::int64_t>(to.labels.size() - before));
        if ((l + 1) % extended_between_questions == 0 && budget_.spent()) {
          return false;
        }
      }
      if (total > most_) {
        return false;
      }
      prune(to, rests_[i + 1], most);
      all = all && to.labels.size() < most;
      if (budget_.spent()) {
        return false;
      }
    }
    finish();
    return all;
  }

  void extend(std::size_t i, std::size_t l, Layer& to) {
    const Label label = layers_[i].labels[l];
    const std::vector<Column>& columns = items_[order_[i]]->columns;
    for (std::size_t p = 0; p < columns.size(); ++p) {
      const Fine priced = label.priced + columns[p].priced;
      if (priced + rests_[i + 1].priced >= best_.cost.value) {
        return; // columns are in order of priced cost
      }
      Label next{label.cost + columns[p].cost, priced, static_cast<std::uint32_t>(l),
                 static_cast<std::uint32_t>(p), to.pool.size()};
      if (add_rows(layers_[i], label, columns[p], rests_[i + 1], to)) {
        to.labels.push_back(next);
      }
    }
  }

  /// Credit that depends on what is spent.
  Fine credit(const Layer& layer, const Label& label) const {
    Table<ShopId, Money> to_pay(model_.shops.size(), 0);
    Table<ShopId, bool> counts(model_.shops.size(), false);
    for (std::size_t row = 0; row < spends_; ++row) {
      if (!credit_counts(row)) {
        continue;
      }
      to_pay[*joint_.credit_shop[row]] += layer.pool[label.rows + rooms_ + row];
      counts[*joint_.credit_shop[row]] = true;
    }
    Fine sum = 0;
    for (const ShopId shop : ids(to_pay)) {
      if (counts[shop]) {
        sum += std::clamp<Money>(to_pay[shop] - joint_.off[shop], 0, model_.shops[shop].credit) *
               model_.shops[shop].credit_worth;
      }
    }
    return sum;
  }

  /// Takes the best of the labels that all items have a column in.
  void finish() {
    for (const Label& last : layers_.back().labels) {
      Cost cost = last.cost;
      cost.value -= credit(layers_.back(), last);
      if (cost >= best_.cost) {
        continue;
      }
      best_.cost = cost;
      best_.column.assign(items_.size(), 0);
      const Label* label = &last;
      for (std::size_t i = items_.size(); i-- > 0;) {
        best_.column[order_[i]] = label->column;
        label = &layers_[i].labels[label->parent];
      }
    }
  }

  const Model& model_;
  const std::vector<const ColumnSet*>& items_;
  const Joint& joint_;
  WorkBudget& budget_;
  std::size_t most_;
  std::vector<std::size_t> order_;
  std::size_t rooms_;
  std::size_t spends_;
  std::vector<Rest> rests_;
  std::vector<Layer> layers_;
  double penalty_ = 0;
  Choice best_;
};

} // namespace

Choice combine(const Model& model, const std::vector<const ColumnSet*>& items, const Joint& joint,
               Cost below, WorkBudget& budget, std::size_t most) {
  return Combination(model, items, joint, below, budget, most).run();
}

} // namespace manciple::buying
