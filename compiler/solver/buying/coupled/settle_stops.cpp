#include "buying/coupled/settle_stops.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace manciple::buying {
namespace {

/// Networks are built anew while that raises the bound by more than this, but so often at most.
constexpr Fine worth_building = fine(100);
constexpr int most_builds = 3;
/// In which a bound for the networks' plans is made one for all.
constexpr int most_settlings = 5;
constexpr int most_halvings = 2;
/// How much better another node must look to be taken up first.
constexpr Cost a_little{fine(1000), 0};

} // namespace

Settler::Settler(const Model& model, const Table<ItemId, Prepared>& items, const OpenStops& open,
                 NetworkPool& pool, Cost below, WorkBudget& budget, std::size_t size)
    : pool_(pool), with_{model, items, open,   {pool, {}}, DualSearch(model, open, budget),
                         {},    below, budget, size} {}

Settled Settler::settle(bool raise) {
  Settled settled;
  settled.bound = search(raise);
  if (with_.duals.best_cost() < with_.below) {
    settled.cost = with_.duals.best_cost();
    settled.plans = with_.duals.best()->plans;
  }
  return settled;
}

Cost Settler::search(bool raise) {
  Cost proven{std::numeric_limits<Fine>::min() / 4, 0};
  Fine slack = wide;
  for (int builds = 0;; ++builds) {
    auto networks = pool_.take(with_.open, slack, most_edges * with_.size);
    if (!networks) {
      return std::min(proven, best());
    }
    with_.pooled.networks = std::move(*networks);
    with_.duals.use(with_.pooled);
    const DualSearch::Found here = with_.duals.at(pool_.multipliers());
    // Without targets, what the networks lack costs more than their cheapest: a bound for all.
    proven = std::max(proven, here.bound);
    if (proven >= best() || with_.budget.spent()) {
      return std::min(proven, best());
    }
    if (raise && builds < most_builds) {
      const DualSearch::Found there = with_.duals.search(here, best());
      if (there.bound.value - here.bound.value >= worth_building) {
        pool_.set_multipliers(there.at);
        continue;
      }
      raise = false;
    }
    const auto [inside, beyond] = branch(here);
    proven = std::max(proven, std::min(inside, beyond));
    // More than this no plan of anything better can exceed its item's cheapest by.
    const Fine gap = best().value - here.bound.value + 2 * rounding;
    if (inside < best() || beyond >= best() || slack >= gap) {
      return std::min(proven, best());
    }
    // Once more, with whatever may matter.
    slack = gap;
  }
}

/// The targets that look best are followed first (best-first search): a node's multipliers are
/// raised no further than it takes for another one to look better.
Settler::Bounds Settler::branch(const DualSearch::Found& root) {
  std::vector<BranchNode> open{{root, {root.bound, root.beyond}}};
  Bounds closed{impossible, impossible};
  while (!open.empty()) {
    const auto least =
        std::min_element(open.begin(), open.end(), [](const BranchNode& a, const BranchNode& b) {
          return a.bounds.inside < b.bounds.inside;
        });
    BranchNode node = std::move(*least);
    open.erase(least);
    if (node.bounds.inside < best() && !with_.budget.spent()) {
      with_.budget.node();
      Cost below = best();
      for (const BranchNode& other : open) {
        below = std::min(below, other.bounds.inside + a_little);
      }
      node.found = with_.duals.search(std::move(node.found), below);
      const DualSearch::Found& found = node.found;
      node.bounds.inside = std::max(node.bounds.inside, found.bound);
      node.bounds.beyond = std::max(node.bounds.beyond, found.beyond);
      if (found.bound >= below) {
        open.push_back(std::move(node));
        continue;
      }
      if (const std::optional<StopId> stop = undecided(found)) {
        for (const Target target : {Target::reached, Target::missed}) {
          open.push_back({with_.duals.decided(found, *stop, target), node.bounds});
          Bounds& bounds = open.back().bounds;
          bounds.inside = std::max(bounds.inside, open.back().found.bound);
          bounds.beyond = std::max(bounds.beyond, open.back().found.beyond);
        }
        continue;
      }
      // Looks at all plans, and may give up with less than is known.
      const Cost known = std::min(node.bounds.inside, node.bounds.beyond);
      node.bounds.inside = std::max(known, TargetPattern(with_, node.found.at).settle());
      node.bounds.beyond = impossible;
    } else if (node.bounds.inside >= best() && node.bounds.beyond < best()) {
      node.bounds.beyond = std::max(node.bounds.beyond, bound_of_all(node));
    }
    closed.inside = std::min(closed.inside, node.bounds.inside);
    closed.beyond = std::min(closed.beyond, node.bounds.beyond);
  }
  return closed;
}

/// Nearer to the multipliers that the networks are laid out for there is less beyond them, and less
/// that the bound is raised by: somewhere between, it may do. If not, cutting planes with all
/// plans.
Cost Settler::bound_of_all(const BranchNode& node) {
  Cost bound = node.bounds.beyond;
  Multipliers near = pool_.multipliers();
  near.targets = node.found.at.targets;
  for (const StopId stop : ids(near.off)) {
    near.off[stop] = near.targets[stop] == Target::missed ? 0 : near.off[stop];
  }
  // The bound is concave: so far along, it is high enough.
  const double start = static_cast<double>(with_.duals.at(near).bound.value);
  const double rise = static_cast<double>(node.found.bound.value) - start;
  double part =
      rise > 0 ? std::clamp((static_cast<double>(best().value) - start) / rise, 0.0, 1.0) : 1;
  Multipliers far = node.found.at;
  for (int step = 0; step <= most_halvings && bound < best(); ++step, part /= 2) {
    const DualSearch::Found middle = with_.duals.at(between(near, node.found.at, part));
    bound = std::max(bound, middle.beyond);
    if (middle.bound < best()) {
      break;
    }
    far = middle.at;
  }
  for (int round = 0; round < most_settlings && bound < best() && !with_.budget.spent(); ++round) {
    const Cost constant = with_.duals.constant(far);
    Least least =
        least_of_all(with_.model, with_.open, with_.pooled, far, best() - constant, with_.budget);
    bound = std::max(bound, constant + least.cost);
    if (bound < best()) {
      with_.duals.meet(std::move(least.bundle));
    }
    far = with_.duals.peak(far);
  }
  return bound;
}

/// Of the stops whose target is open, the one that is nearest to it.
std::optional<StopId> Settler::undecided(const DualSearch::Found& found) const {
  std::optional<StopId> nearest;
  double least = 0;
  for (const StopId stop : ids(with_.model.stops)) {
    if (!with_.open[stop] || found.at.targets[stop] != Target::open) {
      continue;
    }
    const auto over = static_cast<double>(with_.model.shops[with_.model.stops[stop].shop].over);
    const double away = std::abs(static_cast<double>(found.bundle.spent[stop]) - over) / (over + 1);
    if (!nearest || away < least) {
      nearest = stop;
      least = away;
    }
  }
  return nearest;
}

} // namespace manciple::buying
