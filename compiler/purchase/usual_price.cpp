#include "purchase/usual_price.hpp"

#include "purchase/rules.hpp"

#include <algorithm>

namespace manciple::purchase {
namespace {

using foods::FoodId;
using kitchen::Kitchen;

bool can_be_had(const kitchen::Plan& plan, const kitchen::Offer& offer, const kitchen::Shop& shop) {
  const auto on = [&](const kitchen::Trip& trip) {
    const bool holds =
        (!offer.from || *offer.from <= trip.date) && (!offer.until || trip.date <= *offer.until);
    return holds && std::any_of(trip.stops.begin(), trip.stops.end(),
                                [&](const auto& stop) { return stop.shop == shop.id; });
  };
  return std::any_of(plan.trips.begin(), plan.trips.end(), on) ||
         std::any_of(plan.trips_done.begin(), plan.trips_done.end(), on);
}

// `price_of` gives what a pack or a step of an offer counts as, in cents, or nothing.
template <typename PriceOf>
std::optional<UsualPrice> least_price(const Kitchen& kitchen, FoodId id, PriceOf price_of) {
  std::optional<UsualPrice> near;
  std::optional<UsualPrice> anywhere;
  const auto take = [](std::optional<UsualPrice>& best, const UsualPrice& one) {
    const UsualPrice pack = best && best->pack <= one.pack ? *best : one;
    best = best && best->unit <= one.unit ? best : one;
    best->pack = pack.pack;
    best->size = pack.size;
  };
  for (const FoodId member : kitchen.household.instead_of(id)) {
    for (const kitchen::Shop& shop : kitchen.shops) {
      for (const kitchen::Offer& offer : shop.offers) {
        if (offer.food != member || !may_buy(kitchen, member, shop)) {
          continue;
        }
        const std::optional<Rational> pack = price_of(offer, shop);
        if (!pack) {
          continue;
        }
        const Rational worth = kitchen.household.in_terms_of(member).worth;
        const Rational size = offer.size * worth;
        const UsualPrice one{*pack / size, *pack, size, offer.at};
        take(anywhere, one);
        if (can_be_had(*kitchen.plan, offer, shop)) {
          take(near, one);
        }
      }
    }
  }
  return near ? near : anywhere;
}

} // namespace

std::optional<UsualPrice> usual_price(const Kitchen& kitchen, FoodId food) {
  return least_price(kitchen, food, [&](const kitchen::Offer& offer, const kitchen::Shop& shop) {
    const Rational single =
        offer.price ? Rational(*offer.price) / offer.steps_per_price : offer.guess;
    return std::optional(Rational(single * (1 + shop.tax_on(kitchen.food(offer.food).department))));
  });
}

std::optional<Rational> replacement_price(const Kitchen& kitchen, FoodId food) {
  const auto price =
      least_price(kitchen, food, [](const kitchen::Offer& offer, const kitchen::Shop&) {
        return offer.price ? std::optional(Rational(*offer.price) / offer.steps_per_price)
                           : std::nullopt;
      });
  return price ? std::optional<Rational>(price->unit * kitchen.household.in_terms_of(food).worth)
               : std::nullopt;
}

} // namespace manciple::purchase
