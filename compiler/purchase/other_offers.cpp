#include "purchase/other_offers.hpp"

#include <algorithm>

namespace manciple::purchase {
std::vector<OtherWay> other_offers(const kitchen::Kitchen& kitchen, const Shopping& shopping,
                                   foods::FoodId food) {
  const Lowered& lowered = shopping.lowered;
  const kitchen::InTermsOf terms = kitchen.household.in_terms_of(food);
  const auto found = std::find(lowered.foods.begin(), lowered.foods.end(), terms.food);
  if (found == lowered.foods.end()) {
    return {};
  }
  const buying::ItemId item(static_cast<std::size_t>(found - lowered.foods.begin()));
  const auto ways = buying::alternatives(lowered.model, shopping.solution, item);
  std::vector<OtherWay> out;
  for (const buying::Alternative& way : ways.only) {
    const buying::Offer& offer = lowered.model.items[item].offers[way.offer];
    const kitchen::Shop& shop = kitchen.shops[offer.shop.index()];
    const auto& priced = shop.offers[lowered.offers[item][way.offer]];
    if (priced.food != food) {
      continue; // a substitute
    }
    OtherWay read;
    read.shop = shop.id;
    read.offer = lowered.offers[item][way.offer];
    read.proven = way.proven;
    read.wasted = from_model(way.wasted) / terms.worth;
    if (way.free_stops && way.missing <= shopping.solution.items[item].missing()) {
      read.more = lowered.cents(*way.free_stops - shopping.solution.total);
      read.spent = lowered.cents(way.spent);
      read.stops_more = lowered.cents(way.stop_cost - shopping.solution.stop_cost);
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
