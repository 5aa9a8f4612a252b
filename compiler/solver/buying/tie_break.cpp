#include "buying/tie_break.hpp"

namespace manciple::buying {

void break_ties(const Model& model, const Table<ItemId, Prepared>& items, Found& found,
                WorkBudget& budget) {
  Workspace workspace;
  const RoomRates free;
  Bundle now = bundle_of(model, items, found.plans);
  for (const ItemId id : ids(items)) {
    const Prepared& item = items[id];
    const Terms terms = terms_at(model, item, no_multipliers(model), found.open, free);
    const ItemPlan plan = cheapest(item, terms, workspace, budget.work()).plan;
    if (plan == now.plans[id]) {
      continue;
    }
    Bundle other = now;
    add_item(item, play(item, now.plans[id]), other, -1);
    add_item(item, play(item, plan), other);
    other.plans[id] = plan;
    const Cost before = total_cost(model, found.open, now);
    const Cost after = total_cost(model, found.open, other);
    if (after.value == before.value && after < before && fits(model, other)) {
      now = std::move(other);
    }
  }
  found.cost = total_cost(model, found.open, now);
  found.plans = std::move(now.plans);
}

} // namespace manciple::buying
