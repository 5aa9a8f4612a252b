#include "buying/solve.hpp"

#include "buying/search.hpp"
#include "buying/tie_break.hpp"

namespace manciple::buying {
namespace {

/// Stops at which nothing is bought are not made, unless they always are.
void drop_idle_stops(const Model& model, const Table<ItemId, Prepared>& items, Found& found) {
  Table<StopId, bool> used(model.stops.size(), false);
  for (const ItemId item : ids(items)) {
    for (const Buy& buy : found.plans[item].buys) {
      used[items[item].visits[buy.visit].stop] = true;
    }
  }
  for (const StopId stop : ids(model.stops)) {
    if (found.open[stop] && !used[stop] && !model.stops[stop].always) {
      found.open[stop] = false;
      found.cost -= stop_cost(model.stops[stop]);
    }
  }
}

} // namespace

Solution solve(const Model& model, const Options& options) {
  validate(model);
  Table<ItemId, Prepared> items;
  for (const Item& item : model.items) {
    items.push_back(prepare(model, item));
  }
  WorkBudget budget(options);
  Found found = search(model, items, choices_of(model), budget);
  const bool proven = found.proven();
  drop_idle_stops(model, items, found);
  if (Coupling(model).any()) {
    break_ties(model, items, found, budget);
  }
  Solution solution = assemble(model, items, found.open, found.plans);
  solution.status = proven ? Status::optimal : Status::feasible;
  solution.bound = proven ? solution.total : to_money(found.bound.value);
  solution.nodes = budget.nodes();
  solution.subproblems = found.subproblems;
  solution.work = budget.work();
  solution.interrupted = budget.stopped();
  return solution;
}

} // namespace manciple::buying
