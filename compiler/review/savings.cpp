// What it would have cost elsewhere.
#include "purchase/rules.hpp"
#include "review/review.hpp"

#include <algorithm>
#include <limits>
#include <set>

namespace manciple::review {
namespace {

using kitchen::Kitchen;
using kitchen::Offer;
using kitchen::Receipt;
using kitchen::ShopId;

constexpr int days_a_year = 365;

// What was bought of a food on a day at a shop.
struct Basket {
  Rational amount;
  Rational paid;
};

// Where the household shops: the stops that the plan thinks of, and those it made.
std::set<ShopId> shops_of(const Kitchen& kitchen) {
  std::set<ShopId> out;
  for (const kitchen::Trip& trip : kitchen.plan->trips) {
    for (const kitchen::Candidate& stop : trip.stops) {
      out.insert(stop.shop);
    }
  }
  for (const Receipt& receipt : kitchen.receipts) {
    out.insert(receipt.shop);
  }
  return out;
}

bool is_sold(const Offer& offer, Date day) {
  return (!offer.from || *offer.from <= day) && (!offer.until || day <= *offer.until);
}

// So many of its packs, or steps of its scale, that it is enough.
int enough(const Offer& offer, const Rational& amount) {
  const Rational most = std::numeric_limits<int>::max(); // nobody carries as much
  return static_cast<int>(
      measure::to_int64(measure::ceil(std::min(most, Rational(amount / offer.size)))));
}

// The least that an amount costs at another shop, in packs of one size; what is more than that is
// worth what leftovers are worth to the household.
std::optional<Rational> elsewhere(const Kitchen& kitchen, const std::set<ShopId>& shops,
                                  const Receipt& receipt, foods::FoodId food,
                                  const Rational& amount) {
  std::optional<Rational> least;
  for (const ShopId id : shops) {
    const kitchen::Shop& shop = kitchen.shop(id);
    if (id == receipt.shop || !purchase::may_buy(kitchen, food, shop)) {
      continue;
    }
    for (const Offer& offer : shop.offers) {
      if (offer.food != food || !is_sold(offer, receipt.date)) {
        continue;
      }
      const int packs = enough(offer, amount);
      const auto cost = offer.exact_cost(packs, receipt.date);
      if (!cost) {
        continue;
      }
      const Rational bought = offer.size * packs;
      const Rational left = (bought - amount) / bought * kitchen.household.leftovers_worth;
      const Rational net = *cost * (1 - left);
      least = least ? std::min(*least, net) : net;
    }
  }
  return least;
}

// What others would have paid more for it, where what was paid is the price for members.
Rational by_member_price(const kitchen::Shop& shop, foods::FoodId food, const Basket& basket,
                         Date day) {
  for (const Offer& offer : shop.offers) {
    const Rational packs = basket.amount / offer.size;
    if (offer.food != food || !offer.others_price || !offer.price || denominator(packs) != 1) {
      continue;
    }
    const auto cost = offer.cost(enough(offer, basket.amount), day);
    if (cost && Rational(*cost) == basket.paid) {
      return packs / offer.steps_per_price * (*offer.others_price - *offer.price);
    }
  }
  return 0;
}

} // namespace

std::vector<ShopSaving> savings(const Kitchen& kitchen, Date until) {
  const std::set<ShopId> shops = shops_of(kitchen);
  const text::Date end = std::min(until, kitchen.plan->until + std::chrono::days(1));
  const Rational years = Rational((end - kitchen.plan->begins).count()) / days_a_year;
  std::map<ShopId, ShopSaving> out;
  for (const Receipt& receipt : kitchen.receipts) {
    if (!history::is_of_plan(receipt, *kitchen.plan, until)) {
      continue;
    }
    const kitchen::Shop& shop = kitchen.shop(receipt.shop);
    ShopSaving& of = out[receipt.shop];
    of.shop = receipt.shop;
    ++of.stops;
    of.stop_costs += shop.stop_cost.value_or(kitchen.household.stop_cost);
    of.cash_back += shop.comes_back(receipt.goods(), receipt.credit);
    if (shop.membership) {
      of.membership = *shop.membership * std::max(Rational(0), years);
    }
    std::map<foods::FoodId, Basket> baskets;
    for (const kitchen::Bought& line : receipt.bought) {
      if (line.paid && line.amount > 0) {
        Basket& basket = baskets[*line.what.food()];
        basket.amount += line.amount;
        basket.paid += *line.paid;
      }
    }
    for (const auto& [food, basket] : baskets) {
      const auto cost = elsewhere(kitchen, shops, receipt, food, basket.amount);
      of.goods += cost ? Rational(*cost - basket.paid) : Rational(0);
      ++(cost ? of.compared : of.only_here);
      const Rational less = by_member_price(shop, food, basket, receipt.date);
      if (less > 0) {
        of.by_member_prices = of.by_member_prices.value_or(0) + less;
      }
    }
  }
  std::vector<ShopSaving> sorted;
  for (auto& [shop, saving] : out) {
    sorted.push_back(std::move(saving));
  }
  return sorted;
}

} // namespace manciple::review
