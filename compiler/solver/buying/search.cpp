#include "buying/search.hpp"

#include "buying/coupled/coupled.hpp"

#include <algorithm>

namespace manciple::buying {
namespace {

Found search_uncoupled(const Model& model, const Table<ItemId, Prepared>& items,
                       const StopChoices& choices, WorkBudget& budget) {
  SubproblemCache cache(model, items, budget);
  StopsResult result;
  for (const std::size_t labels : label_passes) {
    cache.allow(labels);
    result = choose_stops(cache, plain_terms(model), choices);
    if (result.bound >= result.cost || budget.spent()) {
      break;
    }
  }
  Found found;
  found.bound = result.bound;
  if (is_possible(result.cost)) {
    Table<StopId, StopState> states;
    for (const bool open : result.open) {
      states.push_back(open ? StopState::open : StopState::closed);
    }
    const Basket basket(cache, states);
    found.cost = result.cost;
    found.open = result.open;
    found.plans = basket.plans();
  }
  found.subproblems = cache.subproblems();
  return found;
}

} // namespace

Found search(const Model& model, const Table<ItemId, Prepared>& items, const StopChoices& choices,
             WorkBudget& budget) {
  if (std::any_of(items.begin(), items.end(), [](const Prepared& item) { return item.barred; })) {
    return {};
  }
  const Coupling coupling(model);
  return coupling.any() ? search_coupled(model, coupling, items, choices, budget)
                        : search_uncoupled(model, items, choices, budget);
}

} // namespace manciple::buying
