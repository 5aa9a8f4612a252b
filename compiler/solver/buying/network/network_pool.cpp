#include "buying/network/network_pool.hpp"

#include <algorithm>

namespace manciple::buying {
namespace {

double part_lost(Fine before, Fine after) {
  return after < before ? static_cast<double>(before - after) / static_cast<double>(before) : 0;
}

/// The most that can be spent at a visit on packs that each serve something. Packs of no use cost
/// more than nothing (see Coupling::most_discount), and a plan without them serves the same.
std::vector<Money> most_useful(const Prepared& item) {
  std::vector<Money> result;
  for (const Visit& visit : item.visits) {
    Money most = 0;
    for (std::size_t o = 0; o < visit.offers.size(); ++o) {
      const Offer& offer = item.item->offers[visit.offers[o]];
      const int packs = item.useful_packs[visit.sources[o]];
      most += std::max(packs * offer.till.packs.each, offer.till.of(packs));
    }
    result.push_back(most);
  }
  return result;
}

} // namespace

Drop drop(const Model& model, const Coupling& coupling, const Multipliers& from,
          const Multipliers& to) {
  Drop result;
  for (const StopId stop : ids(model.stops)) {
    // What a pack costs may be less than what is spent on it, but not by more than this.
    const Fine least = coupling.most_discount[stop];
    const Fine before = discount(model, from, stop);
    const Fine after = discount(model, to, stop);
    result.money.push_back(std::max<Fine>(0, after - before));
    result.stop.push_back(part_lost(least - before, least - after));
  }
  for (std::size_t place = 0; place < place_count; ++place) {
    for (std::size_t night = 0; night < from.room[place].size(); ++night) {
      result.place[place] =
          std::max(result.place[place], part_lost(from.room[place][night], to.room[place][night]));
    }
  }
  return result;
}

/// Where only money counts less: a plan that is no path is cheaper by what is spent on what is of
/// use. If it buys what is of no use besides, and would be a path without that, then that is what
/// takes it beyond `longest`, and it is cheaper by the lost part of that, which is at most the
/// slack (or more, but then by less than it exceeds the slack).
///
/// Otherwise: whatever a plan's cost is made of is not less than the part that is not lost, but for
/// salvage, which is the same and at most that of the cap.
Fine PooledNetwork::beyond(const Drop& drop) const {
  if (!longest) {
    return impossible.value;
  }
  const Prepared& item = network.item();
  double lost = 0;
  for (const Source& source : item.sources) {
    lost = std::max(lost, drop.place[index(source.place)]);
  }
  lost = std::max(lost, drop.place[index(Place::freezer)]);
  const bool only_money = lost == 0;
  Fine saved = 0;
  for (std::size_t v = 0; v < item.visits.size(); ++v) {
    const StopId stop = item.visits[v].stop;
    lost = std::max(lost, drop.stop[stop]);
    saved += drop.money[stop] * useful[v];
  }
  if (lost == 0) {
    return *longest;
  }
  const Fine salvage = value_of(item.item->salvage_cap, item.item->salvage);
  const auto part = [&](Fine of) { return static_cast<Fine>(lost * static_cast<double>(of)); };
  const Fine all = part(*longest + salvage);
  return *longest - (only_money ? std::min(all, saved + part(slack)) : all) - rounding;
}

NetworkPool::NetworkPool(SubproblemCache& cache, const Coupling& coupling, OpenStops may_be_open,
                         const Multipliers& at)
    : cache_(cache),
      coupling_(coupling),
      may_be_open_(std::move(may_be_open)),
      pool_(cache_.items().size()),
      too_large_(cache_.items().size()) {
  set_multipliers(at);
}

void NetworkPool::set_multipliers(const Multipliers& at) {
  at_ = at;
  cache_.set_multipliers(at);
  tariff_.emplace(cache_.model(), at_, may_be_open_);
  for (std::optional<PooledNetwork>& network : pool_) {
    network.reset();
  }
  for (std::optional<TooLarge>& one : too_large_) {
    one.reset();
  }
}

/// The item can have to do with room or with reductions.
bool NetworkPool::matters(const Prepared& item) const {
  const Model& model = cache_.model();
  return item.takes_room ||
         std::any_of(item.visits.begin(), item.visits.end(), [&](const Visit& visit) {
           const Shop& shop = model.shops[model.stops[visit.stop].shop];
           return may_be_open_[visit.stop] && (shop.off > 0 || shop.credit > 0);
         });
}

void NetworkPool::lay_out(Fine slack, std::size_t most) {
  (void)take(may_be_open_, slack, most);
}

std::optional<Outcome> NetworkPool::at_least(ItemId item, const Terms& terms) {
  if (!pool_[item]) {
    return std::nullopt;
  }
  const Network& network = pool_[item]->network;
  const std::vector<Visit>& visits = network.item().visits;
  charge_.assign(cache_.model().stops.size(), Cost{});
  bool charged = false;
  for (std::size_t v = 0; v < visits.size(); ++v) {
    const Cost charge = terms.charge[v];
    tariff_->closed[visits[v].stop.index()] = is_possible(charge) ? 0 : 1;
    charged = charged || (is_possible(charge) && charge != Cost{});
    charge_[visits[v].stop] = charge;
  }
  const Cost least =
      charged ? network.shortest(*tariff_, charge_, way_) : network.shortest(*tariff_, way_);
  if (!is_possible(least)) {
    return std::nullopt;
  }
  // Charges only make plans that are no paths dearer.
  const Cost sure{network.least() + pool_[item]->slack, 0};
  return Outcome{least, std::min(least, sure), network.plan(way_.path)};
}

std::optional<std::vector<const PooledNetwork*>> NetworkPool::take(const OpenStops& open,
                                                                   Fine slack, std::size_t most) {
  std::vector<const PooledNetwork*> taken;
  const Model& model = cache_.model();
  const Tariff tariff(model, at_, open);
  Network::Way way;
  for (const ItemId id : ids(pool_)) {
    if (cache_.budget().spent()) {
      return std::nullopt;
    }
    const Prepared& item = cache_.items()[id];
    const bool counts = matters(item);
    std::optional<PooledNetwork>& pooled = pool_[id];
    const Fine wanted = counts ? slack : 0;
    const auto enough = [&] {
      const Cost least = pooled->network.shortest(tariff, way);
      return is_possible(least) && pooled->network.least() + pooled->slack - least.value >= wanted;
    };
    if (!pooled || !enough()) {
      const auto& failed = too_large_[id];
      if (failed && failed->slack <= wanted && most <= failed->edges) {
        return std::nullopt;
      }
      const RoomRates room = room_rates(model, at_, *item.item);
      const auto least_of = [&](const OpenStops& stops) {
        const Terms terms = terms_at(model, item, at_, stops, room);
        return cheapest(item, terms, cache_.workspace(), cache_.budget().work());
      };
      // Either may be no more than an upper limit and a bound.
      const Outcome of_all = least_of(may_be_open_);
      const Cost of_these = open == may_be_open_ ? of_all.cost : least_of(open).cost;
      const Fine more = of_these.value - of_all.bound.value + 2 * rounding;
      std::vector<bool> visits;
      for (const Visit& visit : item.visits) {
        visits.push_back(may_be_open_[visit.stop]);
      }
      pooled.emplace(PooledNetwork{
          Network(model, item, visits, at_, wanted + more, most, cache_.budget(), of_all.cost),
          std::nullopt, wanted + more, most_useful(item)});
      if (!pooled->network.finished()) {
        pooled.reset();
        too_large_[id] = TooLarge{wanted + more, most};
        return std::nullopt;
      }
      if (counts) {
        pooled->longest = pooled->network.least() + pooled->slack;
      }
    }
    taken.push_back(&*pooled);
  }
  return taken;
}

} // namespace manciple::buying
