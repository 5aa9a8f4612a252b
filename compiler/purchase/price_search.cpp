#include "purchase/price_search.hpp"

#include <algorithm>
#include <cmath>

#include "purchase/assemble.hpp"
#include "purchase/use.hpp"

namespace manciple::purchase {
namespace {

constexpr int most_rounds = 60;
constexpr int patience = 3;
/// Steps shorter than this move nothing that matters.
constexpr double least_length = 0.1;
constexpr int most_raises = 12;
/// 2 of the currency's unit for a litre and night: far above what room can be worth, and far from
/// what sums of costs can hold.
constexpr double dearest_room = 2e7;

class PriceSearch {
public:
  PriceSearch(Ledger& ledger, const std::vector<bool>& made, Cost best)
      : model_(ledger.model()), ledger_(ledger), made_(made) {
    for (const bool stop : made)
      states_.push_back(stop ? StopState::open : StopState::closed);
    if (is_possible(best))
      target_ = static_cast<double>(best.value);
  }

  PricesFound run(Prices prices) {
    Prices best = prices;
    double best_bound = -std::numeric_limits<double>::infinity();
    double length = 1;
    int idle = 0;
    for (int round = 0; round < most_rounds; ++round) {
      const Solution now = buy_at(prices);
      const double bound = bound_at(prices);
      if (bound > best_bound) {
        best_bound = bound;
        best = prices;
        idle = 0;
      } else if (++idle == patience) {
        length /= 2;
        if (length < least_length)
          break;
        idle = 0;
        prices = best;
        continue;
      }
      if (target_ - best_bound < static_cast<double>(fine(1)) || !move(prices, now, length, bound))
        break;
    }
    if (!found_.solution)
      raise_until_fit(best);
    set_prices(ledger_, best);
    found_.prices = std::move(best);
    return std::move(found_);
  }

private:
  /// What is bought at the prices.
  Solution buy_at(const Prices& prices) {
    set_prices(ledger_, prices);
    const Basket basket(ledger_, states_);
    std::vector<std::vector<Buy>> buys;
    for (GoodId good = 0; good < ledger_.goods().size(); ++good)
      buys.push_back(basket.outcome(good).buys);
    goods_cost_ = basket.goods_cost().value;
    Solution now = assemble(model_, ledger_.goods(), made_, buys);
    if (is_possible(basket.goods_cost()) && fits_room(model_, ledger_.goods(), now) &&
        (!found_.solution || cost_of(now) < cost_of(*found_.solution))) {
      target_ = std::min(target_, static_cast<double>(now.total_fine));
      found_.solution = now;
      found_.buys = std::move(buys);
    }
    return now;
  }

  double bound_at(const Prices& prices) const {
    Fine bound = goods_cost_ - room_worth(model_, prices);
    std::vector<bool> visited(model_.shops.size(), false);
    for (StopId stop = 0; stop < made_.size(); ++stop) {
      if (!made_[stop])
        continue;
      visited[model_.stops[stop].shop] = true;
      bound += fine(model_.stops[stop].cost) - off_gain(model_, prices, stop);
    }
    for (ShopId shop = 0; shop < visited.size(); ++shop)
      bound -= visited[shop] ? credit_gain(model_, prices, shop) : 0;
    return static_cast<double>(bound);
  }

  /// Where there is room at all, some price is high enough to make use of it.
  void raise_until_fit(Prices prices) {
    for (int raise = 0; raise < most_raises && !found_.solution; ++raise) {
      for (std::vector<Fine>& place : prices.room)
        for (Fine& night : place)
          night = std::min(night + night / 4, static_cast<Fine>(dearest_room));
      buy_at(prices);
    }
  }

  struct Gradient {
    std::array<std::vector<double>, place_count> room;
    std::vector<double> credit;
    std::vector<double> off;
    double norm = 0;

    /// What is free and not scarce stays free.
    double keep(Fine price, double part) {
      const double kept = price == 0 && part < 0 ? 0 : part;
      norm += kept * kept;
      return kept;
    }
  };

  Gradient gradient(const Prices& prices, const Solution& now) const {
    Gradient result;
    const auto taken = all_room_taken(model_, ledger_.goods(), now);
    for (std::size_t place = 0; place < place_count; ++place)
      for (std::size_t night = 0; night < taken[place].size(); ++night)
        result.room[place].push_back(result.keep(
            prices.room[place][night], static_cast<double>(taken[place][night]) / 1e6 -
                                           static_cast<double>(model_.room[place][night])));
    std::vector<double> spent(model_.stops.size(), 0);
    for (const GoodSolution& good : now.goods)
      for (const Purchase& purchase : good.purchases)
        spent[purchase.stop] += static_cast<double>(purchase.cost);
    std::vector<double> credit(model_.shops.size(), 0);
    result.off.assign(model_.stops.size(), 0);
    for (StopId stop = 0; stop < spent.size(); ++stop) {
      if (!made_[stop])
        continue;
      const Shop& shop = model_.shops[model_.stops[stop].shop];
      const bool counted =
          prices.targets[stop] == Target::reached ||
          (prices.targets[stop] == Target::open && off_gain(model_, prices, stop) > 0);
      if (prices.targets[stop] != Target::missed)
        result.off[stop] = result.keep(
            prices.off[stop], (counted ? static_cast<double>(shop.over) : 0) - spent[stop]);
      credit[model_.stops[stop].shop] +=
          (counted ? static_cast<double>(shop.off) : 0) - spent[stop];
    }
    for (ShopId shop = 0; shop < credit.size(); ++shop) {
      const auto most = static_cast<double>(model_.shops[shop].credit);
      result.credit.push_back(most == 0 ? 0
                                        : result.keep(prices.credit[shop], credit[shop] + most));
    }
    return result;
  }

  bool move(Prices& prices, const Solution& now, double length, double bound) const {
    const Gradient to = gradient(prices, now);
    if (to.norm == 0)
      return false;
    const double gap =
        std::isfinite(target_) ? target_ - bound : 0.02 * std::abs(bound) + fine_per_money;
    const double step = length * gap / to.norm;
    const auto moved = [&](Fine price, double part, double most) {
      return static_cast<Fine>(std::clamp(static_cast<double>(price) + step * part, 0.0, most));
    };
    for (std::size_t place = 0; place < place_count; ++place)
      for (std::size_t night = 0; night < prices.room[place].size(); ++night)
        prices.room[place][night] =
            moved(prices.room[place][night], to.room[place][night], dearest_room);
    for (ShopId shop = 0; shop < to.credit.size(); ++shop)
      prices.credit[shop] =
          moved(prices.credit[shop], to.credit[shop], static_cast<double>(fine_per_money));
    for (StopId stop = 0; stop < to.off.size(); ++stop) {
      // No more than the reduction is worth, or than the money itself.
      const Shop& shop = model_.shops[model_.stops[stop].shop];
      const Fine rest = fine_per_money - prices.credit[model_.stops[stop].shop];
      const Fine most = prices.targets[stop] == Target::missed ? 0
                        : prices.targets[stop] == Target::open ? shop.off * rest / shop.over
                                                               : rest;
      prices.off[stop] = moved(prices.off[stop], to.off[stop], static_cast<double>(most));
    }
    return true;
  }

  const Model& model_;
  Ledger& ledger_;
  const std::vector<bool>& made_;
  std::vector<StopState> states_;
  Fine goods_cost_ = 0;
  double target_ = std::numeric_limits<double>::infinity();
  PricesFound found_;
};

} // namespace

PricesFound search_prices(Ledger& ledger, const std::vector<bool>& made, Prices prices, Cost best) {
  return PriceSearch(ledger, made, best).run(std::move(prices));
}

} // namespace manciple::purchase
