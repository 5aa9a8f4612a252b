#pragma once

#include <limits>
#include <memory>
#include <set>
#include <vector>

#include "purchase/combine.hpp"
#include "purchase/cover.hpp"
#include "purchase/price_search.hpp"

namespace manciple::purchase {

/// A set of stops that is being settled.
struct Settling {
  const Model& model;
  const std::vector<Prepared>& goods;
  const std::vector<bool>& made;
  const Shelf& shelf;
  std::vector<const Shelved*> shelved;
  PriceSearch search;
  /// Shops whose credit depends on the plans.
  std::set<ShopId> credit_shops;
  /// Only what costs less is looked for.
  Cost below;
  Limits& limits;
  std::size_t effort;

  Cost best() const { return std::min(below, search.best_cost()); }
};

/// The best plans when it is decided for each stop whether its reduction is to be reached. At good
/// prices, what a plan costs more than its good's cheapest comes on top of the bound, so that only
/// plans within the gap can be part of anything better: all of them are laid out and combined.
/// First those of little excess, then more; and first for rows that are less strict, but leave far
/// fewer plans. What that finds is then shared out among the stops, which mostly meets the strict
/// rows.
class Pattern {
public:
  Pattern(Settling& with, Prices prices);

  /// A bound on whatever reaches these targets. What is found is met by the price search.
  Cost settle();

private:
  /// False if that is too much work.
  bool lay_out(Fine slack);
  Fine gap() const;
  Cost best() const { return with_.best(); }
  Rows rows(bool strict) const;
  Joint joint(const Rows& rows) const;
  /// Takes note of a combination; true if it breaks limits that were not looked at.
  bool take(const std::vector<PlanSet>& sets, const std::vector<std::size_t>& plan);
  Cost combine_all(bool strict);
  void share_out();

  Settling& with_;
  Prices prices_;
  std::shared_ptr<const Cover> cover_;
  Cost bound_{std::numeric_limits<Fine>::min() / 4, 0};
  /// By good: the best combination found, in the networks that were laid out then.
  std::vector<Path> chosen_;
  std::shared_ptr<const Cover> chosen_in_;
};

} // namespace manciple::purchase
