#pragma once

#include "buying/coupled/combine.hpp"
#include "buying/coupled/dual_search.hpp"

#include <memory>
#include <set>
#include <vector>

namespace manciple::buying {

/// A set of stops that is being settled.
struct Settling {
  const Model& model;
  const Table<ItemId, Prepared>& items;
  const OpenStops& open;
  Pooled pooled;
  DualSearch duals;
  /// Shops whose credit depends on the plans.
  std::set<ShopId> credit_shops;
  /// Only what costs less is looked for.
  Cost below;
  WorkBudget& budget;
  /// How much may be spent on one set of stops.
  std::size_t size;

  [[nodiscard]] Cost best() const { return std::min(below, duals.best_cost()); }
};

/// The best plans when it is decided for each stop whether its reduction is to be reached. At good
/// multipliers, what a plan costs more than its item's cheapest comes on top of the bound, so that
/// only plans within the gap can be part of anything better: all of them are laid out and combined.
/// First those of little excess, then more; and first for rows that are less strict, but leave far
/// fewer columns. What that finds is then shared out among the stops, which mostly meets the strict
/// rows.
class TargetPattern {
public:
  TargetPattern(Settling& with, Multipliers at);

  /// A bound on whatever reaches these targets. What is found is met by the dual search.
  Cost settle();

private:
  /// Lays out all plans of up to this excess. False if that is too much work.
  bool lay_out(Fine slack);
  Cost best() const { return with_.best(); }
  Rows rows(bool strict) const;
  Joint joint(const Rows& rows) const;
  /// Takes note of a combination; true if it breaks limits that were not looked at.
  bool take(const std::vector<ColumnSet>& sets, const std::vector<std::size_t>& column);
  Cost combine_all(bool strict);
  void share_out();

  Settling& with_;
  Multipliers at_;
  std::shared_ptr<const Cover> cover_;
  /// What everything costs if each item follows its cheapest plan at the multipliers. What a plan
  /// exceeds its item's cheapest by comes on top of this (and of nothing that is known otherwise).
  Cost base_{std::numeric_limits<Fine>::min() / 4, 0};
  Cost bound_ = base_;
  /// By item: the best combination found, in the networks that were laid out then.
  std::vector<Path> chosen_;
  std::shared_ptr<const Cover> chosen_in_;
};

} // namespace manciple::buying
