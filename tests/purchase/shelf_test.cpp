#include <gtest/gtest.h>

#include "purchase/cover.hpp"
#include "purchase/small_model.hpp"

namespace manciple::purchase {
namespace {

constexpr std::uint64_t instances = 300;
constexpr std::size_t no_limit = 1'000'000;

Prices any_prices(const Model& model, Dice& dice) {
  Prices prices = no_prices(model);
  for (Fine& off : prices.off)
    off = dice.pick(0, 4) * fine_per_money / 10;
  for (std::vector<Fine>& place : prices.room)
    for (Fine& night : place)
      night = dice.one_in(3) ? dice.pick(0, 1000) : 0;
  return prices;
}

/// The least cost of a good, as its subproblem finds it.
Cost cheapest_of(const Model& model, const Prepared& good, const std::vector<bool>& made,
                 const Prices& prices) {
  Workspace workspace;
  return cheapest(model, good, prices, made, workspace).cost;
}

/// A small coupled model, ready for a shelf that may have all its stops.
struct Coupled {
  explicit Coupled(Dice& dice)
      : model(make_coupled(dice)),
        goods(prepared(model)),
        ledger(model, goods),
        all(model.stops.size(), true) {}

  static Model make_coupled(Dice& dice) {
    Features features;
    features.room = features.credit = features.spend_over = true;
    return make_small(dice, features);
  }
  static std::vector<Prepared> prepared(const Model& model) {
    std::vector<Prepared> goods;
    for (const Good& good : model.goods)
      goods.push_back(prepare(model, good));
    return goods;
  }

  Model model;
  std::vector<Prepared> goods;
  Ledger ledger;
  std::vector<bool> all;
  Limits limits{Options{}};
};

/// Calls the test with what a shelf at some prices has for a random set of stops, and other prices.
template <typename Test>
void for_each_shelf(Test test) {
  int tested = 0;
  for (std::uint64_t seed = 1; seed <= instances; ++seed) {
    SCOPED_TRACE(seed);
    Dice dice(seed);
    Coupled coupled(dice);
    const Model& model = coupled.model;
    Shelf shelf(coupled.ledger, coupled.all, any_prices(model, dice), coupled.limits);
    const Prices there = any_prices(model, dice);
    std::vector<bool> made;
    for (std::size_t stop = 0; stop < model.stops.size(); ++stop)
      made.push_back(!dice.one_in(4));
    std::vector<const Shelved*> taken;
    if (shelf.take(made, fine(dice.pick(0, 20'000)), no_limit, taken) != Shelf::Got::all)
      continue;
    ++tested;
    test(model, shelf, made, taken, there);
  }
  EXPECT_GT(tested, 50);
}

TEST(Shelf, HasTheCheapestPlanOfAnyStops) {
  for_each_shelf([](const Model& model, const Shelf& shelf, const std::vector<bool>& made,
                    const std::vector<const Shelved*>& taken, const Prices&) {
    const Tariff rates = tariff(model, shelf.prices(), made);
    Network::Way way;
    for (const Shelved* const one : taken) {
      const Prepared& good = one->network.good();
      if (good.opened()) // packs of one day are used in any order there
        continue;
      const Cost least = one->network.shortest(rates, way);
      EXPECT_NEAR(static_cast<double>(least.value),
                  static_cast<double>(cheapest_of(model, good, made, shelf.prices()).value),
                  static_cast<double>(rounding));
    }
  });
}

TEST(Shelf, BoundsWhatAGoodCostsWithAnyCharges) {
  for (std::uint64_t seed = 1; seed <= 100; ++seed) {
    SCOPED_TRACE(seed);
    Dice dice(seed);
    Coupled coupled(dice);
    const Model& model = coupled.model;
    const std::vector<Prepared>& goods = coupled.goods;
    const Prices prices = first_prices(model);
    Shelf shelf(coupled.ledger, coupled.all, prices, coupled.limits);
    shelf.lay_out(fine(1000), no_limit);
    Workspace workspace;
    for (GoodId good = 0; good < goods.size(); ++good) {
      const RoomPrices room = room_prices(model, prices, model.goods[good]);
      Terms terms;
      terms.room = &room;
      for (const Visit& visit : goods[good].visits) {
        terms.per_money.push_back(per_money(model, prices, visit.stop));
        terms.charge.push_back(dice.one_in(4)   ? impossible
                               : dice.one_in(2) ? Cost{fine(dice.pick(1, 2000)), 1}
                                                : Cost{});
      }
      const std::optional<Outcome> found = shelf.at_least(good, terms);
      if (!found || goods[good].opened())
        continue;
      EXPECT_LE(found->cost.value, cheapest(goods[good], terms, workspace).cost.value + rounding);
    }
  }
}

TEST(Shelf, PromisesNothingOfPlansThatItDoesNotHave) {
  for_each_shelf([](const Model& model, const Shelf& shelf, const std::vector<bool>& made,
                    const std::vector<const Shelved*>& taken, const Prices& there) {
    const Tariff rates = tariff(model, there, made);
    const Drop dropped = drop(model, shelf.prices(), there);
    Network::Way way;
    for (const Shelved* const one : taken) {
      const Prepared& good = one->network.good();
      if (good.opened())
        continue;
      const Fine least = one->network.shortest(rates, way).value;
      EXPECT_LE(std::min(least, one->beyond(dropped)),
                cheapest_of(model, good, made, there).value + rounding);
    }
  });
}

TEST(Cover, KnowsTheCheapestPlansAtOtherPrices) {
  for_each_shelf([](const Model& model, const Shelf& shelf, const std::vector<bool>& made,
                    const std::vector<const Shelved*>& taken, const Prices& there) {
    Fine sum = 0;
    bool opened = false;
    for (const Shelved* const one : taken) {
      sum += cheapest_of(model, one->network.good(), made, there).value;
      opened = opened || one->network.good().opened();
    }
    const auto slack = static_cast<double>(rounding * static_cast<Fine>(2 * taken.size()));
    const Least least = least_of_all(model, made, shelf, taken, there, impossible);
    Limits limits{Options{}};
    const Cover cover(model, made, shelf, taken, there, fine(1000), no_limit, limits);
    ASSERT_TRUE(cover.finished());
    EXPECT_GE(static_cast<double>(least.cost.value), static_cast<double>(sum) - slack);
    EXPECT_GE(static_cast<double>(cover.least().value), static_cast<double>(sum) - slack);
    const Cost enough{sum - fine(500), 0};
    EXPECT_GE(least_of_all(model, made, shelf, taken, there, enough).cost,
              std::min(enough, least.cost));
    if (opened)
      return;
    EXPECT_LE(static_cast<double>(least.cost.value), static_cast<double>(sum) + slack);
    EXPECT_LE(static_cast<double>(cover.least().value), static_cast<double>(sum) + slack);
  });
}

} // namespace
} // namespace manciple::purchase
