#pragma once

#include <vector>

#include "purchase/subproblem.hpp"

namespace manciple::purchase {

/// A lower bound on what the rest of a good will cost: each use that is not served yet at the least
/// price per unit among the visits to come that may serve it.
class ToGo {
public:
  /// Works out the bound for the terms (their charges are left out). The good must stay.
  void prepare(const Prepared& good, const Terms& terms);

  /// For what the group still needs beyond `served`, bought at `visit` or later; infinite if a use
  /// can no longer be served.
  double rest(std::size_t visit, std::size_t group, Amount served) const {
    const std::size_t first = good_->first_unserved(group, served);
    if (first == good_->groups[group].size())
      return 0;
    return after_[visit * stride_ + starts_[group] + first + 1] +
           static_cast<double>(good_->group_ends[group][first] - served) *
               unit_[visit * uses_ + good_->groups[group][first]];
  }
  /// For a whole use, or a part of it, per micro-unit.
  double unit(std::size_t visit, std::size_t use) const { return unit_[visit * uses_ + use]; }
  /// The most that a unit bought at `visit` or later to be kept can be worth beyond its price.
  double gain(std::size_t visit) const { return gain_[visit]; }

private:
  const Prepared* good_ = nullptr;
  std::size_t uses_ = 0;
  /// Of each group there is a place for every use, in order, and one after them.
  std::size_t stride_ = 0;
  std::vector<std::size_t> starts_;
  /// By visit: of a use, and of all from a place in a group on.
  std::vector<double> unit_;
  std::vector<double> after_;
  std::vector<double> gain_;
};

} // namespace manciple::purchase
