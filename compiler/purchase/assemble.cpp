#include "purchase/assemble.hpp"

#include <algorithm>

#include "purchase/cost.hpp"
#include "purchase/use.hpp"

namespace manciple::purchase {

TillReductions till_reductions(const Model& model, const std::vector<Money>& spent) {
  TillReductions result;
  result.off.assign(model.stops.size(), 0);
  result.credit.assign(model.shops.size(), 0);
  std::vector<Money> to_pay(model.shops.size(), 0);
  for (StopId stop = 0; stop < model.stops.size(); ++stop) {
    const Shop& shop = model.shops[model.stops[stop].shop];
    if (shop.off > 0 && spent[stop] >= shop.over)
      result.off[stop] = shop.off;
    result.sum += result.off[stop];
    to_pay[model.stops[stop].shop] += spent[stop] - result.off[stop];
  }
  for (ShopId shop = 0; shop < model.shops.size(); ++shop) {
    result.credit[shop] = std::min(model.shops[shop].credit, to_pay[shop]);
    result.sum += result.credit[shop];
  }
  return result;
}

Solution assemble(const Model& model, const std::vector<Prepared>& goods,
                  const std::vector<bool>& made, const std::vector<std::vector<Buy>>& buys) {
  Solution solution;
  std::vector<Money> spent(model.stops.size(), 0);
  for (GoodId good = 0; good < goods.size(); ++good) {
    solution.goods.push_back(use_up(goods[good], buys[good]));
    const GoodSolution& one = solution.goods.back();
    for (const Purchase& purchase : one.purchases)
      spent[purchase.stop] += purchase.cost;
    solution.paid += one.spent;
    solution.total_fine += fine(one.spent) + one.waste_value - one.salvage_value;
  }
  TillReductions reductions = till_reductions(model, spent);
  solution.paid -= reductions.sum;
  solution.total_fine -= fine(reductions.sum);
  solution.off = std::move(reductions.off);
  solution.credit = std::move(reductions.credit);
  for (StopId stop = 0; stop < made.size(); ++stop) {
    if (!made[stop])
      continue;
    solution.stops.push_back(stop);
    solution.stop_cost += model.stops[stop].cost;
  }
  solution.total_fine += fine(solution.stop_cost);
  solution.total = to_money(solution.total_fine);
  return solution;
}

} // namespace manciple::purchase
