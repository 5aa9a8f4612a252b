#include "purchase/makers.hpp"

#include "purchase/errors.hpp"
#include "resolve/eaters.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

namespace manciple::purchase {
namespace {

using foods::Allergen;
using kitchen::Kitchen;
using kitchen::Person;

bool has(const std::vector<Allergen>& all, Allergen one) {
  return std::find(all.begin(), all.end(), one) != all.end();
}

// The allergens that someone must not have.
std::set<Allergen> avoided(const Person& person) {
  std::set<Allergen> out;
  for (const kitchen::Limit& limit : person.limits) {
    const auto* of = std::get_if<foods::AnyClass>(&limit.what);
    if (const auto* allergen = of != nullptr ? std::get_if<Allergen>(of) : nullptr) {
      out.insert(*allergen);
    }
  }
  return out;
}

// Everybody who eats of a use, by the dishes that it ends up in; of what is in none, who lives
// here.
std::set<const Person*> eaters_of(const Kitchen& kitchen, const resolve::Resolved& resolved,
                                  const resolve::Use& use) {
  std::set<const Person*> out;
  for (const resolve::DishShare& share : resolved.shares_of(use)) {
    const std::vector<const Person*> at = resolve::eaters(kitchen, share.dish);
    out.insert(at.begin(), at.end());
  }
  const bool in_a_dish = std::holds_alternative<resolve::OfMaking>(use.reason) ||
                         std::holds_alternative<resolve::OfDish>(use.reason);
  for (const Person& person : kitchen.household.people) {
    if (!in_a_dish) {
      out.insert(&person);
    }
  }
  return out;
}

} // namespace

Kitchen without_makers(Kitchen kitchen, const resolve::Resolved& resolved,
                       text::Diagnostics& diagnostics) {
  // By food: who eats of it, as itself or in another's place.
  std::map<foods::FoodId, std::set<const Person*>> eaters;
  for (const resolve::Use& use : resolved.uses) {
    const std::set<const Person*> of_use = eaters_of(kitchen, resolved, use);
    for (const foods::FoodId food : kitchen.household.instead_of(use.food)) {
      eaters[food].insert(of_use.begin(), of_use.end());
    }
  }
  const auto refused = [&](const kitchen::Offer& offer) -> std::optional<std::string> {
    for (const Person* person : offer.allergens ? eaters[offer.food] : std::set<const Person*>()) {
      for (const Allergen one : avoided(*person)) {
        if (has(offer.allergens->contains, one)) {
          return fmt::format("{} must not have {}", person->name, foods::name(one));
        }
      }
    }
    return std::nullopt;
  };
  std::vector<std::pair<kitchen::Offer, std::string>> left_out;
  for (kitchen::Shop& shop : kitchen.shops) {
    std::erase_if(shop.offers, [&](const kitchen::Offer& offer) {
      const auto why = refused(offer);
      if (why) {
        left_out.emplace_back(offer, *why);
      }
      return why.has_value();
    });
  }
  for (const auto& [offer, why] : left_out) {
    const foods::FoodId food = offer.food;
    const bool elsewhere =
        std::any_of(kitchen.shops.begin(), kitchen.shops.end(), [&](const kitchen::Shop& shop) {
          return std::any_of(shop.offers.begin(), shop.offers.end(),
                             [&](const kitchen::Offer& other) { return other.food == food; });
        });
    const std::string what = fmt::format("{}, and this {} contains it, so it is not bought", why,
                                         kitchen.food(offer.food).name);
    if (elsewhere) {
      diagnostics.remark(errors::allergen_of_maker, offer.at, what);
    } else {
      diagnostics.warning(errors::allergen_of_maker, offer.at, what,
                          "no price list has another; look for one, or say who eats the dish: "
                          "{dish: ..., eaten by: [...]}");
    }
  }
  return kitchen;
}

std::vector<resolve::LabelCheck> labels_to_read(const Kitchen& kitchen,
                                                const resolve::Resolved& resolved,
                                                const Shopping& shopping) {
  using Key = std::tuple<foods::FoodId, std::string, std::string>;
  std::map<Key, bool> said_safe; // by what is eaten by whom: whether every maker says so
  for (const Supply& supply : shopping.supplies) {
    const Line& line = shopping.lines[supply.line];
    const kitchen::Shop& shop = kitchen.shop(shopping.visits[line.visit].shop);
    const kitchen::Offer& offer = shop.offers[line.offer];
    for (const Person* person : eaters_of(kitchen, resolved, resolved.uses[supply.use])) {
      for (const Allergen one : avoided(*person)) {
        const bool safe = offer.allergens && !has(offer.allergens->contains, one) &&
                          !has(offer.allergens->check_label, one);
        const auto known =
            said_safe.try_emplace({line.food, std::string(foods::name(one)), person->name}, true)
                .first;
        known->second = known->second && safe;
      }
    }
  }
  const auto no_maker_known = [&](foods::FoodId food, const resolve::Use& use) {
    for (const Person* person : eaters_of(kitchen, resolved, use)) {
      for (const Allergen one : avoided(*person)) {
        said_safe[{food, std::string(foods::name(one)), person->name}] = false;
      }
    }
  };
  for (const StockUse& used : shopping.from_stock) {
    no_maker_known(food_of(kitchen, used), resolved.uses[used.use]);
  }
  // What is still to be found may be any of the foods that stand for each other.
  for (const Shortfall& one : shopping.shortfalls) {
    if (one.to_find() > 0) {
      const resolve::Use& use = resolved.uses[one.use];
      for (const foods::FoodId food : kitchen.household.instead_of(use.food)) {
        no_maker_known(food, use);
      }
    }
  }
  std::vector<resolve::LabelCheck> out = resolved.labels;
  std::erase_if(out, [&](const resolve::LabelCheck& label) {
    const auto known = said_safe.find({label.food, label.what, label.person});
    return known != said_safe.end() && known->second;
  });
  return out;
}

} // namespace manciple::purchase
