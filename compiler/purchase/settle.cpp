#include "purchase/settle.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace manciple::purchase {
namespace {

/// Edges of a good's network after which a set of stops is left open, for an effort of 1.
constexpr std::size_t most_edges = 200'000;
/// Excess that networks are built for at first: 30 cents of a dollar.
constexpr Fine wide = fine(3'000);
/// Networks are built anew while that raises the bound by more than this, but so often at most.
constexpr Fine worth_building = fine(100);
constexpr int most_builds = 3;
/// In which a bound for the networks' plans is made one for all.
constexpr int most_rounds = 5;
constexpr int most_halvings = 4;
/// How much better another node must look to be taken up first.
constexpr Cost a_little{fine(1000), 0};

} // namespace

Settler::Settler(const Model& model, const std::vector<Prepared>& goods,
                 const std::vector<bool>& made, Shelf& shelf, Cost below, Limits& limits,
                 std::size_t effort)
    : shelf_(shelf), with_{model, goods, made,   shelf, {}, PriceSearch(model, made),
                           {},    below, limits, effort} {}

Settled Settler::settle(bool raise) {
  Settled settled;
  settled.bound = search(raise);
  if (with_.search.best_cost() < with_.below) {
    settled.cost = with_.search.best_cost();
    settled.buys = with_.search.best()->buys;
  }
  return settled;
}

Cost Settler::search(bool raise) {
  Cost proven{std::numeric_limits<Fine>::min() / 4, 0};
  Fine slack = wide;
  for (int builds = 0;; ++builds) {
    const Shelf::Got got = shelf_.take(with_.made, slack, most_edges * with_.effort, with_.shelved);
    if (got != Shelf::Got::all)
      return got == Shelf::Got::cannot_be ? impossible : proven;
    with_.search.use(with_.shelved, shelf_.prices());
    const PriceSearch::Found here = with_.search.at(shelf_.prices());
    proven = std::max(proven, here.bound);
    if (proven >= best() || with_.limits.reached())
      return std::min(proven, best());
    if (raise && builds < most_builds) {
      const PriceSearch::Found there = with_.search.search(here.prices, best());
      if (there.bound.value - here.bound.value >= worth_building) {
        shelf_.set_prices(there.prices);
        continue;
      }
      raise = false;
    }
    const auto [inside, beyond] = branch(here);
    proven = std::max(proven, std::min(inside, beyond));
    const Fine gap = best().value - here.bound.value + 2 * rounding;
    if (inside < best() || beyond >= best() || slack >= gap)
      return std::min(proven, best());
    // Once more, with whatever may matter.
    slack = gap;
  }
}

/// The targets that look best are followed first (best-first search): a node's prices are raised no
/// further than it takes for another one to look better.
Settler::Bounds Settler::branch(const PriceSearch::Found& root) {
  std::vector<Node> open{{root.prices, {root.bound, root.beyond}}};
  Bounds closed{impossible, impossible};
  while (!open.empty()) {
    const auto least = std::min_element(open.begin(), open.end(), [](const Node& a, const Node& b) {
      return a.bounds.inside < b.bounds.inside;
    });
    Node node = std::move(*least);
    open.erase(least);
    if (node.bounds.inside < best() && !with_.limits.reached()) {
      Cost below = best();
      for (const Node& other : open)
        below = std::min(below, other.bounds.inside + a_little);
      const PriceSearch::Found found = with_.search.search(node.prices, below);
      node.prices = found.prices;
      node.bounds.inside = std::max(node.bounds.inside, found.bound);
      node.bounds.beyond = std::max(node.bounds.beyond, found.beyond);
      if (found.bound >= below) {
        open.push_back(std::move(node));
        continue;
      }
      if (const std::optional<StopId> stop = undecided(found)) {
        for (const Target target : {Target::reached, Target::missed}) {
          open.push_back(node);
          open.back().prices.targets[*stop] = target;
          if (target == Target::missed)
            open.back().prices.off[*stop] = 0;
        }
        continue;
      }
      node.bounds.inside = Pattern(with_, node.prices).settle();
      node.bounds.beyond = impossible;
    } else if (node.bounds.inside >= best() && node.bounds.beyond < best()) {
      node.bounds.beyond = bound_of_all(node);
    }
    closed.inside = std::min(closed.inside, node.bounds.inside);
    closed.beyond = std::min(closed.beyond, node.bounds.beyond);
  }
  return closed;
}

/// Cutting planes once more, with all plans.
Cost Settler::bound_of_all(const Node& node) {
  Cost bound = node.bounds.beyond;
  Prices prices = moderate(node);
  for (int round = 0; round < most_rounds; ++round) {
    Least least = least_of_all(with_.model, with_.made, shelf_, with_.shelved, prices);
    bound = std::max(bound, with_.search.constant(prices) + least.cost);
    if (bound >= best() || with_.limits.reached())
      break;
    with_.search.meet(std::move(least.bundle));
    prices = with_.search.peak(prices);
  }
  return bound;
}

/// Prices between those that the networks are laid out for and the node's, at which its bound is
/// not much better than it must be: the nearer they are, the less there is beyond the networks.
Prices Settler::moderate(const Node& node) {
  const Cost enough{best().value + (node.bounds.inside.value - best().value) / 4, 0};
  Prices near = shelf_.prices();
  near.targets = node.prices.targets;
  for (StopId stop = 0; stop < near.off.size(); ++stop)
    near.off[stop] = near.targets[stop] == Target::missed ? 0 : near.off[stop];
  Prices far = node.prices;
  for (int step = 0; step < most_halvings; ++step) {
    Prices middle = between(near, far, 0.5);
    (with_.search.at(middle).bound < enough ? near : far) = std::move(middle);
  }
  return far;
}

/// Of the stops whose target is open, the one that is nearest to it.
std::optional<StopId> Settler::undecided(const PriceSearch::Found& found) const {
  std::optional<StopId> nearest;
  double least = 0;
  for (StopId stop = 0; stop < with_.made.size(); ++stop) {
    if (!with_.made[stop] || found.prices.targets[stop] != Target::open)
      continue;
    const auto over = static_cast<double>(with_.model.shops[with_.model.stops[stop].shop].over);
    const double away = std::abs(static_cast<double>(found.bundle.spent[stop]) - over) / (over + 1);
    if (!nearest || away < least) {
      nearest = stop;
      least = away;
    }
  }
  return nearest;
}

} // namespace manciple::purchase
