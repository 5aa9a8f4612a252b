#pragma once

#include <set>
#include <vector>

#include "purchase/combine.hpp"
#include "purchase/price_search.hpp"

namespace manciple::purchase {

/// What a set of stops really costs when goods are coupled.
struct Settled {
  /// `impossible` if nothing below the given cost was found.
  Cost cost = impossible;
  /// Nothing costs less than this.
  Cost bound = impossible;
  std::vector<std::vector<Buy>> buys;
  /// The best prices while no target is decided.
  Prices prices;
};

/// Finds the best plans for fixed stops. Prices give a bound; what a plan costs more at these
/// prices than its good's cheapest comes on top of it, so that only plans within the gap can be
/// part of anything better. They are laid down in networks, on which everything else is worked out:
/// the search branches on which reductions are reached, and when that is decided, combines plans.
class Settler {
public:
  /// Looks for what costs less than `below`; gives up after work in proportion to `effort`.
  Settler(const Model& model, const std::vector<Prepared>& goods, const std::vector<bool>& made,
          Cost below, Limits& limits, std::size_t effort);

  Settled settle(Prices prices);

private:
  Cost search(Prices& prices);
  enum class Built : std::uint8_t { all, cannot_be, gave_up };
  /// Networks for prices with no target decided.
  Built build(const Prices& prices, Fine slack);
  Fine gap(Cost bound) const;
  bool matters(const Prepared& good) const;

  /// Everything that follows from the targets decided so far; returns a bound.
  Cost branch(Prices prices);
  std::optional<StopId> undecided(const PriceSearch::Found& found) const;
  /// With all targets decided, combines plans: roughly those met, for a good limit; then all that
  /// count, of ever larger excess, for rows that are less strict but have far fewer plans; then for
  /// the rows as they are.
  Cost combine_plans(const PriceSearch::Found& found);
  /// Looks for a good limit among some of the plans; one of `enough` will do.
  void improve(const PriceSearch::Found& found, const std::vector<Path>& start, Cost enough);
  Cost combine_all(const PriceSearch::Found& found, bool strict);
  Rows rows(const PriceSearch::Found& found, bool strict) const;
  Joint joint(const PriceSearch::Found& found, const Rows& rows) const;
  /// Takes note of a combination; true if it breaks limits that were not looked at.
  bool take(const std::vector<PlanSet>& sets, const std::vector<std::size_t>& plan);

  Cost best() const { return std::min(below_, search_.best_cost()); }

  const Model& model_;
  const std::vector<Prepared>& goods_;
  const std::vector<bool>& made_;
  Cost below_;
  Limits& limits_;
  std::size_t effort_;
  std::vector<Network> networks_;
  PriceSearch search_;
  /// By good: the best combination found for rows that are less strict.
  std::vector<Path> chosen_;
  /// Targets for which a good limit has been looked for.
  std::set<std::vector<Target>> improved_;
  /// Shops whose credit depends on the plans.
  std::set<ShopId> credit_shops_;
};

} // namespace manciple::purchase
