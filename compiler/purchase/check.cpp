#include "purchase/check.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include <fmt/format.h>

namespace manciple::purchase {
namespace {

using Findings = std::vector<std::string>;

/// Checks one good's solution and adds what it takes to the night's room and the till's sums.
class GoodCheck {
public:
  GoodCheck(const Model& model, const Solution& solution, GoodId id, Findings& findings)
      : model_(model),
        solution_(solution),
        good_(model.goods[id]),
        found_(solution.goods[id]),
        id_(id),
        findings_(findings) {}

  bool run() {
    if (!purchases() || !servings())
      return false;
    leftovers();
    sums();
    if (good_.keeps_opened)
      packs();
    else
      rule_of_use();
    return true;
  }

  /// Calls `add(place, night, amount * room per unit)` for all that is stored overnight.
  template <typename Add>
  void room(Add add) const {
    const auto store = [&](std::size_t purchase, Amount amount, bool frozen, Day until) {
      const Volume unit = frozen ? good_.room_frozen : good_.room_cool;
      for (Day night = bought(purchase); night < until && night <= model_.last_day; ++night)
        add(frozen ? Place::freezer : good_.cool_place, night, amount * unit);
    };
    for (const Serving& serving : found_.servings)
      store(serving.purchase, serving.amount, serving.frozen, good_.demands[serving.demand].day);
    for (const Waste& waste : found_.wastes)
      store(waste.purchase, waste.amount, waste.frozen, waste.day);
    for (std::size_t i = 0; i < found_.purchases.size(); ++i) {
      store(i, found_.purchases[i].kept - kept_frozen(i), false, model_.last_day + 1);
      store(i, kept_frozen(i), true, model_.last_day + 1);
    }
  }

private:
  template <typename... Args>
  bool expect(bool holds, fmt::format_string<Args...> text, Args&&... args) {
    if (!holds)
      findings_.push_back(
          fmt::format("good {}: {}", id_, fmt::format(text, std::forward<Args>(args)...)));
    return holds;
  }

  Day bought(std::size_t purchase) const {
    return model_.stops[found_.purchases[purchase].stop].day;
  }
  int cool_age(const Demand& demand) const {
    return std::min(good_.keeps_cool, demand.longest_age.value_or(good_.keeps_cool));
  }
  int oldest(const Demand& demand) const {
    return std::max(cool_age(demand), demand.takes_frozen ? good_.keeps_frozen.value_or(0) : 0);
  }
  /// The order in which demands are served.
  auto rank(DemandId id) const {
    return std::tuple(good_.demands[id].day, oldest(good_.demands[id]), id);
  }
  Amount kept_frozen(std::size_t purchase) const {
    Amount rest = found_.purchases[purchase].frozen;
    for (const Serving& serving : found_.servings)
      if (serving.purchase == purchase && serving.frozen)
        rest -= serving.amount;
    for (const Waste& waste : found_.wastes)
      if (waste.purchase == purchase && waste.frozen)
        rest -= waste.amount;
    return rest;
  }

  bool purchases() {
    bool fine = true;
    std::set<std::pair<StopId, OfferId>> seen;
    for (const Purchase& purchase : found_.purchases) {
      if (!expect(purchase.stop < model_.stops.size() && purchase.offer < good_.offers.size(),
                  "a purchase names no stop or offer"))
        return false;
      const Stop& stop = model_.stops[purchase.stop];
      const Offer& offer = good_.offers[purchase.offer];
      fine &= expect(seen.insert({purchase.stop, purchase.offer}).second, "bought twice at a stop");
      fine &=
          expect(std::binary_search(solution_.stops.begin(), solution_.stops.end(), purchase.stop),
                 "bought at stop {}, which is not made", purchase.stop);
      fine &= expect(offer.shop == stop.shop && offer.first_day <= stop.day &&
                         stop.day <= offer.last_day,
                     "offer {} is not to be had at stop {}", purchase.offer, purchase.stop);
      fine &= expect(purchase.packs >= 1 && purchase.packs <= offer.cost.most(),
                     "{} packs of offer {} in one visit", purchase.packs, purchase.offer);
      fine &= fine && expect(purchase.cost == offer.cost.of(purchase.packs) &&
                                 purchase.amount == purchase.packs * offer.pack,
                             "cost or amount of a purchase is wrong");
    }
    return fine;
  }

  bool servings() {
    bool fine = true;
    std::vector<Amount> served(good_.demands.size(), 0);
    used_.assign(found_.purchases.size(), 0);
    for (const Serving& serving : found_.servings) {
      if (!expect(serving.purchase < found_.purchases.size() &&
                      serving.demand < good_.demands.size() && serving.amount > 0,
                  "a serving names no purchase or demand"))
        return false;
      const Demand& demand = good_.demands[serving.demand];
      const int age = demand.day - bought(serving.purchase);
      served[serving.demand] += serving.amount;
      used_[serving.purchase] += serving.amount;
      fine &= expect(age >= 0, "used before it is bought");
      if (serving.frozen)
        fine &= expect(demand.takes_frozen && age <= good_.keeps_frozen.value_or(-1),
                       "demand {} is served frozen", serving.demand);
      else
        fine &= expect(age <= cool_age(demand), "demand {} is served too old", serving.demand);
      if (!good_.keeps_opened)
        fine &= expect(serving.frozen == (age > cool_age(demand)), "frozen without need");
    }
    for (DemandId id = 0; id < served.size(); ++id)
      fine &= expect(served[id] == good_.demands[id].amount, "demand {} gets {} of {}", id,
                     served[id], good_.demands[id].amount);
    return fine;
  }

  /// What is kept keeps, what is waste does not, and nothing is unaccounted for.
  void leftovers() {
    std::vector<Amount> wasted(found_.purchases.size(), 0);
    for (const Waste& waste : found_.wastes)
      if (expect(waste.purchase < wasted.size() && waste.amount > 0, "waste of no purchase"))
        wasted[waste.purchase] += waste.amount;
    const Day day = model_.last_day + good_.salvage_days;
    for (std::size_t i = 0; i < found_.purchases.size(); ++i) {
      const Purchase& purchase = found_.purchases[i];
      const bool cool = day - bought(i) <= good_.keeps_cool;
      const bool frozen = day - bought(i) <= good_.keeps_frozen.value_or(-1);
      expect(used_[i] + purchase.kept + purchase.wasted == purchase.amount,
             "purchase {} is not accounted for", i);
      expect(wasted[i] == purchase.wasted, "waste of purchase {} does not add up", i);
      expect(purchase.kept == 0 || cool || frozen, "purchase {} cannot be kept", i);
      expect(kept_frozen(i) >= 0 && kept_frozen(i) <= purchase.kept,
             "frozen amounts of purchase {} do not add up", i);
      if (good_.keeps_opened)
        continue;
      expect(purchase.wasted == 0 || !(cool || frozen), "purchase {} need not be wasted", i);
      expect(kept_frozen(i) == (cool ? 0 : purchase.kept), "kept frozen without need");
      for (const Waste& waste : found_.wastes)
        expect(waste.purchase != i ||
                   (!waste.frozen && waste.day == bought(i) + good_.keeps_cool + 1),
               "waste of purchase {} on the wrong day", i);
    }
  }

  void sums() {
    Amount kept = 0;
    Amount wasted = 0;
    Money spent = 0;
    for (const Purchase& purchase : found_.purchases) {
      kept += purchase.kept;
      wasted += purchase.wasted;
      spent += purchase.cost;
    }
    const Amount salvaged = good_.salvage > 0 ? std::min(kept, good_.salvage_cap) : 0;
    expect(kept == found_.kept && wasted == found_.wasted && spent == found_.spent,
           "sums over the purchases are wrong");
    expect(found_.waste_value == wasted * good_.waste &&
               found_.salvage_value == salvaged * good_.salvage,
           "waste or salvage value is wrong");
  }

  /// First bought, first used: no day's buying serves a demand that an older one could have served
  /// while the older one serves something later or has something left.
  void rule_of_use() {
    for (const Serving& newer : found_.servings) {
      const Demand& demand = good_.demands[newer.demand];
      for (std::size_t older = 0; older < found_.purchases.size(); ++older) {
        const Day day = bought(older);
        if (day >= bought(newer.purchase) || demand.day - day > oldest(demand))
          continue;
        expect(used_[older] == found_.purchases[older].amount,
               "demand {} is served by newer food while older is left", newer.demand);
        for (const Serving& other : found_.servings)
          expect(other.purchase != older || rank(other.demand) <= rank(newer.demand),
                 "demand {} is served by newer food, a later one by older", newer.demand);
      }
    }
  }

  /// Opened packs: days of buying are used up in order, and each purchase has packs enough for
  /// what it serves, each used within its time.
  void packs() {
    for (const Serving& a : found_.servings)
      for (const Serving& b : found_.servings)
        expect(bought(a.purchase) >= bought(b.purchase) || rank(a.demand) <= rank(b.demand),
               "a newer pack is opened before an older one");
    for (std::size_t i = 0; i < found_.purchases.size(); ++i) {
      const Purchase& purchase = found_.purchases[i];
      const bool one = good_.offers[purchase.offer].by_weight;
      const int available = one ? 1 : purchase.packs;
      const Amount size = purchase.amount / available;
      std::vector<Serving> servings;
      for (const Serving& serving : found_.servings)
        if (serving.purchase == i)
          servings.push_back(serving);
      std::sort(servings.begin(), servings.end(), [&](const Serving& a, const Serving& b) {
        return rank(a.demand) < rank(b.demand);
      });
      // Frozen and unfrozen packs are counted apart, each kind used as well as could be.
      int opened = 0;
      std::array<Amount, 2> left{};
      std::array<Day, 2> last{};
      for (const Serving& serving : servings) {
        const std::size_t kind = serving.frozen ? 1 : 0;
        const Day day = good_.demands[serving.demand].day;
        Amount amount = serving.amount;
        while (amount > 0) {
          if (left[kind] == 0 || day > last[kind]) {
            ++opened;
            left[kind] = size;
            last[kind] = day + *good_.keeps_opened;
          }
          const Amount part = std::min(left[kind], amount);
          left[kind] -= part;
          amount -= part;
        }
      }
      expect(opened <= available, "purchase {} needs {} packs", i, opened);
    }
  }

  const Model& model_;
  const Solution& solution_;
  const Good& good_;
  const GoodSolution& found_;
  GoodId id_;
  Findings& findings_;
  std::vector<Amount> used_;
};

void check_room(const Model& model, const std::vector<GoodCheck>& goods, Findings& findings) {
  std::map<std::pair<Place, Day>, std::int64_t> taken;
  for (const GoodCheck& good : goods)
    good.room([&](Place place, Day night, std::int64_t volume) {
      taken[{place, night}] += volume;
    });
  for (const auto& [where, volume] : taken) {
    const std::vector<Volume>& room = model.room[static_cast<std::size_t>(where.first)];
    if (!room.empty() && volume > room[static_cast<std::size_t>(where.second)] * 1'000'000)
      findings.push_back(fmt::format("place {} is over-full on night {}",
                                     static_cast<int>(where.first), where.second));
  }
}

void check_money(const Model& model, const Solution& solution, Findings& findings) {
  std::vector<Money> spent(model.stops.size(), 0);
  Fine total = 0;
  for (const GoodSolution& good : solution.goods) {
    for (const Purchase& purchase : good.purchases)
      spent[purchase.stop] += purchase.cost;
    total += good.waste_value - good.salvage_value;
  }
  Money paid = 0;
  Money stops = 0;
  std::vector<Money> to_pay(model.shops.size(), 0);
  for (StopId id = 0; id < model.stops.size(); ++id) {
    const Stop& stop = model.stops[id];
    const Shop& shop = model.shops[stop.shop];
    const bool made = std::binary_search(solution.stops.begin(), solution.stops.end(), id);
    stops += made ? stop.cost : 0;
    if (stop.always && !made)
      findings.push_back(fmt::format("stop {} must be made", id));
    const Money off = shop.off > 0 && spent[id] >= shop.over ? shop.off : 0;
    if (solution.off[id] != off)
      findings.push_back(fmt::format("stop {}: reduction {} is not {}", id, solution.off[id], off));
    to_pay[stop.shop] += spent[id] - off;
  }
  for (ShopId id = 0; id < model.shops.size(); ++id) {
    const Money credit = std::min(model.shops[id].credit, to_pay[id]);
    if (solution.credit[id] != credit)
      findings.push_back(
          fmt::format("shop {}: credit {} is not {}", id, solution.credit[id], credit));
    paid += to_pay[id] - credit;
  }
  total += (paid + stops) * fine_per_money;
  if (paid != solution.paid || stops != solution.stop_cost || total != solution.total_fine)
    findings.push_back(fmt::format("the total is {}, not {}", total, solution.total_fine));
  const Fine half_up = solution.total_fine - solution.total * fine_per_money;
  if (half_up < -fine_per_money / 2 || half_up >= fine_per_money / 2)
    findings.emplace_back("the total is rounded wrongly");
}

} // namespace

std::vector<std::string> check(const Model& model, const Solution& solution) {
  Findings findings;
  if (solution.status == Status::infeasible || solution.status == Status::unknown) {
    if (!solution.goods.empty() || !solution.stops.empty())
      findings.emplace_back("a solution where there is none");
    return findings;
  }
  if (solution.goods.size() != model.goods.size() || solution.off.size() != model.stops.size() ||
      solution.credit.size() != model.shops.size() ||
      !std::is_sorted(solution.stops.begin(), solution.stops.end()) ||
      (!solution.stops.empty() && solution.stops.back() >= model.stops.size())) {
    findings.emplace_back("sizes do not fit the model");
    return findings;
  }
  if (solution.bound > solution.total ||
      (solution.status == Status::optimal && solution.bound != solution.total))
    findings.emplace_back("the bound does not fit the total");
  std::vector<GoodCheck> goods;
  for (GoodId id = 0; id < model.goods.size(); ++id) {
    goods.emplace_back(model, solution, id, findings);
    if (!goods.back().run())
      return findings;
  }
  check_room(model, goods, findings);
  check_money(model, solution, findings);
  return findings;
}

} // namespace manciple::purchase
