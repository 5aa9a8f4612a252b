#pragma once

#include <vector>

#include "purchase/good.hpp"
#include "purchase/subproblem.hpp"

namespace manciple::purchase {

/// What is taken off at the tills for what is bought, by stop and by shop.
struct TillReductions {
  std::vector<Money> off;
  std::vector<Money> credit;
  Money sum = 0;
};
/// `spent`: sum of the purchases' costs by stop.
TillReductions till_reductions(const Model& model, const std::vector<Money>& spent);

/// The solution in which these stops are made and each good buys this: everything but what is
/// proven of it (status, bound, counts).
Solution assemble(const Model& model, const std::vector<Prepared>& goods,
                  const std::vector<bool>& made, const std::vector<std::vector<Buy>>& buys);

} // namespace manciple::purchase
