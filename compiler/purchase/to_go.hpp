#pragma once

#include <vector>

#include "purchase/subproblem.hpp"

namespace manciple::purchase {

/// A lower bound on what the rest of a good will cost: each use that is not served yet at the least
/// price per unit among the visits to come that may serve it.
class ToGo {
public:
  /// Works out the bound for the terms (their charges are left out).
  void prepare(const Prepared& good, const Terms& terms);

  /// For what the group still needs beyond `served`, bought at `visit` or later; infinite if a use
  /// can no longer be served. `first` is the position within the group of the first use that is
  /// not served in full.
  double rest(const Prepared& good, std::size_t visit, std::size_t group, std::size_t first,
              Amount served) const {
    const double* sums = &after_[visit * stride_ + starts_[group]];
    if (first >= good.groups[group].size())
      return 0;
    const Use& use = good.uses[good.groups[group][first]];
    return sums[first + 1] + static_cast<double>(use.before + use.amount - served) *
                                 unit_[visit * uses_ + good.groups[group][first]];
  }
  /// For a whole use, or a part of it, per micro-unit.
  double unit(std::size_t visit, std::size_t use) const { return unit_[visit * uses_ + use]; }
  /// The most that a unit bought at `visit` or later to be kept can be worth beyond its price.
  double gain(std::size_t visit) const { return gain_[visit]; }

private:
  std::size_t uses_ = 0;
  std::size_t stride_ = 0;
  std::vector<std::size_t> starts_;
  std::vector<double> unit_;
  std::vector<double> after_;
  std::vector<double> gain_;
};

} // namespace manciple::purchase
