#include "review/months.hpp"

#include "foods/spoken.hpp"
#include "review/usual.hpp"

#include <algorithm>
#include <tuple>

namespace manciple::review {
namespace {

bool same(const PricePoint& a, const PricePoint& b) {
  return std::tie(a.date, a.shop, a.unit, a.paid) == std::tie(b.date, b.shop, b.unit, b.paid);
}

} // namespace

std::vector<PriceHistory> price_histories(const std::vector<Month>& months) {
  std::map<std::string, PriceHistory> by_name;
  for (const Month& month : months) {
    const kitchen::Kitchen& kitchen = *month.kitchen;
    for (const FoodPrices& prices : month.review->prices) {
      const foods::Food& food = kitchen.food(prices.food);
      const foods::PriceUnit unit = foods::price_unit(food, kitchen.household.system);
      PriceHistory& of = by_name[food.name];
      of.food = food.name;
      of.unit = unit.word;
      for (const PriceSeen& seen : prices.seen) {
        of.points.push_back(
            {seen.date, kitchen.shop(seen.shop).name, Rational(seen.unit * unit.size), seen.paid,
             foods::customary(food, seen.amount, kitchen.household.system), seen.sale});
      }
    }
  }
  std::vector<PriceHistory> out;
  for (auto& [name, of] : by_name) {
    std::stable_sort(of.points.begin(), of.points.end(),
                     [](const auto& a, const auto& b) { return a.date < b.date; });
    // A receipt may be of the days of two plans.
    of.points.erase(std::unique(of.points.begin(), of.points.end(), same), of.points.end());
    of.usual = usual(of.points);
    const auto lowest =
        std::min_element(of.points.begin(), of.points.end(),
                         [](const auto& a, const auto& b) { return a.unit < b.unit; });
    of.lowest = static_cast<std::size_t>(lowest - of.points.begin());
    out.push_back(std::move(of));
  }
  return out;
}

} // namespace manciple::review
