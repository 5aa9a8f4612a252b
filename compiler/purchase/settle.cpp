#include "purchase/settle.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace manciple::purchase {
namespace {

/// Networks are built anew while that raises the bound by more than this, but so often at most.
constexpr Fine worth_building = fine(100);
constexpr int most_builds = 3;
/// In which a bound for the networks' plans is made one for all.
constexpr int most_rounds = 5;
constexpr int most_halvings = 2;
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
      const PriceSearch::Found there = with_.search.search(here, best());
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
  std::vector<Node> open{{root, {root.bound, root.beyond}}};
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
      node.found = with_.search.search(std::move(node.found), below);
      const PriceSearch::Found& found = node.found;
      node.bounds.inside = std::max(node.bounds.inside, found.bound);
      node.bounds.beyond = std::max(node.bounds.beyond, found.beyond);
      if (found.bound >= below) {
        open.push_back(std::move(node));
        continue;
      }
      if (const std::optional<StopId> stop = undecided(found)) {
        for (const Target target : {Target::reached, Target::missed}) {
          open.push_back({with_.search.decided(found, *stop, target), node.bounds});
          Bounds& bounds = open.back().bounds;
          bounds.inside = std::max(bounds.inside, open.back().found.bound);
          bounds.beyond = std::max(bounds.beyond, open.back().found.beyond);
        }
        continue;
      }
      // Looks at all plans, and may give up with less than is known.
      const Cost known = std::min(node.bounds.inside, node.bounds.beyond);
      node.bounds.inside = std::max(known, Pattern(with_, node.found.prices).settle());
      node.bounds.beyond = impossible;
    } else if (node.bounds.inside >= best() && node.bounds.beyond < best()) {
      node.bounds.beyond = bound_of_all(node);
    }
    closed.inside = std::min(closed.inside, node.bounds.inside);
    closed.beyond = std::min(closed.beyond, node.bounds.beyond);
  }
  return closed;
}

/// Nearer to the prices that the networks are laid out for there is less beyond them, and less that
/// the bound is raised by: somewhere between, it may do. If not, cutting planes with all plans.
Cost Settler::bound_of_all(const Node& node) {
  Cost bound = node.bounds.beyond;
  Prices near = shelf_.prices();
  near.targets = node.found.prices.targets;
  for (StopId stop = 0; stop < near.off.size(); ++stop)
    near.off[stop] = near.targets[stop] == Target::missed ? 0 : near.off[stop];
  // The bound is concave: so far along, it is high enough.
  const double start = static_cast<double>(with_.search.at(near).bound.value);
  const double rise = static_cast<double>(node.found.bound.value) - start;
  double part =
      rise > 0 ? std::clamp((static_cast<double>(best().value) - start) / rise, 0.0, 1.0) : 1;
  Prices far = node.found.prices;
  for (int step = 0; step <= most_halvings && bound < best(); ++step, part /= 2) {
    const PriceSearch::Found middle = with_.search.at(between(near, node.found.prices, part));
    bound = std::max(bound, middle.beyond);
    if (middle.bound < best())
      break;
    far = middle.prices;
  }
  for (int round = 0; round < most_rounds && bound < best() && !with_.limits.reached(); ++round) {
    const Cost constant = with_.search.constant(far);
    Least least =
        least_of_all(with_.model, with_.made, shelf_, with_.shelved, far, best() - constant);
    bound = std::max(bound, constant + least.cost);
    if (bound < best())
      with_.search.meet(std::move(least.bundle));
    far = with_.search.peak(far);
  }
  return bound;
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
