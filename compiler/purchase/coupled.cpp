#include "purchase/coupled.hpp"

#include <algorithm>
#include <limits>
#include <map>

#include "purchase/assemble.hpp"
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

std::vector<bool> may_be_made(const std::vector<StopChoice>& choices) {
  std::vector<bool> result;
  for (const StopChoice choice : choices)
    result.push_back(choice != StopChoice::no);
  return result;
}

bool has_targets(const Model& model) {
  return std::any_of(model.shops.begin(), model.shops.end(),
                     [](const Shop& shop) { return shop.off > 0; });
}

class CoupledSearch {
public:
  CoupledSearch(const Model& model, const std::vector<Prepared>& goods,
                const std::vector<StopChoice>& choices, const Options& options)
      : model_(model),
        goods_(goods),
        choices_(choices),
        limits_(options),
        ledger_(model, goods),
        shelf_(ledger_, may_be_made(choices), first_prices(model), limits_) {
    ledger_.ask_first(
        [this](GoodId good, const Terms& terms) { return shelf_.at_least(good, terms); });
  }

  Solution run() {
    Cost proven{std::numeric_limits<Fine>::min(), 0};
    for (effort_ = 1; effort_ <= most_effort; effort_ *= 8) {
      search_stops();
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

  void offer(Cost cost, const std::vector<bool>& made, std::vector<std::vector<Buy>> buys) {
    if (cost >= best_)
      return;
    best_ = cost;
    made_ = made;
    buys_ = std::move(buys);
  }

  /// Settles the sets of stops that look best, for prices that suit them all, then whatever sets
  /// these prices leave hope for.
  void search_stops() {
    // If nothing is bought for the sake of a target, there may be room for what goods buy anyway,
    // and no need of networks.
    if (has_targets(model_))
      shelf_.lay_out(wide, most_edges * effort_);
    std::erase_if(settled_, [&](const auto& one) { return one.second.bound < best_; });
    for (int round = 0; round < most_rounds && !limits_.reached(); ++round) {
      const StopsResult likely = likely_stops(ledger_, terms_now(), choices_, limits_);
      if (likely.made.empty() || settled_.count(likely.made) > 0)
        break;
      offer_as_priced(likely.made);
      if (likely.cost >= best_)
        break;
      settle(likely.made, true);
    }
    StopTerms terms = terms_now();
    terms.exact = [&](const std::vector<bool>& made, Cost below) {
      const Settled& settled = settle(made, false);
      return std::pair(settled.cost < below ? settled.cost : impossible, settled.bound);
    };
    bound_ = choose_stops(ledger_, terms, choices_, limits_, best_).bound;
  }

  /// What the goods buy with the stops at the prices as they are may break no limit.
  void offer_as_priced(const std::vector<bool>& made) {
    std::vector<StopState> states;
    for (const bool stop : made)
      states.push_back(stop ? StopState::open : StopState::closed);
    const Basket basket(ledger_, states);
    std::vector<std::vector<Buy>> buys;
    for (GoodId good = 0; good < goods_.size(); ++good)
      buys.push_back(basket.outcome(good).buys);
    Bundle bundle = bundle_of(model_, goods_, std::move(buys));
    if (fits(model_, bundle))
      offer(total_cost(model_, made, bundle), made, std::move(bundle.buys));
  }

  StopTerms terms_now() {
    set_prices(ledger_, shelf_.prices()); // takes back what goods pay of stops
    return terms_at(model_, shelf_.prices());
  }
  const Settled& settle(const std::vector<bool>& made, bool raise) {
    const auto [it, is_new] = settled_.try_emplace(made);
    if (is_new) {
      it->second = Settler(model_, goods_, made, shelf_, best_, limits_, effort_).settle(raise);
      if (is_possible(it->second.cost))
        offer(it->second.cost, made, it->second.buys);
    }
    return it->second;
  }

  const Model& model_;
  const std::vector<Prepared>& goods_;
  const std::vector<StopChoice>& choices_;
  Limits limits_;
  Ledger ledger_;
  Cost best_ = impossible;
  Cost bound_ = impossible;
  std::size_t effort_ = 1;
  Shelf shelf_;
  std::map<std::vector<bool>, Settled> settled_;
  std::vector<bool> made_;
  std::vector<std::vector<Buy>> buys_;
};

} // namespace

Solution search_coupled(const Model& model, const std::vector<Prepared>& goods,
                        const std::vector<StopChoice>& choices, const Options& options) {
  return CoupledSearch(model, goods, choices, options).run();
}

} // namespace manciple::purchase
