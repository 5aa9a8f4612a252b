#pragma once

#include <optional>
#include <vector>

#include "purchase/prices.hpp"

namespace manciple::purchase {

struct PricesFound {
  Prices prices;
  /// The cheapest solution met on the way that breaks no limit.
  std::optional<Solution> solution;
  std::vector<std::vector<Buy>> buys;
};

/// Raises and lowers the prices of room, credit and reductions along the subgradient while that
/// raises the bound for the stops made (step length after Polyak 1969). The ledger is left with the
/// prices found. `best` is the least total known.
PricesFound search_prices(Ledger& ledger, const std::vector<bool>& made, Prices prices, Cost best);

} // namespace manciple::purchase
