#include "oracle/formulation.hpp"

#include <algorithm>
#include <map>
#include <stdexcept>
#include <tuple>

#include <fmt/format.h>

namespace manciple::oracle {
namespace {

using purchase::Amount;
using purchase::Day;
using purchase::Demand;
using purchase::Good;
using purchase::Model;
using purchase::Offer;
using purchase::Place;
using purchase::StopId;

/// Amounts are in hundreds of units, so that factors stay near one another.
constexpr double hundred = 1e8;
double scaled(Amount amount) {
  return static_cast<double>(amount) / hundred;
}
/// Money of a scaled amount at a price per 1000 units.
double worth(purchase::Money per_thousand) {
  return static_cast<double>(per_thousand) / 10;
}

class Formulation {
public:
  explicit Formulation(const Model& model) : model_(model), spent_(model.stops.size()) {}

  Mip run() {
    for (StopId id = 0; id < model_.stops.size(); ++id) {
      const purchase::Stop& stop = model_.stops[id];
      made_.push_back(mip_.add_binary(fmt::format("y{}", id), static_cast<double>(stop.cost)));
      if (stop.always)
        mip_.equal({{made_.back(), 1}}, 1);
    }
    for (good_ = 0; good_ < model_.goods.size(); ++good_)
      add_good();
    for (const auto& [where, terms] : stored_)
      mip_.at_most(terms, static_cast<double>(
                              model_.room[where.first][static_cast<std::size_t>(where.second)]) /
                              1000);
    add_till();
    return std::move(mip_);
  }

private:
  const Good& good() const { return model_.goods[good_]; }
  std::string name(const char* what, std::size_t i, std::size_t j = 0, std::size_t k = 0) const {
    return fmt::format("{}{}_{}_{}_{}", what, good_, i, j, k);
  }
  bool sold(StopId stop, const Offer& offer) const {
    const purchase::Stop& at = model_.stops[stop];
    return offer.shop == at.shop && offer.first_day <= at.day && at.day <= offer.last_day;
  }
  int cool_age(const Demand& demand) const {
    return std::min(good().keeps_cool, demand.longest_age.value_or(good().keeps_cool));
  }
  bool serves_cool(Day bought, const Demand& demand) const {
    return bought <= demand.day && demand.day - bought <= cool_age(demand);
  }
  bool serves_frozen(Day bought, const Demand& demand) const {
    return bought <= demand.day && demand.takes_frozen &&
           demand.day - bought <= good().keeps_frozen.value_or(-1);
  }
  bool serves(Day bought, const Demand& demand) const {
    return serves_cool(bought, demand) || serves_frozen(bought, demand);
  }
  bool before(std::size_t a, std::size_t b) const {
    const auto rank = [&](std::size_t id) {
      const Demand& demand = good().demands[id];
      const int frozen = demand.takes_frozen ? good().keeps_frozen.value_or(0) : 0;
      return std::tuple(demand.day, std::max(cool_age(demand), frozen), id);
    };
    return rank(a) < rank(b);
  }
  Day kept_day() const { return model_.last_day + good().salvage_days; }
  bool keeps_cool(Day bought) const { return kept_day() - bought <= good().keeps_cool; }
  bool keeps_frozen(Day bought) const {
    return kept_day() - bought <= good().keeps_frozen.value_or(-1);
  }
  Amount all_demands() const {
    Amount sum = 0;
    for (const Demand& demand : good().demands)
      sum += demand.amount;
    return sum;
  }
  /// Packs beyond this cannot pay unless a table makes more packs cheaper.
  int most(const Offer& offer) const {
    if (!offer.cost.table.empty() || spending_pays_)
      return offer.cost.most();
    const auto packs_for = [&](Amount amount) { return (amount + offer.pack - 1) / offer.pack; };
    Amount packs = packs_for(all_demands() + good().salvage_cap);
    if (good().keeps_opened) { // each demand may need packs of its own
      packs = packs_for(good().salvage_cap);
      for (const Demand& demand : good().demands)
        packs += packs_for(demand.amount);
    }
    return static_cast<int>(std::min<Amount>(offer.cost.most(), packs));
  }

  void add_good() {
    spending_pays_ = std::any_of(model_.shops.begin(), model_.shops.end(),
                                 [](const purchase::Shop& shop) { return shop.off > 0; });
    kept_.clear();
    if (good().keeps_opened)
      add_packs();
    else
      add_lots();
    if (good().salvage > 0 && good().salvage_cap > 0 && !kept_.empty()) {
      const std::size_t sold =
          mip_.add(name("sv", 0), -worth(good().salvage), scaled(good().salvage_cap), false);
      Mip::Terms terms{{sold, 1}};
      for (const std::size_t kept : kept_)
        terms.emplace_back(kept, -1);
      mip_.at_most(terms, 0);
    }
  }

  /// A number of packs, with its cost. Adds what they hold to `amount`.
  void add_packs_of(StopId stop, std::size_t id, Mip::Terms& amount) {
    const Offer& offer = good().offers[id];
    const int limit = most(offer);
    if (offer.cost.table.empty()) {
      const auto unit = static_cast<double>(offer.cost.unit);
      const std::size_t packs = mip_.add(name("n", stop, id), unit, limit, true);
      spent_[stop].emplace_back(packs, unit);
      amount.emplace_back(packs, scaled(offer.pack));
      mip_.at_most({{packs, 1}, {made_[stop], -static_cast<double>(limit)}}, 0);
      return;
    }
    Mip::Terms one{{made_[stop], -1}};
    for (int n = 1; n <= limit; ++n) {
      const auto cost = static_cast<double>(offer.cost.of(n));
      const std::size_t chosen =
          mip_.add_binary(name("t", stop, id, static_cast<std::size_t>(n)), cost);
      spent_[stop].emplace_back(chosen, cost);
      amount.emplace_back(chosen, scaled(offer.pack * n));
      one.emplace_back(chosen, 1);
    }
    mip_.at_most(one, 0);
  }

  /// What is bought on one day.
  struct Lot {
    Day day = 0;
    /// Columns of what flows to each demand (none where it cannot) and of what is left.
    std::vector<std::optional<std::size_t>> to;
    std::size_t left = 0;
  };

  void add_lots() {
    std::map<Day, Mip::Terms> bought;
    std::map<Day, Mip::Terms> open;
    for (StopId stop = 0; stop < model_.stops.size(); ++stop) {
      for (std::size_t id = 0; id < good().offers.size(); ++id)
        if (sold(stop, good().offers[id])) {
          const Day day = model_.stops[stop].day;
          add_packs_of(stop, id, bought[day]);
          open[day].emplace_back(made_[stop], 1);
        }
    }
    std::vector<Mip::Terms> met(good().demands.size());
    std::vector<Lot> lots;
    for (auto& [day, balance] : bought) {
      Lot lot;
      lot.day = day;
      for (std::size_t d = 0; d < good().demands.size(); ++d) {
        const Demand& demand = good().demands[d];
        lot.to.emplace_back();
        if (!serves(day, demand))
          continue;
        const std::size_t flow =
            mip_.add(name("x", static_cast<std::size_t>(day), d), 0, scaled(demand.amount), false);
        lot.to.back() = flow;
        met[d].emplace_back(flow, 1);
        balance.emplace_back(flow, -1);
        store(flow, day, demand.day, !serves_cool(day, demand));
        // Tightens the relaxation: nothing flows from a day without a stop.
        Mip::Terms tie{{flow, 1}};
        for (const auto& [stop, factor] : unique(open[day]))
          tie.emplace_back(stop, -scaled(demand.amount) * factor);
        mip_.at_most(tie, 0);
      }
      const bool kept = keeps_cool(day) || keeps_frozen(day);
      lot.left = mip_.add(name("l", static_cast<std::size_t>(day)), kept ? 0 : worth(good().waste),
                          infinite, false);
      balance.emplace_back(lot.left, -1);
      if (kept)
        kept_.push_back(lot.left);
      store(lot.left, day, kept ? model_.last_day + 1 : day + good().keeps_cool + 1,
            kept && !keeps_cool(day));
      mip_.equal(balance, 0);
      lots.push_back(lot);
    }
    for (std::size_t d = 0; d < met.size(); ++d)
      mip_.equal(met[d], scaled(good().demands[d].amount));
    if (takes_limited_room())
      add_rule_of_use(lots);
  }

  static Mip::Terms unique(Mip::Terms terms) {
    std::sort(terms.begin(), terms.end());
    terms.erase(std::unique(terms.begin(), terms.end()), terms.end());
    return terms;
  }

  bool limited(Place place) const { return !model_.room[static_cast<std::size_t>(place)].empty(); }
  bool takes_limited_room() const {
    return (good().room_cool > 0 && limited(good().cool_place)) ||
           (good().room_frozen > 0 && good().keeps_frozen && limited(Place::freezer));
  }

  void store(std::size_t column, Day from, Day until, bool frozen) {
    const Place place = frozen ? Place::freezer : good().cool_place;
    const double unit = static_cast<double>(frozen ? good().room_frozen : good().room_cool) / 10;
    if (!limited(place) || unit == 0)
      return;
    for (Day night = from; night < until && night <= model_.last_day; ++night)
      stored_[{static_cast<std::size_t>(place), night}].emplace_back(column, unit);
  }

  /// An older lot that may serve a demand has served nothing later, and has nothing left, if a
  /// newer one serves it.
  void add_rule_of_use(const std::vector<Lot>& lots) {
    const double plenty = 1e4;
    std::vector<std::vector<std::size_t>> uses;
    std::vector<std::size_t> leaves;
    for (std::size_t i = 0; i < lots.size(); ++i) {
      uses.emplace_back();
      for (std::size_t d = 0; d < good().demands.size(); ++d) {
        uses[i].push_back(mip_.add_binary(name("u", i, d)));
        if (lots[i].to[d])
          mip_.at_most({{*lots[i].to[d], 1}, {uses[i][d], -scaled(good().demands[d].amount)}}, 0);
      }
      leaves.push_back(mip_.add_binary(name("ul", i)));
      mip_.at_most({{lots[i].left, 1}, {leaves[i], -plenty}}, 0);
    }
    for (std::size_t older = 0; older < lots.size(); ++older)
      for (std::size_t newer = older + 1; newer < lots.size(); ++newer)
        for (std::size_t d = 0; d < good().demands.size(); ++d) {
          if (!lots[older].to[d] || !lots[newer].to[d])
            continue;
          mip_.at_most({{leaves[older], 1}, {uses[newer][d], 1}}, 1);
          for (std::size_t later = 0; later < good().demands.size(); ++later)
            if (before(d, later) && lots[older].to[later])
              mip_.at_most({{uses[older][later], 1}, {uses[newer][d], 1}}, 1);
        }
  }

  /// One pack of an opened good that may be bought.
  struct Pack {
    StopId stop = 0;
    Day day = 0;
    std::size_t offer = 0;
    /// Whether it serves a demand; the last is "kept".
    std::vector<std::optional<std::size_t>> serves;
  };

  void add_packs() {
    if (takes_limited_room())
      throw std::invalid_argument("opened packs in limited room are not formulated");
    std::vector<Pack> packs;
    std::vector<Mip::Terms> met(good().demands.size());
    for (StopId stop = 0; stop < model_.stops.size(); ++stop)
      for (std::size_t id = 0; id < good().offers.size(); ++id)
        if (sold(stop, good().offers[id]))
          add_packs_at(stop, id, packs, met);
    for (std::size_t d = 0; d < met.size(); ++d)
      mip_.equal(met[d], scaled(good().demands[d].amount));
    for (std::size_t a = 0; a < packs.size(); ++a)
      for (std::size_t b = a + 1; b < packs.size(); ++b)
        add_order(packs[a], packs[b], a, b);
  }

  void add_packs_at(StopId stop, std::size_t id, std::vector<Pack>& packs,
                    std::vector<Mip::Terms>& met) {
    const Offer& offer = good().offers[id];
    const int slots = offer.by_weight ? 1 : most(offer);
    std::optional<std::size_t> last;
    for (int slot = 1; slot <= slots; ++slot) {
      const auto number = static_cast<std::size_t>(slot);
      const std::size_t bought = mip_.add_binary(name("b", stop, id, number));
      mip_.at_most({{bought, 1}, {made_[stop], -1}}, 0);
      if (last)
        mip_.at_most({{bought, 1}, {*last, -1}}, 0);
      last = bought;
      Mip::Terms balance;
      if (offer.by_weight) {
        add_packs_of(stop, id, balance);
        const Mip::Terms amounts = balance;
        for (const auto& [column, factor] : amounts)
          mip_.at_most({{column, 1}, {bought, -static_cast<double>(most(offer))}}, 0);
      } else {
        const auto cost = static_cast<double>(offer.cost.of(slot) - offer.cost.of(slot - 1));
        mip_.columns[bought].cost = cost;
        spent_[stop].emplace_back(bought, cost);
        balance.emplace_back(bought, scaled(offer.pack));
      }
      packs.push_back(add_pack(stop, id, number, bought, balance, met));
    }
  }

  Pack add_pack(StopId stop, std::size_t id, std::size_t number, std::size_t bought,
                Mip::Terms balance, std::vector<Mip::Terms>& met) {
    Pack pack{stop, model_.stops[stop].day, id, {}};
    const std::size_t frozen = mip_.add_binary(name("f", stop, id, number));
    const std::size_t kept_id = good().demands.size();
    const auto add_use = [&](std::size_t d, bool cool, bool if_frozen, double most_of_it) {
      pack.serves.emplace_back();
      if (!cool && !if_frozen)
        return;
      const auto tag = number * 100 + d;
      const std::size_t use = mip_.add_binary(name("u", stop, id, tag));
      const std::size_t flow = mip_.add(name("x", stop, id, tag), 0, infinite, false);
      pack.serves.back() = use;
      mip_.at_most({{use, 1}, {bought, -1}}, 0);
      mip_.at_most({{flow, 1}, {use, -most_of_it}}, 0);
      if (!cool)
        mip_.at_most({{use, 1}, {frozen, -1}}, 0);
      if (!if_frozen)
        mip_.at_most({{use, 1}, {frozen, 1}}, 1);
      balance.emplace_back(flow, -1);
      if (d == kept_id)
        kept_.push_back(flow);
      else
        met[d].emplace_back(flow, 1);
    };
    for (std::size_t d = 0; d < kept_id; ++d) {
      const Demand& demand = good().demands[d];
      add_use(d, serves_cool(pack.day, demand), serves_frozen(pack.day, demand),
              scaled(demand.amount));
    }
    add_use(kept_id, keeps_cool(pack.day), keeps_frozen(pack.day), 1e4);
    const std::size_t wasted =
        mip_.add(name("w", stop, id, number), worth(good().waste), infinite, false);
    balance.emplace_back(wasted, -1);
    mip_.equal(balance, 0);
    for (std::size_t d = 0; d < kept_id; ++d)
      for (std::size_t e = 0; e <= kept_id; ++e) {
        const Day later = e == kept_id ? kept_day() : good().demands[e].day;
        if (pack.serves[d] && pack.serves[e] &&
            later - good().demands[d].day > *good().keeps_opened)
          mip_.at_most({{*pack.serves[d], 1}, {*pack.serves[e], 1}}, 1);
      }
    return pack;
  }

  /// One pack after the other: the first serves nothing later than the second does. On one day
  /// either may be the first.
  void add_order(const Pack& a, const Pack& b, std::size_t i, std::size_t j) {
    const std::size_t kept_id = good().demands.size();
    const auto later = [&](std::size_t d, std::size_t e) {
      return d != kept_id && (e == kept_id || before(d, e));
    };
    const bool same = a.day == b.day;
    std::optional<std::size_t> first; // 1: a is used before b
    if (same && (a.offer != b.offer || a.stop != b.stop))
      first = mip_.add_binary(name("o", i, j));
    const bool a_first = a.day <= b.day;
    for (std::size_t d = 0; d <= kept_id; ++d)
      for (std::size_t e = 0; e <= kept_id; ++e) {
        if (!later(d, e))
          continue;
        if (a.serves[e] && b.serves[d] && (first || a_first)) {
          Mip::Terms terms{{*a.serves[e], 1}, {*b.serves[d], 1}};
          if (first)
            terms.emplace_back(*first, 1);
          mip_.at_most(terms, first ? 2 : 1);
        }
        if (b.serves[e] && a.serves[d] && (first || !a_first)) {
          Mip::Terms terms{{*b.serves[e], 1}, {*a.serves[d], 1}};
          if (first)
            terms.emplace_back(*first, -1);
          mip_.at_most(terms, 1);
        }
      }
  }

  void add_till() {
    std::vector<Mip::Terms> paid(model_.shops.size());
    for (StopId id = 0; id < model_.stops.size(); ++id) {
      const std::size_t shop_id = model_.stops[id].shop;
      const purchase::Shop& shop = model_.shops[shop_id];
      paid[shop_id].insert(paid[shop_id].end(), spent_[id].begin(), spent_[id].end());
      if (shop.off == 0)
        continue;
      const auto off = static_cast<double>(shop.off);
      const std::size_t reached = mip_.add_binary(fmt::format("v{}", id), -off);
      Mip::Terms terms{{reached, static_cast<double>(shop.over)}};
      for (const auto& [column, cost] : spent_[id])
        terms.emplace_back(column, -cost);
      mip_.at_most(terms, 0);
      paid[shop_id].emplace_back(reached, -off);
    }
    for (std::size_t id = 0; id < model_.shops.size(); ++id) {
      if (model_.shops[id].credit == 0)
        continue;
      const std::size_t credit =
          mip_.add(fmt::format("c{}", id), -1, static_cast<double>(model_.shops[id].credit), false);
      Mip::Terms terms{{credit, 1}};
      for (const auto& [column, cost] : paid[id])
        terms.emplace_back(column, -cost);
      mip_.at_most(terms, 0);
    }
  }

  const Model& model_;
  Mip mip_;
  std::size_t good_ = 0;
  bool spending_pays_ = false;
  std::vector<std::size_t> made_;
  /// By stop: what is spent there.
  std::vector<Mip::Terms> spent_;
  /// What is kept of the good at hand.
  std::vector<std::size_t> kept_;
  std::map<std::pair<std::size_t, Day>, Mip::Terms> stored_;
};

} // namespace

Mip formulate(const Model& model) {
  return Formulation(model).run();
}

} // namespace manciple::oracle
