#include "purchase/use.hpp"

#include <algorithm>
#include <tuple>

#include "purchase/cost.hpp"
#include "purchase/opened.hpp"

namespace manciple::purchase {
namespace {

/// The purchases of one day, from which amounts are taken in order.
class DayLot {
public:
  DayLot(std::vector<Purchase>& purchases, std::size_t begin, std::size_t end)
      : purchases_(purchases), next_(begin), end_(end) {
    for (std::size_t i = begin; i < end; ++i)
      left_ += purchases[i].amount;
    taken_.assign(end - begin, 0);
    begin_ = begin;
  }

  Amount left() const { return left_; }

  /// Calls `each(purchase index, amount)` for the purchases that give `amount` together.
  template <typename Each>
  void take(Amount amount, Each each) {
    left_ -= amount;
    while (amount > 0) {
      const Amount rest = purchases_[next_].amount - taken_[next_ - begin_];
      const Amount part = std::min(rest, amount);
      if (part > 0)
        each(next_, part);
      taken_[next_ - begin_] += part;
      amount -= part;
      if (amount > 0 && next_ + 1 < end_)
        ++next_;
    }
  }

private:
  std::vector<Purchase>& purchases_;
  std::size_t begin_ = 0;
  std::size_t next_ = 0;
  std::size_t end_ = 0;
  Amount left_ = 0;
  std::vector<Amount> taken_;
};

void keep(GoodSolution& solution, std::size_t purchase, Amount amount, bool frozen) {
  solution.purchases[purchase].kept += amount;
  if (frozen)
    solution.purchases[purchase].frozen += amount;
  solution.kept += amount;
}

void waste(GoodSolution& solution, std::size_t purchase, Amount amount, Day day, bool frozen) {
  solution.purchases[purchase].wasted += amount;
  if (frozen)
    solution.purchases[purchase].frozen += amount;
  solution.wasted += amount;
  solution.wastes.push_back({purchase, amount, day, frozen});
}

void serve(GoodSolution& solution, std::size_t purchase, DemandId demand, Amount amount,
           bool frozen) {
  if (frozen)
    solution.purchases[purchase].frozen += amount;
  solution.servings.push_back({purchase, demand, amount, frozen});
}

void use_lot(const Prepared& good, GoodSolution& solution, std::vector<Amount>& unserved, Day day,
             DayLot lot) {
  for (std::size_t u = 0; u < good.uses.size() && lot.left() > 0; ++u) {
    const Use& use = good.uses[u];
    if (use.day < day || day < use.from || unserved[u] == 0)
      continue;
    const Amount amount = std::min(lot.left(), unserved[u]);
    unserved[u] -= amount;
    lot.take(amount, [&](std::size_t purchase, Amount part) {
      serve(solution, purchase, use.demand, part, day < use.cool_from);
    });
  }
  lot.take(lot.left(), [&](std::size_t purchase, Amount part) {
    if (good.kept(day))
      keep(solution, purchase, part, day < good.kept_cool_from);
    else
      waste(solution, purchase, part, day + good.good->keeps_cool + 1, false);
  });
}

void use_packs(const Prepared& good, GoodSolution& solution, Amount& position, Day day,
               std::size_t begin, std::size_t end) {
  std::vector<Amount> sizes;
  std::vector<int> counts;
  for (std::size_t i = begin; i < end; ++i) {
    const Purchase& purchase = solution.purchases[i];
    const bool one = good.good->offers[purchase.offer].by_weight;
    counts.push_back(one ? 1 : purchase.packs);
    sizes.push_back(purchase.amount / counts.back());
  }
  for (const DayPack& pack : order_of_day(good, position, day, sizes, counts)) {
    const std::size_t purchase = begin + pack.buy;
    const PackRun& run = pack.run;
    Amount before = 0;
    for (const Use& use : good.uses) {
      const Amount from = std::max(run.from, before);
      const Amount to = std::min(run.to, before + use.amount);
      if (from < to)
        serve(solution, purchase, use.demand, to - from, run.frozen);
      before += use.amount;
    }
    if (run.to > good.total)
      keep(solution, purchase, run.to - std::max(run.from, good.total), run.frozen);
    const Amount rest = sizes[pack.buy] - (run.to - run.from);
    if (rest > 0)
      waste(solution, purchase, rest, thrown_on(good, run, day), run.frozen);
    position = run.to;
  }
}

} // namespace

GoodSolution use_up(const Prepared& good, const std::vector<Buy>& buys) {
  GoodSolution solution;
  for (const Buy& buy : buys) {
    const Offer& offer = good.good->offers[buy.offer];
    Purchase purchase;
    purchase.stop = good.visits[buy.visit].stop;
    purchase.offer = buy.offer;
    purchase.packs = buy.packs;
    purchase.cost = offer.cost.of(buy.packs);
    purchase.amount = offer.pack * buy.packs;
    solution.spent += purchase.cost;
    solution.purchases.push_back(purchase);
  }

  std::vector<Amount> unserved;
  for (const Use& use : good.uses)
    unserved.push_back(use.amount);
  Amount position = 0;
  for (std::size_t begin = 0; begin < buys.size();) {
    const Day day = good.visits[buys[begin].visit].day;
    std::size_t end = begin;
    while (end < buys.size() && good.visits[buys[end].visit].day == day)
      ++end;
    if (good.opened())
      use_packs(good, solution, position, day, begin, end);
    else
      use_lot(good, solution, unserved, day, DayLot(solution.purchases, begin, end));
    begin = end;
  }

  std::sort(solution.servings.begin(), solution.servings.end(),
            [&](const Serving& a, const Serving& b) {
              const std::vector<Demand>& demands = good.good->demands;
              return std::tuple(demands[a.demand].day, a.demand, a.purchase, a.frozen) <
                     std::tuple(demands[b.demand].day, b.demand, b.purchase, b.frozen);
            });
  // Several packs of a purchase may serve one demand: one line for them.
  std::size_t kept = 0;
  for (const Serving& serving : std::vector<Serving>(solution.servings)) {
    Serving* last = kept > 0 ? &solution.servings[kept - 1] : nullptr;
    if (last != nullptr && last->purchase == serving.purchase && last->demand == serving.demand &&
        last->frozen == serving.frozen)
      last->amount += serving.amount;
    else
      solution.servings[kept++] = serving;
  }
  solution.servings.resize(kept);
  solution.salvaged = std::min(solution.kept, good.good->salvage_cap);
  solution.waste_value = value_of(solution.wasted, good.good->waste);
  solution.salvage_value = value_of(solution.salvaged, good.good->salvage);
  return solution;
}

RoomTaken room_taken(const Prepared& good, const GoodSolution& solution) {
  const auto nights = static_cast<std::size_t>(good.last_day) + 1;
  RoomTaken taken{std::vector<std::int64_t>(nights, 0), std::vector<std::int64_t>(nights, 0)};
  const auto add = [&](std::size_t purchase, Amount amount, bool frozen, Day until) {
    std::vector<std::int64_t>& place = frozen ? taken.frozen : taken.cool;
    const Volume unit = frozen ? good.good->room_frozen : good.good->room_cool;
    const Day from = good.stop_day(solution.purchases[purchase].stop);
    for (Day night = from; night < std::min(until, good.last_day + 1); ++night)
      place[static_cast<std::size_t>(night)] += amount * unit;
  };
  std::vector<Amount> kept_frozen;
  for (const Purchase& purchase : solution.purchases)
    kept_frozen.push_back(purchase.frozen);
  for (const Serving& serving : solution.servings) {
    add(serving.purchase, serving.amount, serving.frozen, good.good->demands[serving.demand].day);
    if (serving.frozen)
      kept_frozen[serving.purchase] -= serving.amount;
  }
  for (const Waste& waste : solution.wastes) {
    add(waste.purchase, waste.amount, waste.frozen, waste.day);
    if (waste.frozen)
      kept_frozen[waste.purchase] -= waste.amount;
  }
  for (std::size_t i = 0; i < solution.purchases.size(); ++i) {
    add(i, kept_frozen[i], true, good.last_day + 1);
    add(i, solution.purchases[i].kept - kept_frozen[i], false, good.last_day + 1);
  }
  return taken;
}

} // namespace manciple::purchase
