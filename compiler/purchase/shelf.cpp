#include "purchase/shelf.hpp"

#include <algorithm>

#include "purchase/room_price.hpp"

namespace manciple::purchase {
namespace {

double part_lost(Fine before, Fine after) {
  return after < before ? static_cast<double>(before - after) / static_cast<double>(before) : 0;
}

/// The most that can be paid at one visit for packs that each serve something, if that is so much
/// in all at most: all but the last of them are used up. None if more packs may cost less.
std::optional<Money> most_useful(const Good& good, const Visit& visit, Amount open) {
  Money by_offer = 0;
  Money used_up = 0;
  Money last = 0;
  for (const OfferId id : visit.offers) {
    const PackCost& cost = good.offers[id].cost;
    const std::vector<Money>& table = cost.table;
    const Amount pack = good.offers[id].pack;
    if (!std::is_sorted(table.begin(), table.end()))
      return {};
    const auto most = static_cast<int>(std::min<Amount>((open + pack - 1) / pack, cost.most()));
    by_offer += cost.of(most);
    for (int n = 1; n <= (table.empty() ? std::min(most, 1) : most); ++n) {
      used_up = std::max(used_up, static_cast<Money>(Wide{open} * cost.of(n) / (n * pack)) + 1);
      last = std::max(last, cost.of(n) - cost.of(n - 1));
    }
  }
  return std::min(by_offer, used_up + last);
}

/// By visit. Only for goods whose packs serve what is there to be served one after the other.
std::vector<Money> most_useful(const Prepared& good) {
  std::vector<Money> result;
  for (const Visit& visit : good.visits) {
    Amount open = 0;
    for (std::size_t group = 0; group < visit.reach.size(); ++group)
      open += std::max<Amount>(0, visit.reach[group] - visit.need[group]);
    const std::optional<Money> most = most_useful(*good.good, visit, open);
    if (good.opened() || !most)
      return {};
    result.push_back(*most);
  }
  return result;
}

} // namespace

Drop drop(const Model& model, const Prices& from, const Prices& to) {
  Drop result;
  for (StopId stop = 0; stop < model.stops.size(); ++stop) {
    const Fine before = per_money(model, from, stop);
    const Fine after = per_money(model, to, stop);
    result.money.push_back(std::max<Fine>(0, before - after));
    result.stop.push_back(part_lost(before, after));
  }
  for (std::size_t place = 0; place < place_count; ++place)
    for (std::size_t night = 0; night < from.room[place].size(); ++night)
      result.place[place] =
          std::max(result.place[place], part_lost(from.room[place][night], to.room[place][night]));
  return result;
}

/// Whatever a plan's cost is made of is dearer than this part of what it was, but for salvage,
/// which is the same and at most that of the cap. Or: it is cheaper by what is spent on what is of
/// use, and by that part of the rest, which is within the slack or makes the plan dearer than that.
Fine Shelved::beyond(const Drop& drop) const {
  if (longest == impossible.value)
    return longest;
  const Prepared& good = network.good();
  double lost = drop.place[static_cast<std::size_t>(good.good->cool_place)];
  if (good.good->keeps_frozen)
    lost = std::max(lost, drop.place[static_cast<std::size_t>(Place::freezer)]);
  const bool only_money = lost == 0 && !useful.empty();
  Fine saved = 0;
  for (std::size_t v = 0; v < good.visits.size(); ++v) {
    const StopId stop = good.visits[v].stop;
    lost = std::max(lost, drop.stop[stop]);
    if (only_money)
      saved += drop.money[stop] * useful[v];
  }
  if (lost == 0)
    return longest;
  const Fine salvage = value_of(good.kept_cap, good.good->salvage);
  const auto part = [&](Fine of) { return static_cast<Fine>(lost * static_cast<double>(of)); };
  const Fine all = part(longest + salvage);
  return longest - (only_money ? std::min(all, saved + part(slack)) : all) - rounding;
}

Shelf::Shelf(Ledger& ledger, std::vector<bool> may_be_made, const Prices& prices, Limits& limits)
    : ledger_(ledger),
      may_be_made_(std::move(may_be_made)),
      limits_(limits),
      shelved_(ledger.goods().size()) {
  set_prices(prices);
}

void Shelf::set_prices(const Prices& prices) {
  prices_ = prices;
  purchase::set_prices(ledger_, prices);
  tariff_ = tariff(ledger_.model(), prices_, may_be_made_);
  for (std::optional<Shelved>& shelved : shelved_)
    shelved.reset();
}

/// The good can have to do with room or with reductions.
bool Shelf::matters(const Prepared& good) const {
  const Model& model = ledger_.model();
  const auto limited = [&](Place place) {
    return !model.room[static_cast<std::size_t>(place)].empty();
  };
  return (good.good->room_cool > 0 && limited(good.good->cool_place)) ||
         (good.good->keeps_frozen && good.good->room_frozen > 0 && limited(Place::freezer)) ||
         std::any_of(good.visits.begin(), good.visits.end(), [&](const Visit& visit) {
           const Shop& shop = model.shops[model.stops[visit.stop].shop];
           return may_be_made_[visit.stop] && (shop.off > 0 || shop.credit > 0);
         });
}

void Shelf::lay_out(Fine slack, std::size_t most) {
  std::vector<const Shelved*> taken;
  take(may_be_made_, slack, most, taken);
}

std::optional<Outcome> Shelf::at_least(GoodId good, const Terms& terms) {
  if (!shelved_[good])
    return {};
  const Network& network = shelved_[good]->network;
  const std::vector<Visit>& visits = network.good().visits;
  charge_.assign(tariff_.closed.size(), Cost{});
  bool charged = false;
  for (std::size_t v = 0; v < visits.size(); ++v) {
    const Cost charge = terms.charge[v];
    tariff_.closed[visits[v].stop] = is_possible(charge) ? 0 : 1;
    charged = charged || (is_possible(charge) && charge != Cost{});
    charge_[visits[v].stop] = charge;
  }
  const Cost least =
      charged ? network.shortest(tariff_, charge_, way_) : network.shortest(tariff_, way_);
  if (!is_possible(least))
    return {};
  const Cost sure{network.least + shelved_[good]->slack, 0};
  return Outcome{std::min(least, sure), network.buys(way_.path)};
}

Shelf::Got Shelf::take(const std::vector<bool>& made, Fine slack, std::size_t most,
                       std::vector<const Shelved*>& taken) {
  taken.clear();
  const Tariff rates = tariff(ledger_.model(), prices_, made);
  Network::Way way;
  for (GoodId id = 0; id < shelved_.size(); ++id) {
    if (id % 16 == 0 && limits_.reached())
      return Got::gave_up;
    const Prepared& good = ledger_.goods()[id];
    const bool counts = matters(good);
    std::optional<Shelved>& shelved = shelved_[id];
    const Fine wanted = counts ? slack : 0;
    const auto enough = [&] {
      const Cost least = shelved->network.shortest(rates, way);
      return is_possible(least) && shelved->network.least + shelved->slack - least.value >= wanted;
    };
    if (!shelved || !enough()) {
      const auto least_of = [&](const std::vector<bool>& stops) {
        return cheapest(ledger_.model(), good, prices_, stops, workspace_).cost;
      };
      const Cost of_all = least_of(may_be_made_);
      const Cost of_these = made == may_be_made_ ? of_all : least_of(made);
      if (!is_possible(of_these))
        return Got::cannot_be;
      const Fine more = of_these.value - of_all.value + 2 * rounding;
      std::vector<bool> open;
      for (const Visit& visit : good.visits)
        open.push_back(may_be_made_[visit.stop]);
      shelved = Shelved{
          Network(ledger_.model(), good, open, prices_, wanted + more, most, limits_, of_all),
          impossible.value, wanted + more, most_useful(good)};
      const Network& network = shelved->network;
      if (!network.finished) {
        shelved.reset();
        return Got::gave_up;
      }
      if (network.nodes.empty() || !is_possible(network.shortest(rates, way)))
        return Got::cannot_be;
      if (counts)
        shelved->longest = network.least + shelved->slack;
    }
    taken.push_back(&*shelved);
  }
  return Got::all;
}

} // namespace manciple::purchase
