#include "solver/buying/check.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include <fmt/format.h>

namespace manciple::buying {
namespace {

using Findings = std::vector<std::string>;
using Taken = std::map<std::pair<Place, Day>, std::int64_t>;

/// One pack (or one loose lot) of a purchase or of stock.
struct Pack {
  bool stock = false;
  std::size_t of = 0;
  int pack = 0;
  auto operator<=>(const Pack&) const = default;
};

class ItemCheck {
public:
  ItemCheck(const Model& model, const Solution& solution, ItemId id, Findings& findings)
      : model_(model),
        solution_(solution),
        item_(model.items[id]),
        found_(solution.items[id]),
        id_(id),
        findings_(findings) {}

  bool run(Taken& taken) {
    if (!purchases()) {
      return false;
    }
    packs();
    servings(taken);
    leftovers(taken);
    demands();
    sums();
    return true;
  }

private:
  template <typename... Args>
  bool expect(bool holds, fmt::format_string<Args...> text, Args&&... args) {
    if (!holds) {
      findings_.push_back(
          fmt::format("item {}: {}", id_.index(), fmt::format(text, std::forward<Args>(args)...)));
    }
    return holds;
  }

  bool purchases() {
    std::set<std::pair<StopId, OfferId>> seen;
    for (const Purchase& purchase : found_.purchases) {
      if (!expect(purchase.stop < model_.stops.end_id() && purchase.offer < item_.offers.end_id(),
                  "a purchase names no stop or offer")) {
        return false;
      }
      const Stop& stop = model_.stops[purchase.stop];
      const Offer& offer = item_.offers[purchase.offer];
      expect(seen.insert({purchase.stop, purchase.offer}).second, "bought twice at a stop");
      expect(std::find(solution_.stops.begin(), solution_.stops.end(), purchase.stop) !=
                 solution_.stops.end(),
             "bought at a stop that is not made");
      expect(offer.shop == stop.shop && offer.first_day <= stop.day() &&
                 stop.day() <= offer.last_day,
             "an offer is not to be had at the stop");
      expect(purchase.packs >= 1 && purchase.packs <= offer.limit, "{} packs", purchase.packs);
      expect(purchase.cost == offer.cost.of(purchase.packs) &&
                 purchase.till == offer.till.of(purchase.packs) &&
                 (offer.by_weight ? purchase.amount > (purchase.packs - 1) * offer.pack &&
                                        purchase.amount <= purchase.packs * offer.pack
                                  : purchase.amount == purchase.packs * offer.pack),
             "cost or amount of a purchase is wrong");
    }
    return true;
  }

  const Life& life(const Pack& pack) const {
    return pack.stock ? item_.stock[LotId(pack.of)].life : offer(pack).life;
  }
  const Offer& offer(const Pack& pack) const {
    return item_.offers[found_.purchases[pack.of].offer];
  }
  Day home(const Pack& pack) const {
    return pack.stock ? 0 : model_.stops[found_.purchases[pack.of].stop].day();
  }
  Minute home_at(const Pack& pack) const {
    return pack.stock ? -1 : model_.stops[found_.purchases[pack.of].stop].at;
  }
  bool stands_in_freezer(const Pack& pack) const {
    return pack.stock && item_.stock[LotId(pack.of)].is_thawed();
  }
  Place place(const Pack& pack) const {
    return pack.stock ? item_.stock[LotId(pack.of)].place : offer(pack).place;
  }
  Place place_after_thawing(const Pack& pack) const {
    return stands_in_freezer(pack) ? item_.stock[LotId(pack.of)].thawed_in : place(pack);
  }
  static Pack pack_of(const Fate& fate) { return {fate.stock, fate.of, fate.pack}; }

  /// What every pack holds, and that its parts add up to it.
  void packs() {
    for (std::size_t i = 0; i < found_.purchases.size(); ++i) {
      const Purchase& purchase = found_.purchases[i];
      const Offer& from = item_.offers[purchase.offer];
      const int count = from.life.opened && !from.by_weight ? purchase.packs * from.inside : 1;
      for (int n = 0; n < count; ++n) {
        holds_[{false, i, n}] = purchase.amount / count;
      }
    }
    for (const LotId lot : ids(item_.stock)) {
      const int count = item_.stock[lot].life.opened ? item_.stock[lot].packs : 1;
      for (int n = 0; n < count; ++n) {
        holds_[{true, lot.index(), n}] = item_.stock[lot].amount / count;
      }
    }
    std::map<Pack, Amount> parts;
    const auto add = [&](const auto& list) {
      for (const Fate& fate : list) {
        expect(fate.amount > 0, "a part of nothing");
        parts[pack_of(fate)] += fate.amount;
      }
    };
    add(found_.servings);
    add(found_.kept);
    add(found_.wastes);
    expect(parts == holds_, "the parts of what is held do not add up");
  }

  void stay(Taken& taken, Amount amount, Place where, bool frozen, Day from, Day until) const {
    const Volume unit = frozen ? item_.room_frozen : item_.room_cool;
    for (Day night = std::max(0, from); night < until && night <= model_.last_day; ++night) {
      taken[{where, night}] += amount * unit;
    }
  }

  void servings(Taken& taken) {
    std::map<Pack, std::tuple<Day, bool, Day>> opened;
    std::map<DemandId, bool> from_freezer;
    for (const Serving& serving : found_.servings) {
      if (!expect(serving.demand < item_.demands.end_id(), "a serving of no demand")) {
        return;
      }
      const Demand& demand = item_.demands[serving.demand];
      const Pack pack = pack_of(serving);
      const Life& lasts = life(pack);
      const Day by = demand.day - demand.slack;
      const Day cool_until = home(pack) + lasts.cool;
      expect(home_at(pack) <= demand.at, "used before it is bought");
      expect(home(pack) + lasts.ready <= demand.day, "used before it is ready");
      expect(!serving.frozen || demand.takes_frozen, "demand {} is served frozen",
             serving.demand.index());
      expect(serving.frozen || !stands_in_freezer(pack), "from the freezer as if it were not");
      if (lasts.opened.has_value() != serving.opened_on.has_value()) {
        // Stock that was open from the start has no day.
        expect(pack.stock && item_.stock[LotId(pack.of)].opened_until, "not opened");
      }
      if (!lasts.opened) {
        expect(serving.frozen ? by <= home(pack) + lasts.frozen.value_or(-home(pack) - 1)
                              : by <= cool_until,
               "demand {} is served too old", serving.demand.index());
      } else if (serving.opened_on && *serving.opened_on >= 0) {
        opened_pack(serving, demand, pack, cool_until);
        const std::tuple state(*serving.opened_on, serving.whole, Day{0});
        expect(opened.emplace(pack, state).first->second == state, "opened twice");
      } else {
        expect(by <= *item_.stock[LotId(pack.of)].opened_until, "opened too long ago");
      }
      room_of(taken, serving, demand, pack);
      from_freezer[serving.demand] = from_freezer[serving.demand] || serving.frozen;
    }
  }

  void opened_pack(const Serving& serving, const Demand& demand, const Pack& pack, Day cool_until) {
    const Life& lasts = life(pack);
    const Day by = demand.day - demand.slack;
    const Day opened = *serving.opened_on;
    expect(opened >= home(pack) && opened <= demand.day, "opened on an impossible day");
    if (serving.whole) {
      expect(lasts.frozen && opened <= home(pack) + *lasts.frozen && by <= opened + *lasts.opened,
             "a thawed pack is used too late");
    } else if (!serving.frozen) {
      expect(by <= std::min(opened + *lasts.opened, cool_until), "an opened pack is used too late");
      expect(opened <= cool_until, "opened when it was no longer good");
    } else {
      const bool at_once = opened == home(pack) && serving.frozen_on == opened && lasts.frozen &&
                           by <= home(pack) + *lasts.frozen;
      const bool later = lasts.refrozen && serving.frozen_on == opened && opened <= cool_until &&
                         by <= opened + *lasts.refrozen;
      expect(at_once || later, "a frozen portion is used too late");
    }
  }

  void room_of(Taken& taken, const Serving& serving, const Demand& demand, const Pack& pack) const {
    Day in = demand.day;
    Day out = demand.day;
    if (stands_in_freezer(pack) || serving.whole) {
      in = home(pack);
      out = serving.whole ? *serving.opened_on : demand.day;
    } else if (serving.frozen) {
      in = serving.frozen_on;
    }
    if (demand.give > 0) {
      return; // what gives takes no room, and is not told apart here
    }
    stay(taken, serving.amount, place(pack), false, home(pack), in);
    stay(taken, serving.amount, Place::freezer, true, in, out);
    stay(taken, serving.amount, place_after_thawing(pack), false, out, demand.day);
  }

  bool was_thawed_whole(const Pack& pack) const {
    return std::any_of(found_.servings.begin(), found_.servings.end(), [&](const Serving& serving) {
      return serving.whole && serving.stock == pack.stock && serving.of == pack.of &&
             serving.pack == pack.pack;
    });
  }

  void leftovers(Taken& taken) {
    Amount kept = 0;
    Amount frozen = 0;
    for (const Kept& left : found_.kept) {
      const Pack pack = pack_of(left);
      const Life& lasts = life(pack);
      kept += left.amount;
      if (left.frozen) {
        frozen += stands_in_freezer(pack) ? 0 : left.amount;
        expect(lasts.frozen && home(pack) + *lasts.frozen >= item_.kept_day,
               "does not keep frozen");
        stay(taken, left.amount, Place::freezer, true, home(pack), model_.last_day + 1);
      } else {
        expect(home(pack) + lasts.cool >= item_.kept_day || left.opened_on, "does not keep");
        const Day out = was_thawed_whole(pack) ? *left.opened_on : home(pack);
        stay(taken, left.amount, Place::freezer, true, home(pack), out);
        stay(taken, left.amount, place(pack), false, out, model_.last_day + 1);
      }
    }
    expect(frozen == 0 || frozen >= item_.least_frozen, "too little is frozen to be kept");
    Fine wasted = 0;
    for (const Waste& waste : found_.wastes) {
      wasted += waste.amount * item_.waste;
      expect(waste.day <= item_.kept_day, "thrown away although it keeps");
    }
    expect(found_.waste_value == wasted, "the value of what is wasted");
    expect(found_.salvage_value == std::min(kept, item_.salvage_cap) * item_.salvage,
           "the value of what is kept");
  }

  /// What of a demand `amount` of a pack serves.
  double served(const Serving& serving) const {
    const Demand& demand = item_.demands[serving.demand];
    const Pack pack = pack_of(serving);
    const Amount containers =
        pack.stock ? item_.stock[LotId(pack.of)].containers : offer(pack).containers;
    const auto amount = static_cast<double>(serving.amount);
    if (containers == 0 || demand.containers == 0) {
      return amount;
    }
    const Amount size = pack.stock
                            ? item_.stock[LotId(pack.of)].amount / item_.stock[LotId(pack.of)].packs
                            : offer(pack).pack;
    return amount * static_cast<double>(containers) / static_cast<double>(size) *
           static_cast<double>(demand.amount) / static_cast<double>(demand.containers);
  }

  void demands() {
    Table<DemandId, double> got(item_.demands.size(), 0);
    for (const Serving& serving : found_.servings) {
      got[serving.demand] += served(serving);
    }
    for (const Short& one : found_.shorts) {
      const Demand& demand = item_.demands[one.demand];
      expect(one.lacking >= 0 && one.lacking <= demand.give && one.missing >= 0 &&
                 one.missing <= demand.amount - demand.give,
             "more is lacking than may be");
      got[one.demand] += static_cast<double>(one.lacking + one.missing);
      if (one.missing > 0 && item_.least_frozen == 0) {
        nothing_left_for(demand);
      }
    }
    for (const DemandId id : ids(item_.demands)) {
      expect(std::abs(got[id] - static_cast<double>(item_.demands[id].amount)) < 5,
             "demand {} gets {} of {}", id.index(), got[id], item_.demands[id].amount);
    }
  }

  /// Nothing that is left over at the end or thrown away could have served the demand, but for what
  /// would have had to be frozen.
  void nothing_left_for(const Demand& demand) {
    const auto serves = [&](const Fate& fate) {
      const Pack pack = pack_of(fate);
      const Life& lasts = life(pack);
      const Day by = std::max(demand.day - demand.slack, home(pack) + lasts.ready);
      const bool in_time =
          home_at(pack) <= demand.at && home(pack) + lasts.ready <= demand.day && !lasts.opened;
      const bool cool = by <= home(pack) + lasts.cool && !stands_in_freezer(pack);
      const bool frozen =
          stands_in_freezer(pack) && demand.takes_frozen && by <= home(pack) + *lasts.frozen;
      return in_time && (cool || frozen);
    };
    expect(std::none_of(found_.kept.begin(), found_.kept.end(), serves) &&
               std::none_of(found_.wastes.begin(), found_.wastes.end(), serves),
           "something is missing although it is there");
  }

  void sums() {
    Money cost = 0;
    for (const Purchase& purchase : found_.purchases) {
      cost += purchase.cost;
    }
    Fine lacking = 0;
    Fine missing = 0;
    bool by_container = false;
    for (const Short& one : found_.shorts) {
      lacking += one.lacking * item_.lacking;
      missing += one.missing * item_.missing + (one.missing > 0 ? fine(item_.missing_once) : 0);
      by_container = by_container || item_.demands[one.demand].containers > 0;
    }
    expect(found_.cost == cost, "the sum of what is paid");
    expect(found_.missing_value == missing, "the value of what is missing");
    expect(by_container || found_.lacking_value == lacking, "the value of what is lacking: {} {}",
           found_.lacking_value, lacking);
  }

  const Model& model_;
  const Solution& solution_;
  const Item& item_;
  const ItemSolution& found_;
  ItemId id_;
  Findings& findings_;
  std::map<Pack, Amount> holds_;
};

void check_money(const Model& model, const Solution& solution, Findings& findings) {
  Table<StopId, Money> spent(model.stops.size(), 0);
  Fine total = 0;
  for (const ItemSolution& item : solution.items) {
    for (const Purchase& purchase : item.purchases) {
      spent[purchase.stop] += purchase.till;
    }
    total += fine(item.cost + item.handling) + item.waste_value - item.salvage_value +
             item.lacking_value + item.missing_value;
  }
  Table<ShopId, Money> to_pay(model.shops.size(), 0);
  for (const StopId stop : ids(model.stops)) {
    const Shop& shop = model.shops[model.stops[stop].shop];
    const Money off = shop.off > 0 && spent[stop] >= shop.over ? shop.off : 0;
    to_pay[model.stops[stop].shop] += spent[stop] - off;
    total -= fine(off);
    if (solution.off[stop] != off) {
      findings.emplace_back("a reduction is wrong");
    }
  }
  for (const ShopId shop : ids(model.shops)) {
    const Money credit = std::min(model.shops[shop].credit, to_pay[shop]);
    total -= credit * model.shops[shop].credit_worth;
    if (solution.credit[shop] != credit) {
      findings.emplace_back("a credit is wrong");
    }
  }
  Money stop_cost = 0;
  for (const StopId stop : solution.stops) {
    stop_cost += model.stops[stop].cost;
  }
  total += fine(stop_cost);
  if (solution.stop_cost != stop_cost || solution.total_fine != total) {
    findings.push_back(fmt::format("the total is {}, not {}", total, solution.total_fine));
  }
  if (solution.bound > solution.total ||
      (solution.status == Status::optimal && solution.bound != solution.total)) {
    findings.emplace_back("the bound does not fit the total");
  }
}

void check_stops(const Model& model, const Solution& solution, Findings& findings) {
  std::set<StopId> used;
  for (const ItemSolution& item : solution.items) {
    for (const Purchase& purchase : item.purchases) {
      used.insert(purchase.stop);
    }
  }
  for (const StopId stop : ids(model.stops)) {
    const bool made =
        std::find(solution.stops.begin(), solution.stops.end(), stop) != solution.stops.end();
    if (made != (model.stops[stop].always || used.count(stop) > 0)) {
      findings.push_back(fmt::format("stop {} is made for nothing, or not made", stop.index()));
    }
  }
}

} // namespace

std::vector<std::string> check(const Model& model, const Solution& solution) {
  Findings findings;
  if (solution.items.size() != model.items.size()) {
    return {"not every item has a solution"};
  }
  Taken taken;
  for (const ItemId id : ids(model.items)) {
    if (!ItemCheck(model, solution, id, findings).run(taken)) {
      return findings;
    }
  }
  for (const auto& [where, sum] : taken) {
    const std::vector<Volume>& room = model.room[index(where.first)];
    if (!room.empty() && sum > room[static_cast<std::size_t>(where.second)] * amounts_per_unit) {
      findings.push_back(
          fmt::format("no room in place {} on night {}", index(where.first), where.second));
    }
  }
  check_money(model, solution, findings);
  check_stops(model, solution, findings);
  return findings;
}

} // namespace manciple::buying
