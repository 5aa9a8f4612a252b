#include <algorithm>

#include "purchase/search.hpp"
#include "purchase/validate.hpp"

namespace manciple::purchase {
namespace {

class AlternativeSearch {
public:
  AlternativeSearch(const Model& model, const Solution& solution, GoodId good,
                    const Options& options)
      : model_(model), solution_(solution), good_(good), options_(options) {
    for (const Good& one : model.goods)
      goods_.push_back(prepare(model, one));
    plain_ = goods_[good];
    for (StopId stop = 0; stop < model.stops.size(); ++stop) {
      const bool made = std::binary_search(solution.stops.begin(), solution.stops.end(), stop);
      fixed_.push_back(made ? StopChoice::must : StopChoice::no);
      free_.push_back(model.stops[stop].always ? StopChoice::must : StopChoice::maybe);
    }
  }

  Alternatives run() {
    Alternatives result;
    const Good& good = model_.goods[good_];
    for (OfferId offer = 0; offer < good.offers.size(); ++offer) {
      Restriction restriction;
      restriction.only = offer;
      result.only.push_back(find(restriction, offer, std::nullopt));
    }
    for (const Visit& visit : plain_.visits)
      for (const OfferId offer : visit.offers) {
        if (bought(visit.stop, offer))
          continue;
        Restriction restriction;
        restriction.required = {visit.stop, offer};
        result.also.push_back(find(restriction, offer, visit.stop));
      }
    for (const Purchase& purchase : solution_.goods[good_].purchases) {
      Restriction restriction;
      restriction.without = {purchase.stop, purchase.offer};
      result.without.push_back(find(restriction, purchase.offer, purchase.stop));
    }
    return result;
  }

private:
  bool bought(StopId stop, OfferId offer) const {
    const std::vector<Purchase>& purchases = solution_.goods[good_].purchases;
    return std::any_of(purchases.begin(), purchases.end(), [&](const Purchase& purchase) {
      return purchase.stop == stop && purchase.offer == offer;
    });
  }

  Alternative find(const Restriction& restriction, OfferId offer, std::optional<StopId> stop) {
    Alternative result;
    result.offer = offer;
    result.stop = stop;
    goods_[good_] = prepare(model_, model_.goods[good_], restriction);
    std::vector<StopChoice> fixed = fixed_;
    std::vector<StopChoice> free = free_;
    if (restriction.required)
      fixed[restriction.required->first] = free[restriction.required->first] = StopChoice::must;
    if (const auto found = solved(fixed, result.proven))
      result.fixed_stops = found->total;
    if (const auto found = solved(free, result.proven)) {
      result.free_stops = found->total;
      result.spent = found->goods[good_].spent;
      result.stop_cost = found->stop_cost;
      result.wasted = found->goods[good_].wasted;
    }
    return result;
  }

  std::optional<Solution> solved(const std::vector<StopChoice>& choices, bool& proven) const {
    Solution found = search(model_, goods_, choices, options_);
    proven = proven && (found.status == Status::optimal || found.status == Status::infeasible);
    if (found.status == Status::optimal || found.status == Status::feasible)
      return found;
    return std::nullopt;
  }

  const Model& model_;
  const Solution& solution_;
  GoodId good_;
  Options options_;
  std::vector<Prepared> goods_;
  Prepared plain_;
  std::vector<StopChoice> fixed_;
  std::vector<StopChoice> free_;
};

} // namespace

Alternatives alternatives(const Model& model, const Solution& solution, GoodId good,
                          const Options& options) {
  validate(model);
  return AlternativeSearch(model, solution, good, options).run();
}

} // namespace manciple::purchase
