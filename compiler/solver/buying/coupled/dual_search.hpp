#pragma once

#include "buying/network/price_change_cover.hpp"

#include <optional>
#include <vector>

namespace manciple::buying {

/// Multipliers for stops that are fixed, by cutting planes (Kelley 1960): each bundle of plans met
/// is a plane above the bound as a function of the multipliers, and the next ones tried are between
/// the best so far and the dual optimum of the planes (Wentges 1997). Bundles stay good whatever
/// targets are decided, so that related searches take few rounds.
class DualSearch {
public:
  DualSearch(const Model& model, const OpenStops& open, WorkBudget& budget)
      : model_(model), open_(open), budget_(budget) {}

  /// The items' plans from now on.
  void use(const Pooled& pooled);

  struct Found {
    Multipliers at;
    /// Nothing made of the networks' plans costs less.
    Cost bound;
    /// Nothing made of any other plans does.
    Cost beyond;
    /// What the items take at the multipliers.
    Bundle bundle;
  };
  /// Raises the bound that was found; ends early when it reaches `below`.
  Found search(Found best, Cost below);
  /// The same with one more target decided.
  Found decided(Found found, StopId stop, Target target);

  /// The incumbent: the cheapest possible of all bundles met.
  [[nodiscard]] const std::optional<Bundle>& best() const { return best_; }
  [[nodiscard]] Cost best_cost() const { return best_cost_; }

  /// What is bought at the multipliers, and the bound. Counts among the bundles met.
  Found at(const Multipliers& at);
  /// Where the bound may be highest as far as the bundles met tell, with the targets of `like`.
  [[nodiscard]] Multipliers peak(const Multipliers& like) const;
  /// Besides the items: what stops cost, less what the limits are worth.
  [[nodiscard]] Cost constant(const Multipliers& at) const;
  void meet(Bundle bundle);
  /// Room that some bundle met has exceeded.
  [[nodiscard]] const std::vector<std::pair<Place, Day>>& scarce() const { return scarce_; }

private:
  /// What the bound is looked at as a function of, and how high each goes.
  struct Coordinates {
    std::vector<StopId> stops; ///< the multipliers of their reductions
    std::vector<ShopId> shops; ///< those of their credit
    /// Of the stops, the shops and then the scarce room.
    std::vector<double> highest;
  };

  [[nodiscard]] bool improves(const Bundle& bundle) const;
  [[nodiscard]] Coordinates coordinates(const Multipliers& like) const;
  [[nodiscard]] std::vector<double> slope(const Bundle& bundle, const Coordinates& in) const;
  [[nodiscard]] Multipliers multipliers(const std::vector<double>& point, const Coordinates& in,
                                        Multipliers like) const;
  Multipliers proposed(const Multipliers& like, double& value) const;
  void add_scarce(const Bundle& bundle);

  const Model& model_;
  const OpenStops& open_;
  WorkBudget& budget_;
  const Pooled* pooled_ = nullptr;
  std::vector<Bundle> bundles_;
  /// What things cost the last time, and by item the shortest way then.
  std::optional<Tariff> tariff_;
  std::vector<Network::Way> ways_;
  std::vector<std::pair<Place, Day>> scarce_;
  std::optional<Bundle> best_;
  Cost best_cost_ = impossible;
};

} // namespace manciple::buying
