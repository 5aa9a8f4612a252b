#include "purchase/coupled.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "purchase/assemble.hpp"
#include "purchase/price_search.hpp"
#include "purchase/settle.hpp"

namespace manciple::purchase {
namespace {

StopTerms terms_at(const Model& model, const Prices& prices) {
  StopTerms terms = plain_terms(model);
  for (StopId stop = 0; stop < model.stops.size(); ++stop)
    terms.cost[stop].value -= off_gain(model, prices, stop);
  for (ShopId shop = 0; shop < model.shops.size(); ++shop)
    terms.shop_gain[shop] = credit_gain(model, prices, shop);
  terms.constant = -room_worth(model, prices);
  return terms;
}

class CoupledSearch {
public:
  CoupledSearch(const Model& model, const std::vector<Prepared>& goods,
                const std::vector<StopChoice>& choices, const Options& options)
      : model_(model), goods_(goods), choices_(choices), limits_(options), ledger_(model, goods) {}

  Solution run() {
    Cost proven{std::numeric_limits<Fine>::min(), 0};
    for (effort_ = 1; effort_ <= most_effort; effort_ *= 8) {
      bound_ = impossible;
      branch(no_prices(model_));
      if (effort_ == 1 && cannot_fit())
        bound_ = impossible;
      proven = std::max(proven, bound_);
      if (proven >= best_ || limits_.reached())
        break;
    }
    bound_ = proven;
    Solution solution;
    if (is_possible(best_)) {
      solution = assemble(model_, goods_, made_, buys_);
      solution.status = bound_ >= best_ ? Status::optimal : Status::feasible;
      solution.bound = solution.status == Status::optimal ? solution.total : to_money(bound_.value);
    } else {
      solution.status = is_possible(bound_) ? Status::unknown : Status::infeasible;
    }
    solution.nodes = limits_.nodes();
    solution.subproblems = ledger_.subproblems();
    return solution;
  }

private:
  /// With nothing found, reductions may hide that there is not room enough: looks without them.
  bool cannot_fit() {
    const bool reduces =
        std::any_of(model_.shops.begin(), model_.shops.end(),
                    [](const Shop& shop) { return shop.credit > 0 || shop.off > 0; });
    if (is_possible(best_) || !reduces)
      return false;
    Model plain = model_;
    plain.shops.assign(plain.shops.size(), Shop{});
    Options options;
    options.seconds = limits_.seconds_left();
    return search_coupled(plain, goods_, choices_, options).status == Status::infeasible;
  }

  static constexpr int most_rounds = 3;
  static constexpr std::size_t most_effort = 4096;

  std::vector<StopChoice> choices_at(const Prices& prices) const {
    std::vector<StopChoice> choices = choices_;
    for (StopId stop = 0; stop < choices.size(); ++stop)
      if (prices.targets[stop] == Target::reached && choices[stop] == StopChoice::maybe)
        choices[stop] = StopChoice::must;
    return choices;
  }

  StopsResult relax(const Prices& prices) {
    set_prices(ledger_, prices);
    return choose_stops(ledger_, terms_at(model_, prices), choices_at(prices), limits_, best_);
  }

  void offer(Cost cost, const std::vector<bool>& made, std::vector<std::vector<Buy>> buys) {
    if (cost >= best_)
      return;
    best_ = cost;
    made_ = made;
    buys_ = std::move(buys);
  }

  /// Everything that follows from the targets decided so far, starting from the parent's prices.
  void branch(Prices prices) {
    StopsResult relaxed = relax(prices);
    for (int round = 0; round < most_rounds && !relaxed.made.empty(); ++round) {
      const std::vector<bool> made = relaxed.made;
      PricesFound found = search_prices(ledger_, made, std::move(prices), best_);
      prices = std::move(found.prices);
      if (found.solution)
        offer(cost_of(*found.solution), made, std::move(found.buys));
      relaxed = relax(prices);
      if (relaxed.made == made)
        break;
    }
    if (relaxed.made.empty()) { // nothing better than the best here
      bound_ = std::min(bound_, relaxed.bound);
      return;
    }
    if (limits_.reached()) {
      bound_ = std::min(bound_, relaxed.bound);
      return;
    }
    const std::optional<StopId> stop = undecided(prices, relaxed.made);
    if (!stop) {
      settle(prices);
      return;
    }
    const bool likely = relaxed.made[*stop] && reaches(prices, relaxed.made, *stop);
    for (const bool reached : {likely, !likely}) {
      if (reached && choices_[*stop] == StopChoice::no)
        continue;
      Prices child = prices;
      child.targets[*stop] = reached ? Target::reached : Target::missed;
      if (!reached)
        child.off[*stop] = 0;
      branch(std::move(child));
    }
  }

  std::vector<Money> spent(const Prices& prices, const std::vector<bool>& made) {
    set_prices(ledger_, prices);
    std::vector<StopState> states;
    for (const bool stop : made)
      states.push_back(stop ? StopState::open : StopState::closed);
    const Basket basket(ledger_, states);
    std::vector<Money> spent(model_.stops.size(), 0);
    for (GoodId good = 0; good < goods_.size(); ++good)
      for (const Buy& buy : basket.outcome(good).buys)
        spent[goods_[good].visits[buy.visit].stop] +=
            model_.goods[good].offers[buy.offer].cost.of(buy.packs);
    return spent;
  }

  bool reaches(const Prices& prices, const std::vector<bool>& made, StopId stop) {
    return 2 * spent(prices, made)[stop] >= model_.shops[model_.stops[stop].shop].over;
  }

  /// Of the stops whose target is open, the one that is nearest to it.
  std::optional<StopId> undecided(const Prices& prices, const std::vector<bool>& made) {
    const std::vector<Money> money = spent(prices, made);
    std::optional<StopId> nearest;
    double least = 0;
    for (StopId stop = 0; stop < made.size(); ++stop) {
      if (prices.targets[stop] != Target::open)
        continue;
      const auto over = static_cast<double>(model_.shops[model_.stops[stop].shop].over);
      const double away = std::abs(static_cast<double>(money[stop]) - over) / (over + 1);
      if (!nearest || away < least) {
        nearest = stop;
        least = away;
      }
    }
    return nearest;
  }

  void settle(const Prices& prices) {
    set_prices(ledger_, prices);
    Settler settler(model_, ledger_, prices, limits_, effort_);
    StopTerms terms = terms_at(model_, prices);
    terms.exact = [&](const std::vector<bool>& made, Cost below) {
      Settled settled = settler.settle(made, below);
      if (is_possible(settled.cost))
        offer(settled.cost, made, std::move(settled.buys));
      return std::pair(settled.cost, settled.bound);
    };
    const StopsResult result = choose_stops(ledger_, terms, choices_at(prices), limits_, best_);
    bound_ = std::min(bound_, result.bound);
  }

  const Model& model_;
  const std::vector<Prepared>& goods_;
  const std::vector<StopChoice>& choices_;
  Limits limits_;
  Ledger ledger_;
  Cost best_ = impossible;
  Cost bound_ = impossible;
  std::size_t effort_ = 1;
  std::vector<bool> made_;
  std::vector<std::vector<Buy>> buys_;
};

} // namespace

Solution search_coupled(const Model& model, const std::vector<Prepared>& goods,
                        const std::vector<StopChoice>& choices, const Options& options) {
  return CoupledSearch(model, goods, choices, options).run();
}

} // namespace manciple::purchase
