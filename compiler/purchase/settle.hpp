#pragma once

#include <map>
#include <set>
#include <string>
#include <vector>

#include "purchase/combine.hpp"

namespace manciple::purchase {

/// What a set of stops really costs when goods are coupled.
struct Settled {
  /// `impossible` if nothing below the given cost was found.
  Cost cost = impossible;
  /// Nothing costs less than this.
  Cost bound = impossible;
  std::vector<std::vector<Buy>> buys;
};

/// Finds the best plans for fixed stops, at given prices with all targets decided. Limits that are
/// not in the way are left out of account until a result breaks them; those that were once broken
/// stay.
class Settler {
public:
  /// Gives a set of stops up after work in proportion to `effort`.
  Settler(const Model& model, Ledger& ledger, const Prices& prices, Limits& limits,
          std::size_t effort);

  /// For the stops made, what costs less than `below`.
  Settled settle(const std::vector<bool>& made, Cost below);

private:
  const PlanSet& plans(GoodId good, const Basket& basket, Fine slack);
  static std::vector<bool> made_of(const Basket& basket);
  bool touches_rows(GoodId good, const std::vector<bool>& made) const;
  void set_spend_rows();
  /// Adds the limits that the solution breaks or misses; false if there are none.
  bool add_broken(const Solution& solution);
  Joint joint(const std::vector<bool>& made) const;

  const Model& model_;
  Ledger& ledger_;
  const Prices& prices_;
  Limits& limits_;
  std::size_t effort_;
  Rows rows_;
  /// Shops whose credit depends on the plans.
  std::set<ShopId> credit_shops_;
  struct Known {
    Fine slack = 0;
    PlanSet set;
  };
  std::vector<std::map<std::string, Known>> known_;
};

} // namespace manciple::purchase
