#include "purchase/likely.hpp"

#include "foods/convert.hpp"
#include "foods/spoken.hpp"
#include "measure/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

namespace manciple::purchase {
namespace {

using foods::Food;
using foods::FoodId;
using kitchen::Kitchen;
using kitchen::Offer;
using kitchen::Shop;
using measure::Rational;

/// Against the least price that is known elsewhere.
const Rational dearer_than_known{5, 4};
/// What is priced nowhere counts about three dollars a pound, in cents for a gram or millilitre,
/// and a dollar a piece of what has no weight; twice that where it is not known to be of a
/// department that the shop has. Our own choice: food on hand is used first, and what is thrown
/// away counts.
const Rational cents_a_gram{2, 3};
const Rational cents_a_piece = 100;
constexpr int less_likely_counts = 2;

// How likely a shop is to have a food of a department.
enum class Chance : std::uint8_t { none, some, good };

class Likely {
public:
  explicit Likely(Kitchen& kitchen) : kitchen_(kitchen) {
    for (const Shop& shop : kitchen.shops) {
      has_prices_.push_back(!shop.offers.empty());
    }
    for (const kitchen::Trip& trip : kitchen.plan->trips) {
      for (const kitchen::Candidate& stop : trip.stops) {
        may_stop_at_.insert(stop.shop);
      }
    }
  }

  /// The pack that a line asks for, "2 (15 oz) cans": that is how it is sold. What has no weight is
  /// bought in the word that all its lines have: "1 pack nappies".
  void asked_for(FoodId id, const kitchen::Ingredient& line) {
    if (foods::basis(kitchen_.food(id)) == measure::Dimension::count) {
      const std::string word = line.containers ? line.amount->measure.piece : std::string();
      const auto [of, first] = words_.emplace(id, word);
      of->second = first || of->second == word ? word : std::string();
      return;
    }
    const auto bought = foods::as_purchased(kitchen_.food(id), *line.amount);
    if (line.containers && *line.containers > 0 && bought) {
      packs_.emplace(id, bought->amount / *line.containers);
    }
  }

  void food(FoodId id) {
    const std::vector<FoodId> group = kitchen_.household.instead_of(id);
    const auto of_group = [&](const Offer& offer) {
      return std::find(group.begin(), group.end(), offer.food) != group.end();
    };
    bool listed = false;           // by any shop, priced or not
    std::optional<Rational> least; // cents for a unit of the food
    for (const Shop& shop : kitchen_.shops) {
      for (const Offer& offer : shop.offers) {
        if (!of_group(offer)) {
          continue;
        }
        listed = true;
        if (const auto unit = price_of_unit(offer, id)) {
          least = least ? std::min(*least, *unit) : *unit;
        }
      }
    }
    for (Shop& shop : kitchen_.shops) {
      const bool here = std::any_of(shop.offers.begin(), shop.offers.end(), of_group);
      const bool open = !has_prices_[static_cast<std::size_t>(shop.id)];
      const Chance chance = chance_of(shop, kitchen_.food(id));
      if (!here && (open || !listed) && chance != Chance::none && may_stop_at_.contains(shop.id) &&
          !kitchen_.food(id).given) {
        Offer offer = foods_offer(id);
        offer.shop = shop.id;
        offer.guess = guess(offer, id, least, chance);
        shop.offers.push_back(std::move(offer));
      }
      for (Offer& offer : shop.offers) {
        if (of_group(offer) && !offer.price && offer.guess == 0) {
          offer.guess = guess(offer, id, least, Chance::good);
        }
      }
    }
  }

private:
  // In terms of units of `id`.
  Rational units(const Offer& offer, FoodId id) const {
    return offer.size * kitchen_.household.in_terms_of(offer.food).worth /
           kitchen_.household.in_terms_of(id).worth;
  }
  std::optional<Rational> price_of_unit(const Offer& offer, FoodId id) const {
    return offer.price ? std::optional<Rational>(Rational(*offer.price) / offer.steps_per_price /
                                                 units(offer, id))
                       : std::nullopt;
  }
  Rational guess(const Offer& offer, FoodId id, const std::optional<Rational>& least,
                 Chance chance) const {
    if (least) {
      return *least * units(offer, id) * dearer_than_known;
    }
    const bool counted = foods::basis(kitchen_.food(offer.food)) == measure::Dimension::count;
    return offer.size * (counted ? cents_a_piece : cents_a_gram) *
           (chance == Chance::good ? 1 : less_likely_counts);
  }

  Chance chance_of(const Shop& shop, const Food& food) const {
    const auto of_department = [&](const Offer& offer) {
      return !offer.likely && kitchen_.food(offer.food).department == food.department;
    };
    if (!shop.walk.empty()) {
      return std::find(shop.walk.begin(), shop.walk.end(), food.department) != shop.walk.end()
                 ? Chance::good
                 : Chance::none;
    }
    return std::any_of(shop.offers.begin(), shop.offers.end(), of_department) ? Chance::good
                                                                              : Chance::some;
  }

  Offer foods_offer(FoodId id) const {
    const foods::ShopUnit unit = foods::shop_unit(kitchen_.food(id), kitchen_.household.system);
    Offer offer;
    offer.food = id;
    offer.likely = true;
    offer.pack = unit.word;
    offer.size = unit.size;
    offer.by_weight = unit.by_weight;
    if (const auto word = words_.find(id); word != words_.end() && !word->second.empty()) {
      offer.pack = word->second;
    }
    const auto pack = packs_.find(id);
    if (pack != packs_.end() && foods::basis(kitchen_.food(id)) == measure::Dimension::mass) {
      const measure::Quantity weight{pack->second, measure::Unit::gram};
      offer.pack =
          fmt::format("{} {}", measure::print_for_shop(weight, kitchen_.household.system),
                      kitchen_.food(id).department == foods::Department::canned ? "can" : "pack");
      offer.size = pack->second;
      offer.by_weight = false;
    }
    return offer;
  }

  Kitchen& kitchen_;
  std::vector<bool> has_prices_; ///< by shop
  std::set<kitchen::ShopId> may_stop_at_;
  std::map<FoodId, Rational> packs_;    ///< what is in one, as purchased
  std::map<FoodId, std::string> words_; ///< what one is called, of what has no weight
};

} // namespace

Kitchen with_likely_offers(Kitchen kitchen, const resolve::Resolved& resolved) {
  Likely likely(kitchen);
  for (const resolve::Use& use : resolved.uses) {
    const kitchen::Plan& plan = *kitchen.plan;
    if (const auto* of = std::get_if<resolve::OfMaking>(&use.reason)) {
      likely.asked_for(
          use.food, kitchen.recipe(resolved.making(of->making).recipe).ingredients[of->ingredient]);
    } else if (const auto* staple = std::get_if<resolve::OfStaple>(&use.reason)) {
      likely.asked_for(use.food, plan.staples[staple->staple].what);
    } else if (const auto* extra = std::get_if<resolve::OfExtra>(&use.reason)) {
      likely.asked_for(use.food, plan.extra[extra->extra].what);
    }
  }
  std::set<FoodId> done;
  for (const resolve::Use& use : resolved.uses) {
    if (use.amount > 0 && done.insert(use.food).second) {
      likely.food(use.food);
    }
  }
  return kitchen;
}

} // namespace manciple::purchase
