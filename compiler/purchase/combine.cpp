#include "purchase/combine.hpp"

#include <algorithm>
#include <numeric>

namespace manciple::purchase {
namespace {

constexpr std::size_t narrow_labels = 200;
constexpr std::size_t most_looks = 150;

/// Goods are taken one after the other; a label is one choice of plans for the goods so far.
class Combination {
public:
  Combination(const Model& model, const std::vector<const PlanSet*>& goods, const Joint& joint,
              Cost below, Limits& limits, std::size_t most)
      : model_(model),
        goods_(goods),
        joint_(joint),
        limits_(limits),
        most_(most),
        order_(goods.size()),
        rooms_(joint.room.size()),
        spends_(joint.least_spend.size()) {
    best_.cost = below;
    std::iota(order_.begin(), order_.end(), std::size_t{0});
    // Whose choice moves most comes first: at the end little is open and labels become equal.
    std::stable_sort(order_.begin(), order_.end(), [&](std::size_t a, std::size_t b) {
      return spread(*goods_[a]) > spread(*goods_[b]);
    });
    add_rests();
  }

  /// First with a few labels only, for a good limit, then with all that count.
  Choice run() {
    const Cost below = best_.cost;
    gap_ =
        100 *
        std::min(static_cast<double>(best_.cost.value - joint_.priced_constant - rests_[0].priced),
                 static_cast<double>(fine(100'000)));
    walk(narrow_labels);
    best_.finished = walk(most_);
    if (best_.cost == below)
      best_.cost = impossible;
    return best_;
  }

private:
  struct Label {
    Cost cost;
    Fine priced = 0;
    std::uint32_t parent = 0;
    std::uint32_t plan = 0;
    /// Where its rows begin in the layer's pool.
    std::size_t rows = 0;
  };
  struct Layer {
    std::vector<Label> labels;
    std::vector<std::int64_t> pool;
  };
  /// What the goods from a position on add to each row, at least and at most.
  struct Rest {
    Fine priced = 0;
    std::vector<std::int64_t> least;
    std::vector<std::int64_t> most;
  };

  std::size_t rows() const { return rooms_ + spends_; }
  std::int64_t amount(const Plan& plan, std::size_t row) const {
    return row < rooms_ ? plan.room[row] : plan.spend[row - rooms_];
  }

  double spread(const PlanSet& set) const {
    double widest = 0;
    for (std::size_t row = 0; row < rows(); ++row) {
      std::int64_t least = amount(set.plans[0], row);
      std::int64_t most = least;
      for (const Plan& plan : set.plans) {
        least = std::min(least, amount(plan, row));
        most = std::max(most, amount(plan, row));
      }
      const auto limit = static_cast<double>(
          row < rooms_ ? joint_.room[row]
                       : std::max<Money>(joint_.least_spend[row - rooms_], 10'000));
      widest = std::max(widest, static_cast<double>(most - least) / (limit + 1));
    }
    return widest;
  }

  void add_rests() {
    rests_.assign(goods_.size() + 1, Rest{0, std::vector<std::int64_t>(rows(), 0),
                                          std::vector<std::int64_t>(rows(), 0)});
    for (std::size_t i = goods_.size(); i-- > 0;) {
      const std::vector<Plan>& plans = goods_[order_[i]]->plans;
      rests_[i] = rests_[i + 1];
      rests_[i].priced += plans.front().priced;
      for (std::size_t row = 0; row < rows(); ++row) {
        std::int64_t least = amount(plans[0], row);
        std::int64_t most = least;
        for (const Plan& plan : plans) {
          least = std::min(least, amount(plan, row));
          most = std::max(most, amount(plan, row));
        }
        rests_[i].least[row] += least;
        rests_[i].most[row] += most;
      }
    }
  }

  bool credit_counts(std::size_t spend_row) const {
    return joint_.credit_shop[spend_row].has_value();
  }

  /// Writes the rows of a label with a plan more to the layer's pool, each at the value beyond
  /// which it makes no difference; false if a limit cannot be kept.
  bool add_rows(const Layer& from, const Label& label, const Plan& plan, const Rest& rest,
                Layer& to) const {
    const std::size_t begin = to.pool.size();
    for (std::size_t row = 0; row < rows(); ++row) {
      std::int64_t value = from.pool[label.rows + row] + amount(plan, row);
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
        if (!credit_counts(row - rooms_))
          value = std::min(value, std::max<Money>(0, least - rest.least[row]));
      }
      to.pool.push_back(value);
    }
    return true;
  }

  /// Whatever plans follow, the first label leads to no higher cost.
  bool beats(const Layer& layer, const Label& a, const Label& b) const {
    const std::int64_t* first = layer.pool.data() + a.rows;
    const std::int64_t* second = layer.pool.data() + b.rows;
    for (std::size_t row = 0; row < rooms_; ++row)
      if (first[row] > second[row])
        return false;
    Cost cost = a.cost;
    for (std::size_t row = rooms_; row < rows(); ++row) {
      if (first[row] >= second[row])
        continue;
      const std::size_t spend = row - rooms_;
      if (!credit_counts(spend) || first[row] < joint_.least_spend[spend])
        return false;
      cost.value +=
          fine(std::min(model_.shops[*joint_.credit_shop[spend]].credit, second[row] - first[row]));
    }
    return cost <= b.cost;
  }

  void prune(Layer& layer, const Rest& rest, std::size_t most) const {
    std::sort(layer.labels.begin(), layer.labels.end(), [](const Label& a, const Label& b) {
      if (a.cost != b.cost)
        return a.cost < b.cost;
      return a.parent != b.parent ? a.parent < b.parent : a.plan < b.plan;
    });
    std::size_t kept = 0;
    std::size_t seen = 0;
    for (const Label label : layer.labels) {
      if (++seen % 4096 == 0 && limits_.reached())
        break; // the caller gives up
      bool beaten = false;
      const std::size_t looks = std::min(kept, most_looks);
      for (std::size_t i = 0; i < looks && !beaten; ++i)
        beaten =
            beats(layer, layer.labels[kept - 1 - i], label) || beats(layer, layer.labels[i], label);
      if (!beaten)
        layer.labels[kept++] = label;
    }
    layer.labels.resize(kept);
    if (kept <= most)
      return;
    // The most promising ones: cheap, and on the way to keeping the limits.
    std::vector<std::pair<double, std::size_t>> ranks;
    for (std::size_t i = 0; i < kept; ++i)
      ranks.emplace_back(
          static_cast<double>(layer.labels[i].priced) + strain(layer, layer.labels[i], rest), i);
    std::nth_element(ranks.begin(), ranks.begin() + static_cast<std::ptrdiff_t>(most), ranks.end());
    ranks.resize(most);
    std::sort(ranks.begin(), ranks.end());
    std::vector<Label> best;
    for (const auto& [rank, i] : ranks)
      best.push_back(layer.labels[i]);
    layer.labels = std::move(best);
  }

  /// How far the label is from keeping its limits if the rest takes the middle of its range, as
  /// money on the scale of the gap.
  double strain(const Layer& layer, const Label& label, const Rest& rest) const {
    double sum = 0;
    for (std::size_t row = 0; row < rows(); ++row) {
      const double middle = static_cast<double>(rest.least[row] + rest.most[row]) / 2;
      const double value = static_cast<double>(layer.pool[label.rows + row]) + middle;
      const auto limit =
          static_cast<double>(row < rooms_ ? joint_.room[row] : joint_.least_spend[row - rooms_]);
      const double over = row < rooms_ ? value - limit : limit - value;
      if (over > 0)
        sum += over / (limit + 1);
    }
    return sum * gap_;
  }

  /// False if it gave up or left out labels for being too many.
  bool walk(std::size_t most) {
    layers_.assign(goods_.size() + 1, Layer{});
    Label first;
    first.priced = joint_.priced_constant;
    first.cost = joint_.constant;
    layers_[0].labels.push_back(first);
    layers_[0].pool.assign(rows(), 0);
    bool all = true;
    std::size_t total = 0;
    for (std::size_t i = 0; i < goods_.size(); ++i) {
      Layer& to = layers_[i + 1];
      for (std::size_t l = 0; l < layers_[i].labels.size() && total <= most_; ++l) {
        const std::size_t before = to.labels.size();
        extend(i, l, to);
        total += to.labels.size() - before;
        if (l % 64 == 63 && limits_.reached())
          return false;
      }
      if (total > most_)
        return false;
      prune(to, rests_[i + 1], most);
      all = all && to.labels.size() < most;
      if (limits_.reached())
        return false;
    }
    finish();
    return all;
  }

  void extend(std::size_t i, std::size_t l, Layer& to) {
    const Label label = layers_[i].labels[l];
    const std::vector<Plan>& plans = goods_[order_[i]]->plans;
    for (std::size_t p = 0; p < plans.size(); ++p) {
      const Fine priced = label.priced + plans[p].priced;
      if (priced + rests_[i + 1].priced >= best_.cost.value)
        return; // plans are in order of priced cost
      Label next{label.cost + plans[p].cost, priced, static_cast<std::uint32_t>(l),
                 static_cast<std::uint32_t>(p), to.pool.size()};
      if (add_rows(layers_[i], label, plans[p], rests_[i + 1], to))
        to.labels.push_back(next);
    }
  }

  /// Credit that depends on what is spent.
  Fine credit(const Layer& layer, const Label& label) const {
    std::vector<Money> to_pay(model_.shops.size(), 0);
    std::vector<bool> counts(model_.shops.size(), false);
    for (std::size_t row = 0; row < spends_; ++row) {
      if (!credit_counts(row))
        continue;
      to_pay[*joint_.credit_shop[row]] += layer.pool[label.rows + rooms_ + row];
      counts[*joint_.credit_shop[row]] = true;
    }
    Money sum = 0;
    for (ShopId shop = 0; shop < to_pay.size(); ++shop)
      if (counts[shop])
        sum += std::clamp<Money>(to_pay[shop] - joint_.off[shop], 0, model_.shops[shop].credit);
    return fine(sum);
  }

  /// Takes the best of the labels that all goods have a plan in.
  void finish() {
    for (const Label& last : layers_.back().labels) {
      Cost cost = last.cost;
      cost.value -= credit(layers_.back(), last);
      if (cost >= best_.cost)
        continue;
      best_.cost = cost;
      best_.plan.assign(goods_.size(), 0);
      const Label* label = &last;
      for (std::size_t i = goods_.size(); i-- > 0;) {
        best_.plan[order_[i]] = label->plan;
        label = &layers_[i].labels[label->parent];
      }
    }
  }

  const Model& model_;
  const std::vector<const PlanSet*>& goods_;
  const Joint& joint_;
  Limits& limits_;
  std::size_t most_;
  std::vector<std::size_t> order_;
  std::size_t rooms_;
  std::size_t spends_;
  std::vector<Rest> rests_;
  std::vector<Layer> layers_;
  double gap_ = 0;
  Choice best_;
};

} // namespace

Choice combine(const Model& model, const std::vector<const PlanSet*>& goods, const Joint& joint,
               Cost below, Limits& limits, std::size_t most) {
  return Combination(model, goods, joint, below, limits, most).run();
}

} // namespace manciple::purchase
