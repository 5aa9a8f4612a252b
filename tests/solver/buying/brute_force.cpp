#include "solver/buying/brute_force.hpp"

#include <algorithm>
#include <map>
#include <memory>

#include "buying/item/service.hpp"
#include "buying/item/weighing.hpp"

namespace manciple::buying {
namespace {

/// Notes what a branch takes of what is shared.
struct WayTrack : BlankTrack {
  std::vector<Stay> stays;
  Fine handling = 0;

  void stay(const Stay& stay) {
    if (stay.amount > 0 && stay.until > stay.from) {
      stays.push_back(stay);
    }
  }
};

/// What is spent by stop, and the room taken by place and night: what other items have to do with.
struct Shared {
  std::vector<Money> spent;
  std::vector<std::int64_t> room;
  auto operator<=>(const Shared&) const = default;
};
using Ways = std::map<Shared, Fine>;

class Trials {
public:
  Trials(const Model& model, std::size_t most) : model_(model), most_ways_(most) {
    nights_ = static_cast<std::size_t>(model.last_day) + 1;
  }

  std::optional<Fine> run() {
    Ways all{{{std::vector<Money>(model_.stops.size(), 0),
               std::vector<std::int64_t>(place_count * nights_, 0)},
              0}};
    for (const Item& item : model_.items) {
      const std::optional<Ways> ways = ways_of(item);
      if (!ways || all.size() * ways->size() > 4 * most_ways_) {
        return std::nullopt;
      }
      Ways next;
      for (const auto& [shared, cost] : all) {
        for (const auto& [other, more] : *ways) {
          Shared both = shared;
          for (std::size_t i = 0; i < both.spent.size(); ++i) {
            both.spent[i] += other.spent[i];
          }
          for (std::size_t i = 0; i < both.room.size(); ++i) {
            both.room[i] += other.room[i];
          }
          if (fits(both)) {
            keep(next, std::move(both), cost + more);
          }
        }
      }
      all = std::move(next);
    }
    std::optional<Fine> best;
    for (const auto& [shared, cost] : all) {
      const Fine total = cost + tills(shared);
      best = best ? std::min(*best, total) : total;
    }
    return best;
  }

private:
  static void keep(Ways& ways, Shared shared, Fine cost) {
    const auto [it, is_new] = ways.try_emplace(std::move(shared), cost);
    it->second = std::min(it->second, cost);
  }

  bool fits(const Shared& shared) const {
    for (std::size_t place = 0; place < place_count; ++place) {
      for (std::size_t night = 0; night < model_.room[place].size(); ++night) {
        if (shared.room[place * nights_ + night] > model_.room[place][night] * amounts_per_unit) {
          return false;
        }
      }
    }
    return true;
  }

  /// Stops are made where anything is spent (or always); what the tills take off.
  Fine tills(const Shared& shared) const {
    Fine sum = 0;
    Table<ShopId, Money> to_pay(model_.shops.size(), 0);
    for (const StopId stop : ids(model_.stops)) {
      const Shop& shop = model_.shops[model_.stops[stop].shop];
      const Money spent = shared.spent[stop.index()];
      if (spent > 0 || model_.stops[stop].always) {
        sum += fine(model_.stops[stop].cost);
      }
      const Money off = shop.off > 0 && spent >= shop.over ? shop.off : 0;
      to_pay[model_.stops[stop].shop] += spent - off;
      sum -= fine(off);
    }
    for (const ShopId shop : ids(model_.shops)) {
      sum -= std::min(model_.shops[shop].credit, to_pay[shop]) * model_.shops[shop].credit_worth;
    }
    return sum;
  }

  std::optional<Ways> ways_of(const Item& item) {
    item_ = prepare(model_, item);
    ways_.clear();
    tried_ = 0;
    services_.clear();
    for (std::size_t block = 0; block <= item_.visits.size(); ++block) {
      services_.push_back(std::make_unique<Service<WayTrack>>(
          item_, item_.takes_room ? Lots::apart : Lots::together));
    }
    Branch<WayTrack> start = services_[0]->start();
    const Shared nothing{std::vector<Money>(model_.stops.size(), 0), {}};
    const Fine cost = start.cost;
    start.cost = 0;
    serve(start, 0, nothing, cost);
    if (tried_ > most_ways_) {
      return std::nullopt;
    }
    return ways_;
  }

  void serve(Branch<WayTrack>& branch, std::size_t block, const Shared& shared, Fine cost) {
    services_[block]->run(branch, services_[block]->block(block), [&](const Branch<WayTrack>& way) {
      if (++tried_ > most_ways_) {
        return;
      }
      if (block == item_.visits.size()) {
        Shared all = shared;
        all.room.assign(place_count * nights_, 0);
        for (const Stay& stay : way.track.stays) {
          const Volume unit_ = stay.frozen ? item_.item->room_frozen : item_.item->room_cool;
          const bool limited = !model_.room[index(stay.place)].empty();
          for (Day night = std::max(0, stay.from);
               limited && night < std::min(stay.until, model_.last_day + 1); ++night) {
            all.room[index(stay.place) * nights_ + static_cast<std::size_t>(night)] +=
                stay.amount * unit_;
          }
        }
        if (fits(all)) {
          keep(ways_, std::move(all), cost + way.cost);
        }
        return;
      }
      Branch<WayTrack> next = way;
      buy(next, block, 0, shared, cost);
    });
  }

  void buy(const Branch<WayTrack>& branch, std::size_t visit, std::size_t offer,
           const Shared& shared, Fine cost) {
    if (tried_ > most_ways_) {
      return;
    }
    const Visit& here = item_.visits[visit];
    if (offer == here.offers.size()) {
      Branch<WayTrack> next = branch;
      serve(next, visit + 1, shared, cost);
      return;
    }
    const Offer& facts = item_.item->offers[here.offers[offer]];
    const Shop& shop = model_.shops[model_.stops[here.stop].shop];
    Amount wanted = item_.item->salvage_cap;
    for (const Demand& demand : item_.demands) {
      const bool counted = facts.containers > 0 && demand.containers > 0;
      const Amount held = counted ? facts.pack * demand.containers / facts.containers : 0;
      wanted += std::max(demand.amount, held) + facts.pack;
    }
    std::int64_t most = wanted / facts.pack + 1 + facts.cost.deal_packs;
    if (shop.off > 0) {
      most += shop.over /
                  std::max<Money>(1, std::min(facts.till.packs.each, facts.till.packs.deal > 0
                                                                         ? facts.till.packs.deal / 3
                                                                         : facts.till.packs.each)) +
              3;
    }
    most = std::min<std::int64_t>(most, facts.limit);
    std::vector<Weighing::Weighed> choices{{0, 0}};
    if (facts.by_weight) {
      Weighing weighing(item_);
      for (const Weighing::Weighed& one :
           weighing.choices(branch.held.data(), branch.held.data() + branch.held.size(), visit,
                            here.sources[offer])) {
        choices.push_back(one);
      }
    } else {
      for (int n = 1; n <= most; ++n) {
        choices.push_back({n, n * facts.pack});
      }
    }
    for (const auto& [n, amount] : choices) {
      Branch<WayTrack> next = branch;
      Shared then = shared;
      Fine paid = cost;
      if (n > 0) {
        const Holding bought = unopened_of(here.sources[offer], amount);
        next.cost += value_of(bought.left, item_.item->waste);
        put(next.held, bought);
        paid += fine(facts.cost.of(n));
        then.spent[here.stop.index()] += facts.till.of(n);
      }
      buy(next, visit, offer + 1, then, paid);
    }
  }

  const Model& model_;
  std::size_t most_ways_;
  std::size_t nights_ = 0;
  Prepared item_;
  std::vector<std::unique_ptr<Service<WayTrack>>> services_;
  Ways ways_;
  std::size_t tried_ = 0;
};

} // namespace

std::optional<Fine> least_total(const Model& model, std::size_t most_ways) {
  return Trials(model, most_ways).run();
}

} // namespace manciple::buying
