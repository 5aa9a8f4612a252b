#include "buying/coupled/dual_search.hpp"

#include "buying/coupled/cutting_planes.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace manciple::buying {
namespace {

constexpr int most_rounds = 40;
/// The oldest bundles are forgotten beyond this.
constexpr std::size_t most_bundles = 120;
/// Multipliers are good enough if no others can raise the bound by more Money than this.
constexpr double good_enough = 0.01;
/// With less than this to gain, the peak is tried as it is.
constexpr double nearly = 5;
constexpr double last_part = 1;

double in_money(Fine value) {
  return static_cast<double>(value) / static_cast<double>(fine_per_money);
}

} // namespace

void DualSearch::use(const Pooled& pooled) {
  pooled_ = &pooled;
  ways_.clear();
}

void DualSearch::meet(Bundle bundle) {
  add_scarce(bundle);
  if (improves(bundle)) {
    best_cost_ = total_cost(model_, open_, bundle);
    best_ = bundle;
  }
  if (bundles_.size() == most_bundles) {
    bundles_.erase(bundles_.begin());
  }
  bundles_.push_back(std::move(bundle));
  bundles_.back().plans.clear();
}

bool DualSearch::improves(const Bundle& bundle) const {
  return total_cost(model_, open_, bundle) < best_cost_ && fits(model_, bundle);
}

/// Of each place, the night on which most is missing.
void DualSearch::add_scarce(const Bundle& bundle) {
  for (std::size_t place = 0; place < place_count; ++place) {
    std::int64_t worst = 0;
    std::size_t when = 0;
    for (std::size_t night = 0; night < bundle.room[place].size(); ++night) {
      const std::int64_t over =
          bundle.room[place][night] - model_.room[place][night] * amounts_per_unit;
      if (over > worst) {
        worst = over;
        when = night;
      }
    }
    const std::pair row(static_cast<Place>(place), static_cast<Day>(when));
    if (worst > 0 && std::find(scarce_.begin(), scarce_.end(), row) == scarce_.end()) {
      scarce_.push_back(row);
    }
  }
}

Cost DualSearch::constant(const Multipliers& at) const {
  Cost sum{-room_worth(model_, at), 0};
  Table<ShopId, bool> visited(model_.shops.size(), false);
  for (const StopId stop : ids(model_.stops)) {
    if (open_[stop]) {
      visited[model_.stops[stop].shop] = true;
      sum += stop_cost(model_.stops[stop]);
      sum.value -= off_gain(model_, at, stop);
    }
  }
  for (const ShopId shop : ids(model_.shops)) {
    sum.value -= visited[shop] ? credit_gain(model_, at, shop) : 0;
  }
  return sum;
}

DualSearch::Found DualSearch::at(const Multipliers& at) {
  const Cost others = constant(at);
  Found found{at, others, others, empty_bundle(model_)};
  Bundle& bundle = found.bundle;
  Tariff tariff(model_, at, open_);
  const bool known = !ways_.empty();
  const Drop dropped = drop(model_, pooled_->pool.coupling(), pooled_->pool.multipliers(), at);
  Fine change = impossible.value;
  ways_.resize(pooled_->networks.size());
  for (std::size_t item = 0; item < ways_.size(); ++item) {
    const PooledNetwork& pooled = *pooled_->networks[item];
    const Network& network = pooled.network;
    const Cost shortest = known ? network.shortest(tariff, *tariff_, ways_[item])
                                : network.shortest(tariff, ways_[item]);
    found.bound += shortest;
    const Fine beyond = pooled.beyond(dropped);
    const Fine least = std::min(shortest.value, beyond);
    found.beyond.value += least;
    change = std::min(change, beyond - least);
    network.add(ways_[item].path, bundle);
  }
  budget_.add(static_cast<std::int64_t>(ways_.size()));
  tariff_ = std::move(tariff);
  found.beyond.value = std::min(found.beyond.value + change, impossible.value);
  if (improves(bundle)) {
    for (std::size_t item = 0; item < ways_.size(); ++item) {
      bundle.plans.push_back(pooled_->networks[item]->network.plan(ways_[item].path));
    }
  }
  meet(bundle);
  return found;
}

/// Reductions of stops that may be reached, credits, scarce room.
DualSearch::Coordinates DualSearch::coordinates(const Multipliers& like) const {
  const Coupling& coupling = pooled_->pool.coupling();
  const auto most_discount = [&](StopId stop) {
    return static_cast<double>(coupling.most_discount[stop]) / fine_per_money;
  };
  Coordinates out;
  for (const StopId stop : ids(model_.stops)) {
    if (!open_[stop] || like.targets[stop] == Target::missed) {
      continue;
    }
    const Shop& shop = model_.shops[model_.stops[stop].shop];
    out.stops.push_back(stop);
    out.highest.push_back(like.targets[stop] == Target::reached
                              ? most_discount(stop)
                              : std::min(most_discount(stop), static_cast<double>(shop.off) /
                                                                  static_cast<double>(shop.over)));
  }
  for (const ShopId shop : ids(model_.shops)) {
    if (model_.shops[shop].credit > 0) {
      double most = static_cast<double>(model_.shops[shop].credit_worth) / fine_per_money;
      for (const StopId stop : ids(model_.stops)) {
        if (model_.stops[stop].shop == shop) {
          most = std::min(most, most_discount(stop));
        }
      }
      out.shops.push_back(shop);
      out.highest.push_back(most);
    }
  }
  out.highest.resize(out.highest.size() + scarce_.size(), 1);
  return out;
}

/// By coordinate, by how much the bound rises where a bundle is what is bought.
std::vector<double> DualSearch::slope(const Bundle& bundle, const Coordinates& in) const {
  std::vector<double> out;
  Table<ShopId, Money> off(model_.shops.size(), 0);
  for (const StopId stop : in.stops) {
    const ShopId shop = model_.stops[stop].shop;
    off[shop] += model_.shops[shop].off;
    out.push_back(static_cast<double>(model_.shops[shop].over - bundle.spent[stop]));
  }
  for (const ShopId shop : in.shops) {
    Money to_pay = -off[shop] - model_.shops[shop].credit;
    for (const StopId stop : ids(model_.stops)) {
      if (open_[stop] && model_.stops[stop].shop == shop) {
        to_pay += bundle.spent[stop];
      }
    }
    out.push_back(-static_cast<double>(to_pay));
  }
  const double dearest = in_money(pooled_->pool.coupling().dearest_room);
  for (const auto& [place, night] : scarce_) {
    const auto n = static_cast<std::size_t>(night);
    const double litres = static_cast<double>(bundle.room[index(place)][n]) /
                              (amounts_per_unit * microlitres_per_litre) -
                          static_cast<double>(model_.room[index(place)][n]) / microlitres_per_litre;
    out.push_back(dearest * litres);
  }
  return out;
}

/// The multipliers at a point, with the targets of `like`.
Multipliers DualSearch::multipliers(const std::vector<double>& point, const Coordinates& in,
                                    Multipliers like) const {
  const Coupling& coupling = pooled_->pool.coupling();
  const auto price = [&](std::size_t i, Fine most) {
    return static_cast<Fine>(std::clamp(point[i], 0.0, in.highest[i]) * static_cast<double>(most));
  };
  std::size_t i = in.stops.size();
  for (const ShopId shop : in.shops) {
    like.credit[shop] = price(i++, fine_per_money);
  }
  for (const auto& [place, night] : scarce_) {
    like.room[index(place)][static_cast<std::size_t>(night)] = price(i++, coupling.dearest_room);
  }
  for (std::size_t s = 0; s < in.stops.size(); ++s) {
    const StopId stop = in.stops[s];
    like.off[stop] = std::min(price(s, fine_per_money),
                              coupling.most_discount[stop] - like.credit[model_.stops[stop].shop]);
  }
  return like;
}

/// The peak of the planes, as multipliers with the targets of `like`, and its height.
Multipliers DualSearch::proposed(const Multipliers& like, double& value) const {
  const Coordinates in = coordinates(like);
  Multipliers zero = like;
  for (std::vector<Fine>& room : zero.room) {
    room.assign(room.size(), 0);
  }
  zero.credit.assign(zero.credit.size(), 0);
  zero.off.assign(zero.off.size(), 0);
  const double base = in_money(constant(zero).value);
  std::vector<Plane> planes;
  for (const Bundle& bundle : bundles_) {
    planes.push_back({base + in_money(bundle.cost.value), slope(bundle, in)});
  }
  const Peak top = buying::peak(planes, in.highest);
  value = top.value;
  return multipliers(top.at, in, std::move(zero));
}

Multipliers DualSearch::peak(const Multipliers& like) const {
  double value = 0;
  return proposed(like, value);
}

/// What the items cost depends on the target only through its multiplier.
DualSearch::Found DualSearch::decided(Found found, StopId stop, Target target) {
  const Cost before = constant(found.at);
  found.at.targets[stop] = target;
  if (target == Target::missed && std::exchange(found.at.off[stop], 0) > 0) {
    return at(found.at);
  }
  const Cost change = constant(found.at) - before;
  found.bound += change;
  found.beyond += change;
  return found;
}

DualSearch::Found DualSearch::search(Found best, Cost below) {
  double part = 0.5;
  for (int round = 0; round < most_rounds && best.bound < below && !budget_.spent(); ++round) {
    double value = 0;
    const Multipliers top = proposed(best.at, value);
    const double rise = value - in_money(best.bound.value);
    if (rise < good_enough && part == last_part) {
      break;
    }
    // At the end the peak itself is it, to the last digit.
    if (rise < nearly) {
      part = last_part;
    }
    Found next = at(between(best.at, top, part));
    const bool better = next.bound > best.bound;
    if (better) {
      best = std::move(next);
    }
    if (rise >= nearly) {
      part = better ? 0.5 : part < 1 ? 1 : 0.3;
    }
  }
  return best;
}

} // namespace manciple::buying
