#include "purchase/otherwise.hpp"

#include <algorithm>

namespace manciple::purchase {
namespace {

Cents to_cents(Money money) {
  return measure::to_int64(measure::round(Rational(money, money_per_cent)));
}

} // namespace

std::vector<OtherWay> otherwise(const kitchen::Kitchen& kitchen, const Shopping& shopping,
                                foods::FoodId food) {
  const Lowered& lowered = shopping.lowered;
  const auto found = std::find(lowered.foods.begin(), lowered.foods.end(),
                               kitchen.household.in_terms_of(food).food);
  if (found == lowered.foods.end()) {
    return {};
  }
  const auto good = static_cast<GoodId>(found - lowered.foods.begin());
  const auto ways = alternatives(lowered.model, shopping.solution, good, {.seconds = usual_search});
  std::vector<OtherWay> out;
  for (const Alternative& way : ways.only) {
    const Offer& offer = lowered.model.goods[good].offers[way.offer];
    const auto& priced = kitchen.shops[offer.shop].offers[lowered.offers[good][way.offer]];
    if (priced.food != food) {
      continue; // a substitute
    }
    OtherWay read;
    read.shop = kitchen.shops[offer.shop].id;
    read.offer = lowered.offers[good][way.offer];
    read.proven = way.proven;
    read.wasted = Rational(way.wasted, micro);
    if (way.free_stops) {
      read.more = to_cents(*way.free_stops - shopping.solution.total);
      read.spent = to_cents(way.spent);
      read.stops_more = to_cents(way.stop_cost - shopping.solution.stop_cost);
    }
    read.on_the_list =
        std::any_of(shopping.lines.begin(), shopping.lines.end(), [&](const Line& line) {
          return line.food == food && line.offer == read.offer &&
                 shopping.visits[line.visit].shop == read.shop;
        });
    // Before, during and after a sale an offer stands three times: the best of them counts.
    const auto same = std::find_if(out.begin(), out.end(), [&](const OtherWay& other) {
      return other.shop == read.shop && other.offer == read.offer;
    });
    if (same == out.end()) {
      out.push_back(read);
    } else if (read.more && (!same->more || *read.more < *same->more)) {
      *same = read;
    }
  }
  std::stable_sort(out.begin(), out.end(), [](const OtherWay& a, const OtherWay& b) {
    return a.more && (!b.more || *a.more < *b.more);
  });
  return out;
}

} // namespace manciple::purchase
