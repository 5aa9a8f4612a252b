#include "buying/search.hpp"
#include "buying/solve.hpp"

#include <algorithm>

namespace manciple::buying {
namespace {

class AlternativeSearch {
public:
  AlternativeSearch(const Model& model, const Solution& solution, ItemId item,
                    const Options& options)
      : model_(model), solution_(solution), item_(item), options_(options) {
    for (const Item& one : model.items) {
      items_.push_back(prepare(model, one));
    }
    plain_ = items_[item];
    free_ = choices_of(model);
    for (const StopId stop : ids(model.stops)) {
      const bool made = std::binary_search(solution.stops.begin(), solution.stops.end(), stop);
      fixed_.push_back(made ? StopChoice::must : StopChoice::no);
    }
  }

  Alternatives run() {
    Alternatives result;
    for (const OfferId offer : ids(model_.items[item_].offers)) {
      Restriction restriction;
      restriction.only = offer;
      result.only.push_back(find(restriction, offer, std::nullopt));
    }
    for (const Visit& visit : plain_.visits) {
      for (const OfferId offer : visit.offers) {
        if (!bought(visit.stop, offer)) {
          Restriction restriction;
          restriction.required = {visit.stop, offer};
          result.also.push_back(find(restriction, offer, visit.stop));
        }
      }
    }
    for (const Purchase& purchase : solution_.items[item_].purchases) {
      Restriction restriction;
      restriction.without = {purchase.stop, purchase.offer};
      result.without.push_back(find(restriction, purchase.offer, purchase.stop));
    }
    return result;
  }

private:
  bool bought(StopId stop, OfferId offer) const {
    const std::vector<Purchase>& purchases = solution_.items[item_].purchases;
    return std::any_of(purchases.begin(), purchases.end(), [&](const Purchase& purchase) {
      return purchase.stop == stop && purchase.offer == offer;
    });
  }

  Alternative find(const Restriction& restriction, OfferId offer, std::optional<StopId> stop) {
    Alternative result;
    result.offer = offer;
    result.stop = stop;
    items_[item_] = prepare(model_, model_.items[item_], restriction);
    StopChoices fixed = fixed_;
    StopChoices free = free_;
    if (restriction.required) {
      fixed[restriction.required->first] = free[restriction.required->first] = StopChoice::must;
    }
    if (const auto found = solved(fixed, result.proven)) {
      result.fixed_stops = found->total;
    }
    if (const auto found = solved(free, result.proven)) {
      const ItemSolution& item = found->items[item_];
      result.free_stops = found->total;
      result.spent = item.cost;
      result.stop_cost = found->stop_cost;
      for (const Waste& waste : item.wastes) {
        result.wasted += waste.amount;
      }
      result.missing = item.missing();
    }
    return result;
  }

  std::optional<Solution> solved(const StopChoices& choices, bool& proven) const {
    WorkBudget budget(options_);
    Found found = search(model_, items_, choices, budget);
    if (!is_possible(found.cost)) {
      return std::nullopt;
    }
    proven = proven && found.proven();
    return assemble(model_, items_, found.open, found.plans);
  }

  const Model& model_;
  const Solution& solution_;
  ItemId item_;
  Options options_;
  Table<ItemId, Prepared> items_;
  Prepared plain_;
  StopChoices fixed_;
  StopChoices free_;
};

} // namespace

Alternatives alternatives(const Model& model, const Solution& solution, ItemId item,
                          const Options& options) {
  validate(model);
  return AlternativeSearch(model, solution, item, options).run();
}

} // namespace manciple::buying
