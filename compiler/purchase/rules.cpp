#include "purchase/rules.hpp"

#include "foods/spoken.hpp"

#include <algorithm>

namespace manciple::purchase {
namespace {

const Rational smallest_container(3, 4);
const Rational largest_container(5, 4);
const Rational give_and_take(1, 10);

bool names(const std::vector<kitchen::ShopName>& list, const kitchen::Shop& shop) {
  return std::any_of(list.begin(), list.end(),
                     [&](const kitchen::ShopName& name) { return name.slug == shop.slug; });
}

} // namespace

bool is_usual_container(const Rational& amount, const Rational& usual) {
  return amount >= usual * smallest_container && amount <= usual * largest_container;
}

bool is_worth_using_up(const foods::Food& food, const Rational& left, const Rational& of) {
  return left >= of * give_and_take && foods::is_more_than_scraps(food, left);
}

bool may_buy(const kitchen::Kitchen& kitchen, foods::FoodId food, const kitchen::Shop& shop) {
  const auto& rules = kitchen.household.buying;
  return std::none_of(rules.begin(), rules.end(), [&](const kitchen::BuyingRule& rule) {
    return rule.food == food &&
           ((!rule.only_at.empty() && !names(rule.only_at, shop)) || names(rule.never_at, shop));
  });
}

Rational preference(const kitchen::Kitchen& kitchen, foods::FoodId food,
                    const kitchen::Shop& shop) {
  const auto& rules = kitchen.household.buying;
  const bool dearer = std::any_of(rules.begin(), rules.end(), [&](const kitchen::BuyingRule& rule) {
    return rule.food == food && !rule.prefer.empty() && !names(rule.prefer, shop);
  });
  return dearer ? kitchen::preference : Rational(0);
}

} // namespace manciple::purchase
