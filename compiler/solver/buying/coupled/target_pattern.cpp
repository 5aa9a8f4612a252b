#include "buying/coupled/target_pattern.hpp"

#include "buying/coupled/balance.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <numeric>

namespace manciple::buying {
namespace {

/// Partial plans of an item and steps of a combination after which it is left open, for a size
/// of 1.
constexpr std::size_t most_partial_plans = 20'000;
constexpr std::size_t most_steps = 100'000;
/// The first excess that plans are combined for: a cent of a dollar.
constexpr Fine narrow = fine(100);
/// For sharing out: plans of the same excess, or this little more, if they are not too many.
constexpr Fine almost_same = fine(10);
constexpr std::size_t most_alike = 200;
/// Reductions whose multipliers differ by less than this are looked at together first.
constexpr Fine negligible = fine_per_money / 100;

std::vector<const ColumnSet*> pointers(const std::vector<ColumnSet>& sets) {
  std::vector<const ColumnSet*> result;
  for (const ColumnSet& set : sets) {
    result.push_back(&set);
  }
  return result;
}

/// For each set of rows that are looked at together, their numbers in the strict rows.
std::vector<std::vector<std::size_t>> rows_together(const Rows& loose, const Rows& strict) {
  std::vector<std::vector<std::size_t>> result;
  for (const Rows::Spend& row : loose.spend) {
    result.emplace_back();
    for (std::size_t i = 0; i < strict.spend.size(); ++i) {
      if (std::find(row.stops.begin(), row.stops.end(), strict.spend[i].stops.front()) !=
          row.stops.end()) {
        result.back().push_back(i);
      }
    }
  }
  return result;
}

/// The column of this path, or the first that is no worse as far as can be told without knowing how
/// spending is shared out: a path may be missing for being dominated.
std::size_t find_column(const ColumnSet& set, const Column& column) {
  const auto spent = [](const Column& of) {
    return std::accumulate(of.spend.begin(), of.spend.end(), Money{0});
  };
  std::size_t best = 0;
  for (std::size_t i = 0; i < set.columns.size(); ++i) {
    const Column& other = set.columns[i];
    if (other.path == column.path) {
      return i;
    }
    const bool no_worse =
        other.cost <= column.cost && spent(other) >= spent(column) &&
        std::equal(other.room.begin(), other.room.end(), column.room.begin(), std::less_equal<>());
    if (best == 0 && no_worse) {
      best = i;
    }
  }
  return best;
}

} // namespace

TargetPattern::TargetPattern(Settling& with, Multipliers at) : with_(with), at_(std::move(at)) {
  for (const ShopId shop : ids(with_.model.shops)) {
    if (at_.credit[shop] > 0) {
      with_.credit_shops.insert(shop);
    }
  }
}

Cost TargetPattern::settle() {
  bound_ = std::max(bound_, combine_all(false));
  if (bound_ < best() && !chosen_.empty()) {
    share_out();
  }
  if (bound_ < best()) {
    bound_ = std::max(bound_, combine_all(true));
  }
  return bound_;
}

bool TargetPattern::lay_out(Fine slack) {
  cover_ = std::make_shared<Cover>(with_.model, with_.open, with_.pooled, at_, slack,
                                   most_edges * with_.size, with_.budget);
  if (cover_->finished()) {
    base_ = with_.duals.constant(at_) + cover_->least();
    bound_ = std::max(bound_, base_);
  }
  return cover_->finished();
}

Rows TargetPattern::rows(bool strict) const {
  Rows rows;
  rows.room = with_.duals.scarce();
  for (const StopId stop : ids(with_.model.stops)) {
    const ShopId id = with_.model.stops[stop].shop;
    const Shop& shop = with_.model.shops[id];
    Rows::Spend row{{stop}, 0, 0};
    if (with_.open[stop] && at_.targets[stop] == Target::reached) {
      row.least = shop.over;
    }
    if (with_.credit_shops.count(id) > 0) {
      row.credit = shop.credit;
    }
    if (row.least == 0 && row.credit == 0) {
      continue;
    }
    const auto like = std::find_if(rows.spend.begin(), rows.spend.end(), [&](const auto& other) {
      const Fine apart = at_.off[stop] - at_.off[other.stops.front()];
      return !strict && row.credit == 0 && other.credit == 0 && std::abs(apart) < negligible;
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

Joint TargetPattern::joint(const Rows& rows) const {
  Joint joint;
  for (const auto& [place, night] : rows.room) {
    joint.room.push_back(with_.model.room[index(place)][static_cast<std::size_t>(night)] *
                         amounts_per_unit);
  }
  joint.off.assign(with_.model.shops.size(), 0);
  for (const Rows::Spend& row : rows.spend) {
    joint.least_spend.push_back(row.least);
    joint.credit_shop.emplace_back();
    if (row.credit > 0) {
      joint.credit_shop.back() = with_.model.stops[row.stops.front()].shop;
    }
  }
  joint.priced_constant = with_.duals.constant(at_).value;
  Table<ShopId, bool> visited(with_.model.shops.size(), false);
  for (const StopId stop : ids(with_.model.stops)) {
    if (!with_.open[stop]) {
      continue;
    }
    const ShopId shop = with_.model.stops[stop].shop;
    visited[shop] = true;
    joint.constant += stop_cost(with_.model.stops[stop]);
    if (at_.targets[stop] == Target::reached) {
      joint.constant.value -= fine(with_.model.shops[shop].off);
      joint.off[shop] += with_.model.shops[shop].off;
    }
  }
  for (const ShopId shop : ids(with_.model.shops)) {
    if (visited[shop] && with_.credit_shops.count(shop) == 0) {
      joint.constant.value -= with_.model.shops[shop].credit * with_.model.shops[shop].credit_worth;
    }
  }
  return joint;
}

bool TargetPattern::take(const std::vector<ColumnSet>& sets,
                         const std::vector<std::size_t>& column) {
  Table<ItemId, ItemPlan> plans;
  for (std::size_t item = 0; item < sets.size(); ++item) {
    const Path& path = sets[item].columns[column[item]].path;
    plans.push_back(cover_->networks()[item]->plan(path));
  }
  const Bundle bundle = bundle_of(with_.model, with_.items, std::move(plans));
  const std::size_t scarce = with_.duals.scarce().size();
  with_.duals.meet(bundle);
  bool broken = with_.duals.scarce().size() > scarce;
  const TillReductions reductions = till_reductions(with_.model, bundle.spent);
  for (const StopId stop : ids(with_.model.stops)) {
    const ShopId shop = with_.model.stops[stop].shop;
    if (with_.open[stop] && reductions.credit[shop] < with_.model.shops[shop].credit) {
      broken = with_.credit_shops.insert(shop).second || broken;
    }
  }
  return broken;
}

void TargetPattern::share_out() {
  cover_ = chosen_in_;
  for (bool broken = true; broken && !with_.budget.spent();) {
    const Tariff tariff(with_.model, at_, with_.open);
    const Rows strict = rows(true);
    std::vector<ColumnSet> sets;
    std::vector<std::size_t> column;
    for (std::size_t item = 0; item < chosen_.size(); ++item) {
      Alike similar = columns_like(*cover_->networks()[item], tariff, strict, chosen_[item],
                                   almost_same, most_alike, with_.budget);
      column.push_back(find_column(similar.set, similar.column));
      sets.push_back(std::move(similar.set));
    }
    const Joint limits = joint(strict);
    for (const std::vector<std::size_t>& together : rows_together(rows(false), strict)) {
      column = balance(sets, limits, together, std::move(column));
    }
    broken = take(sets, column);
  }
}

/// A bound on what combinations of all plans cost.
Cost TargetPattern::combine_all(bool strict) {
  for (Fine slack = narrow;;) {
    if (!lay_out(slack) || bound_ >= best()) {
      return bound_;
    }
    // More than this no plan of anything better can exceed its item's cheapest by.
    const Fine gap = std::max<Fine>(0, best().value - base_.value) + rounding;
    const Tariff tariff(with_.model, at_, with_.open);
    const Rows looked_at = rows(strict);
    std::vector<ColumnSet> sets;
    for (const Network* const network : cover_->networks()) {
      sets.push_back(columns_within(*network, tariff, looked_at, slack,
                                    most_partial_plans * with_.size, with_.budget));
      if (!sets.back().finished || sets.back().columns.empty() || with_.budget.spent()) {
        return bound_;
      }
    }
    const Cost below = best();
    const Choice choice = combine(with_.model, pointers(sets), joint(looked_at), below,
                                  with_.budget, most_steps * with_.size);
    bool broken = false;
    if (is_possible(choice.cost)) {
      chosen_.clear();
      chosen_in_ = cover_;
      for (std::size_t item = 0; item < sets.size(); ++item) {
        chosen_.push_back(sets[item].columns[choice.column[item]].path);
      }
      broken = take(sets, choice.column);
    }
    if (!choice.finished) {
      return bound_;
    }
    if (broken) {
      continue;
    }
    // Whatever is cheaper than this has all its plans in the lists.
    const Cost least = std::min(choice.cost, below);
    if (least.value - base_.value <= slack || slack >= gap) {
      return std::min(least, best());
    }
    slack = std::min(4 * slack, gap);
  }
}

} // namespace manciple::buying
