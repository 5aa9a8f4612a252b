#include "purchase/settle.hpp"

#include <algorithm>

#include "purchase/assemble.hpp"
#include "purchase/use.hpp"

namespace manciple::purchase {
namespace {

/// Partial plans of a good, and steps of a combination, after which a set of stops is left open,
/// for an effort of 1.
constexpr std::size_t most_partial_plans = 20'000;
constexpr std::size_t most_steps = 100'000;
/// The first gap that plans are listed for: 5 cents of a dollar.
constexpr Fine first_slack = fine(500);

std::vector<StopState> states_of(const std::vector<bool>& made) {
  std::vector<StopState> states;
  for (const bool stop : made)
    states.push_back(stop ? StopState::open : StopState::closed);
  return states;
}

} // namespace

Settler::Settler(const Model& model, Ledger& ledger, const Prices& prices, Limits& limits,
                 std::size_t effort)
    : model_(model),
      ledger_(ledger),
      prices_(prices),
      limits_(limits),
      effort_(effort),
      known_(ledger.goods().size()) {
  for (std::size_t place = 0; place < place_count; ++place)
    for (std::size_t night = 0; night < prices.room[place].size(); ++night)
      if (prices.room[place][night] > 0)
        rows_.room.emplace_back(static_cast<Place>(place), static_cast<Day>(night));
  for (ShopId shop = 0; shop < model.shops.size(); ++shop)
    if (prices.credit[shop] > 0)
      credit_shops_.insert(shop);
  set_spend_rows();
}

void Settler::set_spend_rows() {
  rows_.spend.clear();
  for (StopId stop = 0; stop < model_.stops.size(); ++stop) {
    const ShopId id = model_.stops[stop].shop;
    const Shop& shop = model_.shops[id];
    Rows::Spend row{stop, 0, 0};
    if (prices_.targets[stop] == Target::reached)
      row.least = shop.over;
    if (credit_shops_.count(id) > 0)
      row.credit = shop.credit;
    if (row.least > 0 || row.credit > 0)
      rows_.spend.push_back(row);
  }
}

bool Settler::touches_rows(GoodId good, const std::vector<bool>& made) const {
  const Prepared& prepared = ledger_.goods()[good];
  const Good& facts = *prepared.good;
  for (const auto& [place, night] : rows_.room)
    if ((place == facts.cool_place && facts.room_cool > 0) ||
        (place == Place::freezer && facts.keeps_frozen && facts.room_frozen > 0))
      return true;
  return std::any_of(prepared.visits.begin(), prepared.visits.end(), [&](const Visit& visit) {
    return made[visit.stop] &&
           std::any_of(rows_.spend.begin(), rows_.spend.end(),
                       [&](const Rows::Spend& row) { return row.stop == visit.stop; });
  });
}

const PlanSet& Settler::plans(GoodId good, const Basket& basket, Fine slack) {
  const Prepared& prepared = ledger_.goods()[good];
  std::vector<bool> open;
  std::string key;
  for (const Visit& visit : prepared.visits) {
    open.push_back(basket.stops()[visit.stop] == StopState::open);
    key.push_back(open.back() ? '1' : '0');
  }
  Known& known = known_[good][key];
  const bool enough = !known.set.plans.empty() && (known.slack >= slack || known.set.all);
  if (enough)
    return known.set;
  known.slack = slack;
  if (touches_rows(good, made_of(basket))) {
    known.set = plans_within(model_, prepared, open, prices_, rows_, slack,
                             most_partial_plans * effort_, limits_);
  } else {
    const Outcome& outcome = basket.outcome(good);
    Plan plan{outcome.cost, outcome.cost.value, {}, {}, outcome.buys};
    plan.room.assign(rows_.room.size(), 0);
    plan.spend.assign(rows_.spend.size(), 0);
    known.set.plans.assign(1, std::move(plan));
  }
  return known.set;
}

std::vector<bool> Settler::made_of(const Basket& basket) {
  std::vector<bool> made;
  for (const StopState state : basket.stops())
    made.push_back(state == StopState::open);
  return made;
}

Joint Settler::joint(const std::vector<bool>& made) const {
  Joint joint;
  for (const auto& [place, night] : rows_.room)
    joint.room.push_back(
        model_.room[static_cast<std::size_t>(place)][static_cast<std::size_t>(night)] * 1'000'000);
  joint.off.assign(model_.shops.size(), 0);
  for (const Rows::Spend& row : rows_.spend) {
    joint.least_spend.push_back(row.least);
    joint.credit_shop.emplace_back();
    if (row.credit > 0)
      joint.credit_shop.back() = model_.stops[row.stop].shop;
  }
  joint.priced_constant = -room_worth(model_, prices_);
  std::vector<bool> visited(model_.shops.size(), false);
  for (StopId stop = 0; stop < made.size(); ++stop) {
    if (!made[stop])
      continue;
    const ShopId shop = model_.stops[stop].shop;
    visited[shop] = true;
    joint.constant += stop_cost(model_.stops[stop]);
    joint.priced_constant += stop_cost(model_.stops[stop]).value - off_gain(model_, prices_, stop);
    if (prices_.targets[stop] == Target::reached) {
      joint.constant.value -= fine(model_.shops[shop].off);
      joint.off[shop] += model_.shops[shop].off;
    }
  }
  for (ShopId shop = 0; shop < visited.size(); ++shop) {
    if (!visited[shop])
      continue;
    joint.priced_constant -= credit_gain(model_, prices_, shop);
    if (credit_shops_.count(shop) == 0)
      joint.constant.value -= fine(model_.shops[shop].credit);
  }
  return joint;
}

bool Settler::add_broken(const Solution& solution) {
  bool added = false;
  const std::vector<std::vector<std::int64_t>> taken =
      all_room_taken(model_, ledger_.goods(), solution);
  for (std::size_t place = 0; place < place_count; ++place)
    for (std::size_t night = 0; night < model_.room[place].size(); ++night) {
      const std::pair row(static_cast<Place>(place), static_cast<Day>(night));
      if (taken[place][night] > model_.room[place][night] * 1'000'000 &&
          std::find(rows_.room.begin(), rows_.room.end(), row) == rows_.room.end()) {
        rows_.room.push_back(row);
        added = true;
      }
    }
  for (const StopId stop : solution.stops) {
    const ShopId shop = model_.stops[stop].shop;
    if (solution.credit[shop] < model_.shops[shop].credit)
      added = credit_shops_.insert(shop).second || added;
  }
  if (added)
    set_spend_rows();
  if (added)
    for (auto& known : known_)
      known.clear();
  return added;
}

Settled Settler::settle(const std::vector<bool>& made, Cost below) {
  Settled best;
  const Basket basket(ledger_, states_of(made));
  if (!is_possible(basket.goods_cost()))
    return best;
  Fine slack = first_slack;
  Cost limit = below;
  for (;;) {
    const Joint limits = joint(made);
    const Fine least = basket.goods_cost().value + limits.priced_constant;
    slack = std::min(slack, std::max<Fine>(0, limit.value - least));
    std::vector<const PlanSet*> sets;
    bool all = true;
    for (GoodId good = 0; good < ledger_.goods().size(); ++good) {
      sets.push_back(&plans(good, basket, slack));
      all = all && sets.back()->all;
      if (!sets.back()->finished || sets.back()->plans.empty() || limits_.reached()) {
        best.bound = {least, 0};
        return best;
      }
    }
    const Choice choice = combine(model_, sets, limits, limit, limits_, most_steps * effort_);
    bool broken = false;
    if (is_possible(choice.cost)) {
      std::vector<std::vector<Buy>> buys;
      for (GoodId good = 0; good < sets.size(); ++good)
        buys.push_back(sets[good]->plans[choice.plan[good]].buys);
      const Solution solution = assemble(model_, ledger_.goods(), made, buys);
      broken = add_broken(solution);
      if (fits_room(model_, ledger_.goods(), solution) && cost_of(solution) < limit) {
        best.cost = limit = cost_of(solution);
        best.buys = std::move(buys);
      }
    }
    if (!choice.finished) {
      best.bound = {least, 0};
      return best;
    }
    if (broken)
      continue;
    // Whatever is cheaper than this has all its plans in the lists.
    if (all || limit.value - least <= slack || slack > impossible.value / 4) {
      best.bound = limit;
      return best;
    }
    slack = std::min(slack, impossible.value / 8) * 4;
  }
}

} // namespace manciple::purchase
