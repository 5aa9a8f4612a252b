#include "purchase/among_equals.hpp"

#include <algorithm>
#include <compare>
#include <optional>

#include "purchase/assemble.hpp"
#include "purchase/bundle.hpp"
#include "purchase/prices.hpp"
#include "purchase/use.hpp"

namespace manciple::purchase {
namespace {

/// Far more moves than a good has packs to move; each makes its list less work, so it ends anyway.
constexpr int most_moves = 1000;

/// Less is better, the first that differs decides.
struct Work {
  Amount frozen = 0;
  std::size_t lines = 0;
  std::int64_t lateness = 0;

  friend auto operator<=>(const Work&, const Work&) = default;
};

/// A good's buys and all that follows from them.
struct Choice {
  std::vector<Buy> buys;
  GoodSolution use;
  Work work;
};

Work work_of(const Prepared& good, const GoodSolution& use) {
  Work work;
  work.lines = use.purchases.size();
  for (const Purchase& purchase : use.purchases) {
    work.frozen += purchase.frozen;
    work.lateness += std::int64_t{purchase.packs} * good.stop_day(purchase.stop);
  }
  return work;
}

/// Every demand is met in full by what is bought by its day.
bool meets_demands(const Prepared& good, const GoodSolution& use) {
  Amount served = 0;
  for (const Serving& serving : use.servings) {
    served += serving.amount;
    if (good.stop_day(use.purchases[serving.purchase].stop) >
        good.good->demands[serving.demand].day)
      return false;
  }
  return served == good.total;
}

std::vector<Buy> buys_of(const Prepared& good, const GoodSolution& solution) {
  std::vector<Buy> buys;
  for (const Purchase& purchase : solution.purchases) {
    const auto visit = std::find_if(good.visits.begin(), good.visits.end(),
                                    [&](const Visit& one) { return one.stop == purchase.stop; });
    buys.push_back(
        {static_cast<std::size_t>(visit - good.visits.begin()), purchase.offer, purchase.packs});
  }
  return buys;
}

class Mover {
public:
  Mover(const Model& model, const Solution& solution)
      : model_(model),
        solution_(solution),
        coupled_(is_coupled(model)),
        made_(model.stops.size(), false),
        taken_(empty_bundle(model)) {
    for (const StopId stop : solution.stops)
      made_[stop] = true;
  }

  Solution run(const std::vector<Prepared>& goods) {
    for (GoodId good = 0; coupled_ && good < goods.size(); ++good)
      add_good(goods[good], solution_.goods[good], taken_);
    reductions_ = till_reductions(model_, taken_.spent).sum;
    for (GoodId good = 0; good < goods.size(); ++good)
      improve(goods[good], solution_.goods[good]);
    if (coupled_) {
      TillReductions reductions = till_reductions(model_, taken_.spent);
      solution_.off = std::move(reductions.off);
      solution_.credit = std::move(reductions.credit);
    }
    return std::move(solution_);
  }

private:
  void improve(const Prepared& good, GoodSolution& use) {
    Choice now{buys_of(good, use), {}, work_of(good, use)};
    for (int moves = 0; moves < most_moves; ++moves) {
      std::optional<Choice> best;
      for (const Buy& from : now.buys)
        for (std::size_t visit = 0; visit < good.visits.size(); ++visit)
          if (may_move(good, now, from, visit))
            for (int packs = fewest(good, now, from); packs <= from.packs; ++packs)
              try_move(good, now, use, from, visit, packs, best);
      if (!best)
        return;
      if (coupled_) {
        add_good(good, use, taken_, -1);
        add_good(good, best->use, taken_);
      }
      use = best->use;
      now = std::move(*best);
    }
  }

  /// Packs to move at once, at least: all of them, unless a part may leave less to freeze. What is
  /// weighed stays in one piece.
  static int fewest(const Prepared& good, const Choice& now, const Buy& from) {
    const bool part = now.work.frozen > 0 && !good.good->offers[from.offer].by_weight;
    return part ? 1 : from.packs;
  }

  /// Later only where something is frozen.
  bool may_move(const Prepared& good, const Choice& now, const Buy& from, std::size_t visit) const {
    const Visit& to = good.visits[visit];
    return visit != from.visit && made_[to.stop] && (visit < from.visit || now.work.frozen > 0) &&
           std::find(to.offers.begin(), to.offers.end(), from.offer) != to.offers.end();
  }

  void try_move(const Prepared& good, const Choice& now, const GoodSolution& use, const Buy& from,
                std::size_t visit, int packs, std::optional<Choice>& best) const {
    const PackCost& cost = good.good->offers[from.offer].cost;
    const auto there = std::find_if(now.buys.begin(), now.buys.end(), [&](const Buy& buy) {
      return buy.visit == visit && buy.offer == from.offer;
    });
    const int before = there == now.buys.end() ? 0 : there->packs;
    if (before + packs > cost.most() || cost.of(before + packs) + cost.of(from.packs - packs) !=
                                            cost.of(before) + cost.of(from.packs))
      return;
    std::vector<Buy> buys;
    for (const Buy& buy : now.buys) {
      Buy left = buy;
      if (buy == from)
        left.packs -= packs;
      else if (buy.visit == visit && buy.offer == from.offer)
        left.packs += packs;
      if (left.packs > 0)
        buys.push_back(left);
    }
    if (before == 0) {
      const Buy moved{visit, from.offer, packs};
      const auto place = std::find_if(buys.begin(), buys.end(), [&](const Buy& buy) {
        return std::pair(buy.visit, buy.offer) > std::pair(visit, from.offer);
      });
      buys.insert(place, moved);
    }
    Choice next{std::move(buys), {}, {}};
    next.use = use_up(good, next.buys);
    next.work = work_of(good, next.use);
    if (next.work < (best ? best->work : now.work) && meets_demands(good, next.use) &&
        next.use.waste_value - next.use.salvage_value == use.waste_value - use.salvage_value &&
        keeps_limits(good, use, next.use))
      best = std::move(next);
  }

  bool keeps_limits(const Prepared& good, const GoodSolution& now, const GoodSolution& next) const {
    if (!coupled_)
      return true;
    Bundle bundle = taken_;
    add_good(good, now, bundle, -1);
    add_good(good, next, bundle);
    return till_reductions(model_, bundle.spent).sum == reductions_ && fits(model_, bundle);
  }

  const Model& model_;
  Solution solution_;
  bool coupled_;
  std::vector<bool> made_;
  /// What all goods take by now of what couples them; not looked at if nothing does.
  Bundle taken_;
  Money reductions_ = 0;
};

} // namespace

Solution among_equals(const Model& model, const std::vector<Prepared>& goods,
                      const Solution& solution) {
  return Mover(model, solution).run(goods);
}

} // namespace manciple::purchase
