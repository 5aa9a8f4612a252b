#include "purchase/settle.hpp"

#include <algorithm>
#include <cmath>

#include "purchase/assemble.hpp"
#include "purchase/repair.hpp"

namespace manciple::purchase {
namespace {

/// Edges of a good's network, partial plans of a good and steps of a combination after which a set
/// of stops is left open, for an effort of 1.
constexpr std::size_t most_edges = 200'000;
constexpr std::size_t most_partial_plans = 20'000;
constexpr std::size_t most_steps = 100'000;
/// Excess that networks are built for as long as nothing good is known: 50 cents of a dollar.
constexpr Fine wide = fine(5'000);
/// The first excess that plans are combined for: a cent.
constexpr Fine narrow = fine(100);
/// Networks are built anew while that raises the bound by more than this, but so often at most.
constexpr Fine worth_building = fine(1);
constexpr int most_builds = 4;
/// For a good limit: plans of at most 10 cents of excess, where they are not too many, and so many
/// starts.
constexpr Fine cheap_repair = fine(1000);
constexpr std::size_t most_repair_plans = 2'000;
constexpr std::size_t most_repairs = 12;
/// Reductions whose prices differ by less than this are looked at together first.
constexpr Fine alike = fine_per_money / 100;

/// The choice, but for each good any of the plans that cost the same; as it is for attempt 0.
std::vector<std::size_t> varied(const std::vector<PlanSet>& sets, std::vector<std::size_t> plan,
                                std::size_t attempt) {
  for (GoodId good = 0; good < sets.size() && attempt > 0; ++good) {
    std::vector<std::size_t> like;
    for (std::size_t i = 0; i < sets[good].plans.size(); ++i)
      if (sets[good].plans[i].cost == sets[good].plans[plan[good]].cost)
        like.push_back(i);
    // Multiplicative hashing (Knuth 1973) as dice.
    const std::uint64_t hash = (good * 97 + attempt) * 0x9e3779b97f4a7c15U;
    plan[good] = like[(hash >> 32U) % like.size()];
  }
  return plan;
}

std::vector<const PlanSet*> pointers(const std::vector<PlanSet>& sets) {
  std::vector<const PlanSet*> result;
  for (const PlanSet& set : sets)
    result.push_back(&set);
  return result;
}

} // namespace

Settler::Settler(const Model& model, const std::vector<Prepared>& goods,
                 const std::vector<bool>& made, Cost below, Limits& limits, std::size_t effort)
    : model_(model),
      goods_(goods),
      made_(made),
      below_(below),
      limits_(limits),
      effort_(effort),
      search_(model, made) {}

Fine Settler::gap(Cost bound) const {
  return std::max<Fine>(0, best().value - bound.value);
}

/// The good can have to do with room or with reductions.
bool Settler::matters(const Prepared& good) const {
  const auto limited = [&](Place place) {
    return !model_.room[static_cast<std::size_t>(place)].empty();
  };
  return (good.good->room_cool > 0 && limited(good.good->cool_place)) ||
         (good.good->keeps_frozen && good.good->room_frozen > 0 && limited(Place::freezer)) ||
         std::any_of(good.visits.begin(), good.visits.end(), [&](const Visit& visit) {
           const Shop& shop = model_.shops[model_.stops[visit.stop].shop];
           return made_[visit.stop] && (shop.off > 0 || shop.credit > 0);
         });
}

Settler::Built Settler::build(const Prices& prices, Fine slack) {
  networks_.clear();
  for (const Prepared& good : goods_) {
    if (networks_.size() % 16 == 0 && limits_.reached())
      return Built::gave_up;
    std::vector<bool> open;
    for (const Visit& visit : good.visits)
      open.push_back(made_[visit.stop]);
    networks_.emplace_back(model_, good, open, prices, matters(good) ? slack : 0,
                           most_edges * effort_, limits_);
    if (!networks_.back().finished)
      return Built::gave_up;
    if (networks_.back().nodes.empty())
      return Built::cannot_be;
  }
  search_.use(networks_);
  return Built::all;
}

Settled Settler::settle(Prices prices) {
  Settled settled;
  settled.bound = search(prices);
  settled.prices = std::move(prices);
  if (search_.best_cost() < below_) {
    settled.cost = search_.best_cost();
    settled.buys = search_.best()->buys;
  }
  return settled;
}

/// Raises the prices, and returns the bound.
Cost Settler::search(Prices& prices) {
  Cost proven{std::numeric_limits<Fine>::min() / 4, 0};
  Fine slack = wide;
  Prices next = prices;
  for (int builds = 0; builds < most_builds; ++builds) {
    const Built built = build(next, slack);
    if (built != Built::all)
      return built == Built::cannot_be ? impossible : proven;
    const PriceSearch::Found here = search_.at(next);
    if (here.bound > proven) {
      proven = here.bound;
      prices = next;
    }
    slack = std::min(gap(proven), wide);
    if (proven >= best())
      return best();
    PriceSearch::Found there = search_.search(here.prices, best());
    if (there.bound.value - proven.value < worth_building)
      break;
    next = std::move(there.prices);
  }
  // First among few plans, to know a good limit; then among all that count.
  for (bool all = false; proven < best() && !all && !limits_.reached();) {
    all = gap(proven) <= slack;
    slack = std::min(slack, gap(proven));
    if (build(prices, slack) != Built::all)
      return proven;
    const Cost bound = branch(prices);
    if (all)
      proven = std::max(proven, bound);
    slack = gap(proven);
  }
  return std::min(proven, best());
}

Cost Settler::branch(Prices prices) {
  const PriceSearch::Found found = search_.search(std::move(prices), best());
  if (found.bound >= best() || limits_.reached())
    return found.bound;
  const std::optional<StopId> stop = undecided(found);
  if (!stop)
    return combine_plans(found);
  const bool likely = 2 * found.bundle.spent[*stop] >= model_.shops[model_.stops[*stop].shop].over;
  Cost bound = impossible;
  for (const bool reached : {likely, !likely}) {
    Prices child = found.prices;
    child.targets[*stop] = reached ? Target::reached : Target::missed;
    if (!reached)
      child.off[*stop] = 0;
    bound = std::min(bound, branch(std::move(child)));
  }
  return std::max(bound, found.bound);
}

/// Of the stops whose target is open, the one that is nearest to it.
std::optional<StopId> Settler::undecided(const PriceSearch::Found& found) const {
  std::optional<StopId> nearest;
  double least = 0;
  for (StopId stop = 0; stop < made_.size(); ++stop) {
    if (!made_[stop] || found.prices.targets[stop] != Target::open)
      continue;
    const auto over = static_cast<double>(model_.shops[model_.stops[stop].shop].over);
    const double away = std::abs(static_cast<double>(found.bundle.spent[stop]) - over) / (over + 1);
    if (!nearest || away < least) {
      nearest = stop;
      least = away;
    }
  }
  return nearest;
}

Rows Settler::rows(const PriceSearch::Found& found, bool strict) const {
  Rows rows;
  rows.room = search_.scarce();
  for (StopId stop = 0; stop < made_.size(); ++stop) {
    const ShopId id = model_.stops[stop].shop;
    const Shop& shop = model_.shops[id];
    Rows::Spend row{{stop}, 0, 0};
    if (made_[stop] && found.prices.targets[stop] == Target::reached)
      row.least = shop.over;
    if (credit_shops_.count(id) > 0)
      row.credit = shop.credit;
    if (row.least == 0 && row.credit == 0)
      continue;
    const auto like = std::find_if(rows.spend.begin(), rows.spend.end(), [&](const auto& other) {
      const Fine apart = found.prices.off[stop] - found.prices.off[other.stops.front()];
      return !strict && row.credit == 0 && other.credit == 0 && std::abs(apart) < alike;
    });
    if (like == rows.spend.end()) {
      rows.spend.push_back(std::move(row));
    } else {
      like->stops.push_back(stop);
      like->least += row.least;
    }
  }
  return rows;
}

Joint Settler::joint(const PriceSearch::Found& found, const Rows& rows) const {
  Joint joint;
  for (const auto& [place, night] : rows.room)
    joint.room.push_back(
        model_.room[static_cast<std::size_t>(place)][static_cast<std::size_t>(night)] * 1'000'000);
  joint.off.assign(model_.shops.size(), 0);
  for (const Rows::Spend& row : rows.spend) {
    joint.least_spend.push_back(row.least);
    joint.credit_shop.emplace_back();
    if (row.credit > 0)
      joint.credit_shop.back() = model_.stops[row.stops.front()].shop;
  }
  joint.priced_constant = search_.constant(found.prices).value;
  std::vector<bool> visited(model_.shops.size(), false);
  for (StopId stop = 0; stop < made_.size(); ++stop) {
    if (!made_[stop])
      continue;
    const ShopId shop = model_.stops[stop].shop;
    visited[shop] = true;
    joint.constant += stop_cost(model_.stops[stop]);
    if (found.prices.targets[stop] == Target::reached) {
      joint.constant.value -= fine(model_.shops[shop].off);
      joint.off[shop] += model_.shops[shop].off;
    }
  }
  for (ShopId shop = 0; shop < visited.size(); ++shop)
    if (visited[shop] && credit_shops_.count(shop) == 0)
      joint.constant.value -= fine(model_.shops[shop].credit);
  return joint;
}

bool Settler::take(const std::vector<PlanSet>& sets, const std::vector<std::size_t>& plan) {
  std::vector<std::vector<Buy>> buys;
  for (GoodId good = 0; good < sets.size(); ++good) {
    const Path& path = sets[good].plans[plan[good]].path;
    search_.meet(good, path);
    buys.push_back(networks_[good].buys(path));
  }
  const Bundle bundle = bundle_of(model_, goods_, std::move(buys));
  const std::size_t scarce = search_.scarce().size();
  search_.meet(bundle);
  bool broken = search_.scarce().size() > scarce;
  const TillReductions reductions = till_reductions(model_, bundle.spent);
  for (StopId stop = 0; stop < made_.size(); ++stop) {
    const ShopId shop = model_.stops[stop].shop;
    if (made_[stop] && reductions.credit[shop] < model_.shops[shop].credit)
      broken = credit_shops_.insert(shop).second || broken;
  }
  return broken;
}

Cost Settler::combine_plans(const PriceSearch::Found& found) {
  for (ShopId shop = 0; shop < model_.shops.size(); ++shop)
    if (found.prices.credit[shop] > 0)
      credit_shops_.insert(shop);
  // The second time, with wider networks, there is nothing new to be expected.
  const bool is_new = improved_.insert(found.prices.targets).second;
  if (is_new) {
    search_.shift(found.prices);
    improve(found, {}, found.bound);
  }
  chosen_.clear();
  Cost bound = found.bound;
  for (const bool strict : {false, true}) {
    if (bound >= best())
      break;
    bound = std::max(bound, combine_all(found, strict));
    if (!strict && is_new && !chosen_.empty() && bound < best())
      improve(found, chosen_, bound);
  }
  return bound;
}

void Settler::improve(const PriceSearch::Found& found, const std::vector<Path>& start,
                      Cost enough) {
  const Rows looked_at = rows(found, true);
  const Joint limits = joint(found, looked_at);
  std::vector<PlanSet> met;
  std::vector<PlanSet> sets;
  std::vector<std::size_t> plan;
  for (GoodId good = 0; good < networks_.size(); ++good) {
    met.push_back(
        plans_along(model_, networks_[good], search_.paths()[good], found.prices, looked_at));
    sets.push_back(plans_within(model_, networks_[good], found.prices, looked_at,
                                std::min(gap(found.bound), cheap_repair), most_repair_plans,
                                limits_));
    if (!sets.back().finished)
      sets.back() = met.back();
    const std::vector<Plan>& plans = sets.back().plans;
    const auto same = std::find_if(plans.begin(), plans.end(), [&](const Plan& one) {
      return !start.empty() && one.path == start[good];
    });
    plan.push_back(same == plans.end() ? 0 : static_cast<std::size_t>(same - plans.begin()));
  }
  const Cost before = best();
  const std::size_t attempts = start.empty() ? 1 : most_repairs * effort_;
  for (std::size_t attempt = 0; attempt < attempts && best() > enough && !limits_.reached();
       ++attempt)
    take(sets, repair(sets, limits, varied(sets, plan, attempt)));
  if (best() < before)
    return;
  const Choice choice = combine_roughly(model_, pointers(met), limits, best(), limits_);
  if (is_possible(choice.cost))
    take(met, choice.plan);
}

/// A bound on what combinations of all plans cost.
Cost Settler::combine_all(const PriceSearch::Found& found, bool strict) {
  for (Fine slack = narrow;;) {
    slack = std::min(slack, gap(found.bound));
    const Rows looked_at = rows(found, strict);
    std::vector<PlanSet> sets;
    bool all = true;
    for (const Network& network : networks_) {
      sets.push_back(plans_within(model_, network, found.prices, looked_at, slack,
                                  most_partial_plans * effort_, limits_));
      all = all && sets.back().all;
      if (!sets.back().finished || sets.back().plans.empty() || limits_.reached())
        return found.bound;
    }
    const Cost below = best();
    const Choice choice = combine(model_, pointers(sets), joint(found, looked_at), below, limits_,
                                  most_steps * effort_);
    if (is_possible(choice.cost)) {
      chosen_.clear();
      for (GoodId good = 0; good < sets.size(); ++good)
        chosen_.push_back(sets[good].plans[choice.plan[good]].path);
    }
    const bool broken = is_possible(choice.cost) && take(sets, choice.plan);
    if (!choice.finished)
      return found.bound;
    if (broken)
      continue;
    // Whatever is cheaper than this has all its plans in the lists.
    const Cost least = std::min(choice.cost, below);
    if (all || least.value - found.bound.value <= slack || slack > impossible.value / 4)
      return std::min(least, best());
    slack = std::min(slack, impossible.value / 8) * 4;
  }
}

} // namespace manciple::purchase
