#pragma once

#include <algorithm>
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
  /// can no longer be served.
  double rest(std::size_t visit, std::size_t group, Amount served) const {
    const auto ends = ends_.begin();
    const auto at = static_cast<std::size_t>(
        std::upper_bound(ends + static_cast<std::ptrdiff_t>(starts_[group]),
                         ends + static_cast<std::ptrdiff_t>(last_[group]), served) -
        ends);
    if (at == last_[group])
      return 0;
    return after_[visit * stride_ + at + 1] +
           static_cast<double>(ends_[at] - served) * unit_[visit * uses_ + use_at_[at]];
  }
  /// For a whole use, or a part of it, per micro-unit.
  double unit(std::size_t visit, std::size_t use) const { return unit_[visit * uses_ + use]; }
  /// The most that a unit bought at `visit` or later to be kept can be worth beyond its price.
  double gain(std::size_t visit) const { return gain_[visit]; }

private:
  std::size_t uses_ = 0;
  /// The uses group by group, in order, and after each group one that is never served.
  std::size_t stride_ = 0;
  std::vector<std::size_t> starts_;
  std::vector<std::size_t> last_;
  std::vector<std::size_t> use_at_;
  /// What the group has been served when the use is served in full.
  std::vector<Amount> ends_;
  /// By visit: of a use, and of all from a place in a group on.
  std::vector<double> unit_;
  std::vector<double> after_;
  std::vector<double> gain_;
};

} // namespace manciple::purchase
