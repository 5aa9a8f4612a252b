#pragma once

#include <vector>

#include "buying/item/holding.hpp"
#include "buying/item/terms.hpp"

namespace manciple::buying {

/// A lower bound on what the rest of an item will cost: each demand that is not served yet at the
/// least price per unit among the visits to come that may serve it (or at what it costs to do
/// without), less what is held already, which serves whatever is dearest.
class CompletionBound {
public:
  /// Works out the bound for the terms (their charges are left out). The item must stay.
  void prepare(const Prepared& item, const Terms& terms);

  /// Of the demands from `demand` on, with purchases at `visit` and later, if what is held can
  /// serve `reach` units at most. The values that holdings count for as waste and as give are to be
  /// taken off by the caller (see `optimistic`).
  [[nodiscard]] double rest(std::size_t visit, std::size_t demand, double reach) const;

  /// How much of demands what is held can serve at most.
  [[nodiscard]] double reach(const Holding* begin, const Holding* end) const;
  /// What has been counted for holdings and may be given back when they are used.
  [[nodiscard]] Fine refund(const Holding* begin, const Holding* end) const;

private:
  struct Sums {
    /// By demand, of those before it: at the least prices; and the most that serving it is worth.
    std::vector<double> cost;
    std::vector<double> worth;
    /// By demand: the most that serving a unit is worth.
    std::vector<double> unit;
    /// What can be gained at most by buying for what is kept.
    double gain = 0;
  };

  const Prepared* item_ = nullptr;
  /// By visit, and once more for after the last.
  std::vector<Sums> sums_;
  /// By demand: what those before it need, without what gives.
  std::vector<double> needed_;
  double salvage_ = 0;
  double cap_ = 0;
};

} // namespace manciple::buying
