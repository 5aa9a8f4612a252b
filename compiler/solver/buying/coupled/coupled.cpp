#include "buying/coupled/coupled.hpp"

#include "buying/coupled/fitting.hpp"
#include "buying/coupled/settle_stops.hpp"

#include <algorithm>
#include <limits>
#include <map>

namespace manciple::buying {
namespace {

StopTerms terms_for(const Model& model, const Multipliers& at) {
  StopTerms terms = plain_terms(model);
  for (const StopId stop : ids(model.stops)) {
    terms.cost[stop].value -= off_gain(model, at, stop);
  }
  for (const ShopId shop : ids(model.shops)) {
    terms.shop_gain[shop] = credit_gain(model, at, shop);
  }
  terms.constant = -room_worth(model, at);
  return terms;
}

class CoupledSearch {
public:
  CoupledSearch(const Model& model, const Coupling& coupling, const Table<ItemId, Prepared>& items,
                const StopChoices& choices, WorkBudget& budget)
      : model_(model),
        coupling_(coupling),
        items_(items),
        choices_(choices),
        budget_(budget),
        cache_(model, items, budget),
        pool_(cache_, coupling, may_be_open(choices), first_multipliers(model, coupling)) {
    cache_.ask_first(
        [this](ItemId item, const Terms& terms) { return pool_.at_least(item, terms); });
  }

  Found run() {
    Cost proven{std::numeric_limits<Fine>::min() / 4, 0};
    for (const std::size_t labels : label_passes) {
      size_ = std::max<std::size_t>(1, labels / usual_labels);
      cache_.allow(labels);
      search_stops();
      proven = std::max(proven, bound_);
      budget_.tell({best_.cost.value, proven.value});
      if (proven >= best_.cost || budget_.spent()) {
        break;
      }
    }
    best_.bound = proven;
    best_.subproblems = cache_.subproblems();
    return std::move(best_);
  }

private:
  static constexpr int most_rounds = 3;

  void offer(Cost cost, const OpenStops& open, Table<ItemId, ItemPlan> plans) {
    if (cost >= best_.cost) {
      return;
    }
    best_.cost = cost;
    best_.open = open;
    best_.plans = std::move(plans);
    budget_.tell({cost.value, bound_.value});
  }

  /// Settles the sets of stops that look best, for multipliers that suit them all, then whatever
  /// sets these leave hope for.
  void search_stops() {
    // If nothing is bought for the sake of a target, there may be room for what items buy anyway,
    // and no need of networks.
    if (coupling_.reductions && is_possible(best_.cost)) {
      pool_.lay_out(wide, most_edges * size_);
    }
    std::erase_if(settled_, [&](const auto& one) { return one.second.bound < best_.cost; });
    for (int round = 0; round < most_rounds; ++round) {
      const StopsResult likely = likely_stops(cache_, terms_now(), choices_);
      if (likely.open.empty() || settled_.count(likely.open) > 0) {
        break;
      }
      offer_as_priced(likely.open);
      if (!is_possible(best_.cost)) {
        offer_if_it_fits(likely.open,
                         fitting_plans(model_, coupling_, items_, likely.open, budget_));
      }
      if (likely.cost >= best_.cost || budget_.spent()) {
        break;
      }
      settle(likely.open, true);
    }
    StopTerms terms = terms_now();
    terms.exact = [&](const OpenStops& open, Cost below) {
      const Settled& settled = settle(open, false);
      return std::pair(settled.cost < below ? settled.cost : impossible, settled.bound);
    };
    bound_ = choose_stops(cache_, terms, choices_, best_.cost).bound;
  }

  /// What the items buy with the stops at the multipliers as they are may break no limit.
  void offer_as_priced(const OpenStops& open) {
    Table<StopId, StopState> states;
    for (const bool stop : open) {
      states.push_back(stop ? StopState::open : StopState::closed);
    }
    const Basket basket(cache_, states);
    offer_if_it_fits(open, basket.plans());
  }

  void offer_if_it_fits(const OpenStops& open, Table<ItemId, ItemPlan> plans) {
    Bundle bundle = bundle_of(model_, items_, std::move(plans));
    if (fits(model_, bundle)) {
      offer(total_cost(model_, open, bundle), open, std::move(bundle.plans));
    }
  }

  StopTerms terms_now() {
    cache_.set_multipliers(pool_.multipliers());
    return terms_for(model_, pool_.multipliers());
  }

  const Settled& settle(const OpenStops& open, bool raise) {
    const auto [it, is_new] = settled_.try_emplace(open);
    if (is_new) {
      it->second = Settler(model_, items_, open, pool_, best_.cost, budget_, size_).settle(raise);
      if (is_possible(it->second.cost)) {
        offer(it->second.cost, open, it->second.plans);
      }
    }
    return it->second;
  }

  const Model& model_;
  const Coupling& coupling_;
  const Table<ItemId, Prepared>& items_;
  const StopChoices& choices_;
  WorkBudget& budget_;
  SubproblemCache cache_;
  NetworkPool pool_;
  Found best_;
  Cost bound_{std::numeric_limits<Fine>::min() / 4, 0};
  std::size_t size_ = 1;
  std::map<OpenStops, Settled> settled_;
};

} // namespace

Found search_coupled(const Model& model, const Coupling& coupling,
                     const Table<ItemId, Prepared>& items, const StopChoices& choices,
                     WorkBudget& budget) {
  return CoupledSearch(model, coupling, items, choices, budget).run();
}

} // namespace manciple::buying
