#include <gtest/gtest.h>

#include <algorithm>
#include <array>

#include "buying/solve.hpp"
#include "dice.hpp"
#include "solver/buying/build.hpp"
#include "solver/buying/check.hpp"

namespace manciple::buying {
namespace {

/// Wagner and Whitin, "Dynamic version of the economic lot size model", Management Science 5
/// (1958), twelve-month example; figures from memory. Holding costs 1 a unit and month.
constexpr std::array<Amount, 12> demand_of{69, 29, 36, 61, 61, 26, 34, 67, 45, 67, 79, 56};
constexpr std::array<Money, 12> set_up_of{85, 102, 102, 101, 98, 114, 105, 86, 119, 110, 98, 114};
constexpr Money published_optimum = 864;

/// A month's set-up is a stop of its own. By their planning theorem a month's demand comes from one
/// order, so each is an item of its own, whose price at a stop is what holding it until then costs.
Model lot_sizing() {
  Model model;
  model.last_day = 11;
  model.shops.resize(12);
  for (std::size_t month = 0; month < 12; ++month) {
    model.stops.push_back({noon(static_cast<Day>(month)), ShopId(month), set_up_of[month], false});
  }
  for (std::size_t month = 0; month < 12; ++month) {
    std::vector<Offer> offers;
    for (std::size_t order = 0; order <= month; ++order) {
      offers.push_back(
          pack(order, demand_of[month], static_cast<Money>(month - order) * demand_of[month]));
    }
    model.items.push_back(item({need(static_cast<Day>(month), demand_of[month])}, offers));
  }
  return model;
}

TEST(Published, WagnerAndWhitinsTwelveMonths) {
  const Model model = lot_sizing();
  const Solution solution = solve(model);
  EXPECT_EQ(solution.status, Status::optimal);
  EXPECT_EQ(check(model, solution), std::vector<std::string>{});
  EXPECT_EQ(solution.total, published_optimum);
}

/// The Internet shopping problem (Blazewicz, Kovalyov, Musial, Urbanski and Wojciechowski 2010):
/// products, shops with prices and a delivery cost each, one trip. By trying all sets of shops.
Money by_brute_force(const std::vector<std::vector<Money>>& prices,
                     const std::vector<Money>& delivery) {
  Money best = std::numeric_limits<Money>::max();
  for (std::size_t set = 1; set < std::size_t{1} << delivery.size(); ++set) {
    Money total = 0;
    for (std::size_t shop = 0; shop < delivery.size(); ++shop) {
      total += (set >> shop & 1U) != 0 ? delivery[shop] : 0;
    }
    for (const std::vector<Money>& product : prices) {
      Money least = std::numeric_limits<Money>::max() / 100;
      for (std::size_t shop = 0; shop < delivery.size(); ++shop) {
        if ((set >> shop & 1U) != 0 && product[shop] > 0) {
          least = std::min(least, product[shop]);
        }
      }
      total += least;
    }
    best = std::min(best, total);
  }
  return best;
}

TEST(Published, InternetShoppingByBruteForce) {
  for (std::uint64_t seed = 1; seed <= 100; ++seed) {
    SCOPED_TRACE(seed);
    Dice dice(seed);
    const auto shops = static_cast<std::size_t>(dice.number(1, 10));
    const int products = dice.number(1, 12);
    Model model = one_shop(0, {});
    model.shops.resize(shops);
    std::vector<Money> delivery;
    for (std::size_t shop = 0; shop < shops; ++shop) {
      delivery.push_back(dice.pick(0, 30) * 1000);
      model.stops.push_back({noon(0), ShopId(shop), delivery.back(), false});
    }
    std::vector<std::vector<Money>> prices;
    for (int i = 0; i < products; ++i) {
      std::vector<Money> product;
      std::vector<Offer> offers;
      const std::size_t sure = dice.index(shops);
      for (std::size_t shop = 0; shop < shops; ++shop) {
        const bool sold = shop == sure || !dice.one_in(4);
        product.push_back(sold ? dice.pick(1, 40) * 500 : 0);
        if (sold) {
          offers.push_back(pack(shop, 1, product.back()));
        }
      }
      prices.push_back(product);
      model.items.push_back(item({need(0, 1)}, offers));
    }
    const Solution solution = solve(model);
    EXPECT_EQ(solution.status, Status::optimal);
    EXPECT_EQ(solution.total, by_brute_force(prices, delivery));
  }
}

} // namespace
} // namespace manciple::buying
