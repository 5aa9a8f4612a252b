#include "purchase/pattern.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <numeric>

#include "purchase/assemble.hpp"
#include "purchase/balance.hpp"

namespace manciple::purchase {
namespace {

/// Partial plans of a good and steps of a combination after which it is left open, for an effort
/// of 1.
constexpr std::size_t most_partial_plans = 20'000;
constexpr std::size_t most_steps = 100'000;
/// The first excess that plans are combined for: a cent.
constexpr Fine narrow = fine(100);
/// For sharing out: plans of the same excess, or this little more, if they are not too many.
constexpr Fine almost_same = fine(10);
constexpr std::size_t most_alike = 200;
/// Reductions whose prices differ by less than this are looked at together first.
constexpr Fine alike = fine_per_money / 100;

std::vector<const PlanSet*> pointers(const std::vector<PlanSet>& sets) {
  std::vector<const PlanSet*> result;
  for (const PlanSet& set : sets)
    result.push_back(&set);
  return result;
}

/// For each set of rows that are looked at together, their numbers in the strict rows.
std::vector<std::vector<std::size_t>> rows_together(const Rows& loose, const Rows& strict) {
  std::vector<std::vector<std::size_t>> result;
  for (const Rows::Spend& row : loose.spend) {
    result.emplace_back();
    for (std::size_t i = 0; i < strict.spend.size(); ++i)
      if (std::find(row.stops.begin(), row.stops.end(), strict.spend[i].stops.front()) !=
          row.stops.end())
        result.back().push_back(i);
  }
  return result;
}

/// The plan of this path, or the first that is no worse as far as can be told without knowing how
/// spending is shared out: a path may be missing for being beaten.
std::size_t find_plan(const PlanSet& set, const Plan& plan) {
  const auto spent = [](const Plan& of) {
    return std::accumulate(of.spend.begin(), of.spend.end(), Money{0});
  };
  std::size_t best = 0;
  for (std::size_t i = 0; i < set.plans.size(); ++i) {
    const Plan& other = set.plans[i];
    if (other.path == plan.path)
      return i;
    if (best == 0 && other.cost <= plan.cost && spent(other) >= spent(plan) &&
        std::equal(other.room.begin(), other.room.end(), plan.room.begin(), std::less_equal<>()))
      best = i;
  }
  return best;
}

} // namespace

Pattern::Pattern(Settling& with, Prices prices) : with_(with), prices_(std::move(prices)) {
  for (ShopId shop = 0; shop < with_.model.shops.size(); ++shop)
    if (prices_.credit[shop] > 0)
      with_.credit_shops.insert(shop);
}

Cost Pattern::settle() {
  bound_ = std::max(bound_, combine_all(false));
  if (bound_ < best() && !chosen_.empty())
    share_out();
  if (bound_ < best())
    bound_ = std::max(bound_, combine_all(true));
  return bound_;
}

bool Pattern::lay_out(Fine slack) {
  cover_ = std::make_shared<Cover>(with_.model, with_.made, with_.shelf, with_.shelved, prices_,
                                   slack, most_edges * with_.effort, with_.limits);
  if (cover_->finished())
    bound_ = std::max(bound_, with_.search.constant(prices_) + cover_->least());
  return cover_->finished();
}

Fine Pattern::gap() const {
  return std::max<Fine>(0, best().value - bound_.value);
}

Rows Pattern::rows(bool strict) const {
  Rows rows;
  rows.room = with_.search.scarce();
  for (StopId stop = 0; stop < with_.made.size(); ++stop) {
    const ShopId id = with_.model.stops[stop].shop;
    const Shop& shop = with_.model.shops[id];
    Rows::Spend row{{stop}, 0, 0};
    if (with_.made[stop] && prices_.targets[stop] == Target::reached)
      row.least = shop.over;
    if (with_.credit_shops.count(id) > 0)
      row.credit = shop.credit;
    if (row.least == 0 && row.credit == 0)
      continue;
    const auto like = std::find_if(rows.spend.begin(), rows.spend.end(), [&](const auto& other) {
      const Fine apart = prices_.off[stop] - prices_.off[other.stops.front()];
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

Joint Pattern::joint(const Rows& rows) const {
  Joint joint;
  for (const auto& [place, night] : rows.room)
    joint.room.push_back(
        with_.model.room[static_cast<std::size_t>(place)][static_cast<std::size_t>(night)] *
        1'000'000);
  joint.off.assign(with_.model.shops.size(), 0);
  for (const Rows::Spend& row : rows.spend) {
    joint.least_spend.push_back(row.least);
    joint.credit_shop.emplace_back();
    if (row.credit > 0)
      joint.credit_shop.back() = with_.model.stops[row.stops.front()].shop;
  }
  joint.priced_constant = with_.search.constant(prices_).value;
  std::vector<bool> visited(with_.model.shops.size(), false);
  for (StopId stop = 0; stop < with_.made.size(); ++stop) {
    if (!with_.made[stop])
      continue;
    const ShopId shop = with_.model.stops[stop].shop;
    visited[shop] = true;
    joint.constant += stop_cost(with_.model.stops[stop]);
    if (prices_.targets[stop] == Target::reached) {
      joint.constant.value -= fine(with_.model.shops[shop].off);
      joint.off[shop] += with_.model.shops[shop].off;
    }
  }
  for (ShopId shop = 0; shop < visited.size(); ++shop)
    if (visited[shop] && with_.credit_shops.count(shop) == 0)
      joint.constant.value -= fine(with_.model.shops[shop].credit);
  return joint;
}

bool Pattern::take(const std::vector<PlanSet>& sets, const std::vector<std::size_t>& plan) {
  std::vector<std::vector<Buy>> buys;
  for (GoodId good = 0; good < sets.size(); ++good) {
    const Path& path = sets[good].plans[plan[good]].path;
    buys.push_back(cover_->networks()[good]->buys(path));
  }
  const Bundle bundle = bundle_of(with_.model, with_.goods, std::move(buys));
  const std::size_t scarce = with_.search.scarce().size();
  with_.search.meet(bundle);
  bool broken = with_.search.scarce().size() > scarce;
  const TillReductions reductions = till_reductions(with_.model, bundle.spent);
  for (StopId stop = 0; stop < with_.made.size(); ++stop) {
    const ShopId shop = with_.model.stops[stop].shop;
    if (with_.made[stop] && reductions.credit[shop] < with_.model.shops[shop].credit)
      broken = with_.credit_shops.insert(shop).second || broken;
  }
  return broken;
}

void Pattern::share_out() {
  cover_ = chosen_in_;
  for (bool broken = true; broken && !with_.limits.reached();) {
    const Tariff rates = tariff(with_.model, prices_, with_.made);
    const Rows strict = rows(true);
    std::vector<PlanSet> sets;
    std::vector<std::size_t> plan;
    for (GoodId good = 0; good < chosen_.size(); ++good) {
      Alike alike = plans_like(*cover_->networks()[good], rates, strict, chosen_[good], almost_same,
                               most_alike, with_.limits);
      plan.push_back(find_plan(alike.set, alike.plan));
      sets.push_back(std::move(alike.set));
    }
    const Joint limits = joint(strict);
    for (const std::vector<std::size_t>& together : rows_together(rows(false), strict))
      plan = balance(sets, limits, together, std::move(plan));
    broken = take(sets, plan);
  }
}

/// A bound on what combinations of all plans cost.
Cost Pattern::combine_all(bool strict) {
  for (Fine slack = narrow;;) {
    slack = std::min(slack, gap());
    if (!lay_out(slack) || bound_ >= best())
      return bound_;
    const Tariff rates = tariff(with_.model, prices_, with_.made);
    const Rows looked_at = rows(strict);
    std::vector<PlanSet> sets;
    for (const Network* const network : cover_->networks()) {
      sets.push_back(plans_within(*network, rates, looked_at, slack,
                                  most_partial_plans * with_.effort, with_.limits));
      if (!sets.back().finished || sets.back().plans.empty() || with_.limits.reached())
        return bound_;
    }
    const Cost below = best();
    const Choice choice = combine(with_.model, pointers(sets), joint(looked_at), below,
                                  with_.limits, most_steps * with_.effort);
    bool broken = false;
    if (is_possible(choice.cost)) {
      chosen_.clear();
      chosen_in_ = cover_;
      for (GoodId good = 0; good < sets.size(); ++good)
        chosen_.push_back(sets[good].plans[choice.plan[good]].path);
      broken = take(sets, choice.plan);
    }
    if (!choice.finished)
      return bound_;
    if (broken)
      continue;
    // Whatever is cheaper than this has all its plans in the lists.
    const Cost least = std::min(choice.cost, below);
    if (least.value - bound_.value <= slack || slack > impossible.value / 4)
      return std::min(least, best());
    slack = std::min(slack, impossible.value / 8) * 4;
  }
}

} // namespace manciple::purchase
