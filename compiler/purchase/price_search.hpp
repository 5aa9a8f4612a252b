#pragma once

#include <optional>
#include <vector>

#include "purchase/bundle.hpp"
#include "purchase/prices.hpp"
#include "purchase/shelf.hpp"

namespace manciple::purchase {

/// Prices for stops that are fixed, by cutting planes (Kelley 1960): each bundle of plans met is a
/// plane above the bound as a function of the prices, and the next prices tried are between the
/// best ones so far and the peak of the planes (Wentges 1997). Bundles stay good whatever targets
/// are decided, so that related searches take few rounds.
class PriceSearch {
public:
  PriceSearch(const Model& model, const std::vector<bool>& made) : model_(model), made_(made) {}

  /// The goods' plans from now on, and the prices that they were laid out for.
  void use(const std::vector<const Shelved*>& networks, const Prices& prices);

  struct Found {
    Prices prices;
    /// Nothing made of the networks' plans costs less.
    Cost bound;
    /// Nothing made of any other plans does.
    Cost beyond;
    /// What the goods take at the prices.
    Bundle bundle;
  };
  /// Raises the bound that was found; ends early when it reaches `below`.
  Found search(Found best, Cost below);
  /// The same with one more target decided.
  Found decided(Found found, StopId stop, Target target);

  /// The cheapest possible of all bundles met.
  const std::optional<Bundle>& best() const { return best_; }
  Cost best_cost() const { return best_cost_; }

  /// What is bought at the prices, and the bound. Counts among the bundles met.
  Found at(const Prices& prices);
  /// Where the bound may be highest as far as the bundles met tell, with the targets of `like`.
  Prices peak(const Prices& like) const;
  /// Besides the goods: what stops cost, less what the limits are worth at the prices.
  Cost constant(const Prices& prices) const;
  void meet(Bundle bundle);
  /// Room that some bundle met has exceeded.
  const std::vector<std::pair<Place, Day>>& scarce() const { return scarce_; }

private:
  bool improves(const Bundle& bundle) const;
  Prices proposed(const Prices& like, double& value) const;
  void add_scarce(const Bundle& bundle);

  const Model& model_;
  const std::vector<bool>& made_;
  const std::vector<const Shelved*>* networks_ = nullptr;
  const Prices* laid_out_for_ = nullptr;
  std::vector<Bundle> bundles_;
  /// What things cost the last time, and by good the shortest way then.
  Tariff rates_;
  std::vector<Network::Way> ways_;
  std::vector<std::pair<Place, Day>> scarce_;
  std::optional<Bundle> best_;
  Cost best_cost_ = impossible;
};

} // namespace manciple::purchase
