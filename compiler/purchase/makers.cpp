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

void check_makers(const Kitchen& kitchen, resolve::Resolved& resolved, const Shopping& shopping,
                  text::Diagnostics& diagnostics) {
  using Key = std::tuple<foods::FoodId, std::string, std::string>;
  std::map<Key, bool> said_safe; // by what is eaten by whom: whether every maker says so
  std::set<std::tuple<std::size_t, std::string, Allergen>> told;
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
        if (offer.allergens && has(offer.allergens->contains, one) &&
            told.emplace(supply.line, person->name, one).second) {
          diagnostics.error(errors::allergen_of_maker, offer.at,
                            fmt::format("{} must not have {}, and the {} of {} contains it",
                                        person->name, foods::name(one),
                                        kitchen.food(line.food).name, shop.name),
                            fmt::format("buy it elsewhere: 'buying: {{{}: {{never at: [{}]}}}}' in "
                                        "plans/household.yaml",
                                        kitchen.food(line.food).name, shop.slug));
        }
      }
    }
  }
  // What is on hand has no maker that is known.
  for (const StockUse& used : shopping.from_stock) {
    const resolve::Use& use = resolved.uses[used.use];
    for (const Person* person : eaters_of(kitchen, resolved, use)) {
      for (const Allergen one : avoided(*person)) {
        said_safe[{use.food, std::string(foods::name(one)), person->name}] = false;
      }
    }
  }
  std::erase_if(resolved.labels, [&](const resolve::LabelCheck& label) {
    const auto known = said_safe.find({label.food, label.what, label.person});
    return known != said_safe.end() && known->second;
  });
}

} // namespace manciple::purchase
