#include "purchase/price_search.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "purchase/planes.hpp"

namespace manciple::purchase {
namespace {

constexpr int most_rounds = 40;
/// The oldest bundles are forgotten beyond this.
constexpr std::size_t most_bundles = 120;
/// Prices are good enough if no others can raise the bound by more Money than this.
constexpr double good_enough = 0.01;
/// With less than this to gain, the peak is tried as it is.
constexpr double nearly = 5;
constexpr double last_part = 1;
/// 2 of the currency's unit for a litre and night: far above what room can be worth, and far from
/// what sums of costs can hold.
constexpr double dearest_room = 2e7;

std::size_t index(Place place) {
  return static_cast<std::size_t>(place);
}

double in_money(Fine value) {
  return static_cast<double>(value) / static_cast<double>(fine_per_money);
}

} // namespace

void PriceSearch::use(const std::vector<const Shelved*>& networks, const Prices& prices) {
  networks_ = &networks;
  ways_.clear();
  laid_out_for_ = &prices;
}

void PriceSearch::meet(Bundle bundle) {
  add_scarce(bundle);
  if (improves(bundle)) {
    best_cost_ = total_cost(model_, made_, bundle);
    best_ = bundle;
  }
  if (bundles_.size() == most_bundles)
    bundles_.erase(bundles_.begin());
  bundles_.push_back(std::move(bundle));
  bundles_.back().buys.clear();
}

bool PriceSearch::improves(const Bundle& bundle) const {
  return total_cost(model_, made_, bundle) < best_cost_ && fits(model_, bundle);
}

/// Of each place, the night on which most is missing.
void PriceSearch::add_scarce(const Bundle& bundle) {
  for (std::size_t place = 0; place < place_count; ++place) {
    std::int64_t worst = 0;
    std::size_t when = 0;
    for (std::size_t night = 0; night < bundle.room[place].size(); ++night) {
      const std::int64_t over = bundle.room[place][night] - model_.room[place][night] * 1'000'000;
      if (over > worst) {
        worst = over;
        when = night;
      }
    }
    const std::pair row(static_cast<Place>(place), static_cast<Day>(when));
    if (worst > 0 && std::find(scarce_.begin(), scarce_.end(), row) == scarce_.end())
      scarce_.push_back(row);
  }
}

Cost PriceSearch::constant(const Prices& prices) const {
  Cost sum{-room_worth(model_, prices), 0};
  std::vector<bool> visited(model_.shops.size(), false);
  for (StopId stop = 0; stop < made_.size(); ++stop) {
    if (!made_[stop])
      continue;
    visited[model_.stops[stop].shop] = true;
    sum += stop_cost(model_.stops[stop]);
    sum.value -= off_gain(model_, prices, stop);
  }
  for (ShopId shop = 0; shop < visited.size(); ++shop)
    sum.value -= visited[shop] ? credit_gain(model_, prices, shop) : 0;
  return sum;
}

PriceSearch::Found PriceSearch::at(const Prices& prices) {
  const Cost others = constant(prices);
  Found found{prices, others, others, empty_bundle(model_)};
  Bundle& bundle = found.bundle;
  Tariff rates = tariff(model_, prices, made_);
  const bool known = !ways_.empty();
  const Drop dropped = drop(model_, *laid_out_for_, prices);
  Fine change = impossible.value;
  ways_.resize(networks_->size());
  for (GoodId good = 0; good < ways_.size(); ++good) {
    const Shelved& shelved = *(*networks_)[good];
    const Network& network = shelved.network;
    const Cost shortest =
        known ? network.shortest(rates, rates_, ways_[good]) : network.shortest(rates, ways_[good]);
    found.bound += shortest;
    const Fine beyond = shelved.beyond(dropped);
    const Fine least = std::min(shortest.value, beyond);
    found.beyond.value += least;
    change = std::min(change, beyond - least);
    network.add(ways_[good].path, bundle);
  }
  rates_ = std::move(rates);
  found.beyond.value = std::min(found.beyond.value + change, impossible.value);
  if (improves(bundle))
    for (GoodId good = 0; good < ways_.size(); ++good)
      bundle.buys.push_back((*networks_)[good]->network.buys(ways_[good].path));
  meet(bundle);
  return found;
}

/// The peak of the planes, as prices with the targets of `like`, and its height.
Prices PriceSearch::proposed(const Prices& like, double& value) const {
  // The parts of x: reductions of stops that may be reached, credits, scarce room.
  std::vector<StopId> stops;
  std::vector<ShopId> shops;
  std::vector<double> highest;
  for (StopId stop = 0; stop < made_.size(); ++stop) {
    if (!made_[stop] || like.targets[stop] == Target::missed)
      continue;
    const Shop& shop = model_.shops[model_.stops[stop].shop];
    stops.push_back(stop);
    highest.push_back(like.targets[stop] == Target::reached
                          ? 1
                          : static_cast<double>(shop.off) / static_cast<double>(shop.over));
  }
  for (ShopId shop = 0; shop < model_.shops.size(); ++shop)
    if (model_.shops[shop].credit > 0) {
      shops.push_back(shop);
      highest.push_back(1);
    }
  constexpr double dearest = dearest_room / static_cast<double>(fine_per_money);
  highest.resize(highest.size() + scarce_.size(), 1);

  Prices zero = like;
  for (std::vector<Fine>& room : zero.room)
    room.assign(room.size(), 0);
  zero.credit.assign(zero.credit.size(), 0);
  zero.off.assign(zero.off.size(), 0);
  const double base = in_money(constant(zero).value);
  std::vector<Plane> planes;
  for (const Bundle& bundle : bundles_) {
    Plane plane{base + in_money(bundle.cost.value), {}};
    std::vector<Money> off(model_.shops.size(), 0);
    for (const StopId stop : stops) {
      const ShopId shop = model_.stops[stop].shop;
      off[shop] += model_.shops[shop].off;
      plane.slope.push_back(static_cast<double>(model_.shops[shop].over - bundle.spent[stop]));
    }
    for (const ShopId shop : shops) {
      Money to_pay = -off[shop] - model_.shops[shop].credit;
      for (StopId stop = 0; stop < made_.size(); ++stop)
        if (model_.stops[stop].shop == shop)
          to_pay += bundle.spent[stop];
      plane.slope.push_back(-static_cast<double>(to_pay));
    }
    for (const auto& [place, night] : scarce_) {
      const auto n = static_cast<std::size_t>(night);
      plane.slope.push_back(dearest * (static_cast<double>(bundle.room[index(place)][n]) / 1e6 -
                                       static_cast<double>(model_.room[index(place)][n])));
    }
    planes.push_back(std::move(plane));
  }
  const Peak top = purchase::peak(planes, highest);
  value = top.value;
  const auto price = [&](std::size_t i, double most) {
    return static_cast<Fine>(std::clamp(top.at[i], 0.0, highest[i]) * most);
  };
  Prices result = std::move(zero);
  std::size_t i = stops.size();
  for (const ShopId shop : shops)
    result.credit[shop] = price(i++, static_cast<double>(fine_per_money));
  for (const auto& [place, night] : scarce_)
    result.room[index(place)][static_cast<std::size_t>(night)] = price(i++, dearest_room);
  for (std::size_t s = 0; s < stops.size(); ++s)
    result.off[stops[s]] = std::min(price(s, static_cast<double>(fine_per_money)),
                                    fine_per_money - result.credit[model_.stops[stops[s]].shop]);
  return result;
}

Prices PriceSearch::peak(const Prices& like) const {
  double value = 0;
  return proposed(like, value);
}

/// What the goods cost depends on the target only through its price.
PriceSearch::Found PriceSearch::decided(Found found, StopId stop, Target target) {
  const Cost before = constant(found.prices);
  found.prices.targets[stop] = target;
  if (target == Target::missed && std::exchange(found.prices.off[stop], 0) > 0)
    return at(found.prices);
  const Cost change = constant(found.prices) - before;
  found.bound += change;
  found.beyond += change;
  return found;
}

PriceSearch::Found PriceSearch::search(Found best, Cost below) {
  double part = 0.5;
  for (int round = 0; round < most_rounds && best.bound < below; ++round) {
    double value = 0;
    const Prices top = proposed(best.prices, value);
    const double rise = value - in_money(best.bound.value);
    if (rise < good_enough && part == last_part)
      break;
    // At the end the peak itself is it, to the last digit.
    if (rise < nearly)
      part = last_part;
    Found next = at(between(best.prices, top, part));
    const bool better = next.bound > best.bound;
    if (better)
      best = std::move(next);
    if (rise >= nearly)
      part = better ? 0.5 : part < 1 ? 1 : 0.3;
  }
  return best;
}

} // namespace manciple::purchase
