#include <gtest/gtest.h>

#include "buying/stops/stop_search.hpp"
#include "solver/buying/build.hpp"
#include "solver/buying/small_model.hpp"

namespace manciple::buying {
namespace {

Table<ItemId, Prepared> prepared(const Model& model) {
  Table<ItemId, Prepared> items;
  for (const Item& item : model.items) {
    items.push_back(prepare(model, item));
  }
  return items;
}

/// Both shops are visited for as much as the packs cost in the end; so much the stops cost.
Model two_shops(Money near, Money far) {
  Model model;
  model.last_day = 3;
  model.shops.resize(2);
  model.stops.push_back({noon(1), ShopId(0), near, false});
  model.stops.push_back({noon(1), ShopId(1), far, false});
  model.items.push_back(item({need(2, 4)}, {pack(0, 4, 3 * dollar), pack(1, 4, 2 * dollar)}));
  model.items.push_back(item({need(2, 2)}, {pack(0, 2, 5 * dollar), pack(1, 2, 1 * dollar)}));
  return model;
}

TEST(Stops, AreMadeForWhatTheItemsSaveTogether) {
  // One dollar on the first item, four on the second.
  for (const auto& [far, made] : {std::pair(4 * dollar, true), std::pair(6 * dollar, false)}) {
    const Model model = two_shops(0, far);
    const Table<ItemId, Prepared> items = prepared(model);
    const Options options;
    WorkBudget budget(options);
    SubproblemCache cache(model, items, budget);
    const StopsResult result = choose_stops(cache, plain_terms(model), choices_of(model));
    EXPECT_EQ(result.bound, result.cost);
    EXPECT_EQ(result.open[StopId(1)], made);
  }
}

TEST(Stops, ArePaidForOnceHoweverOftenTheyAreChosen) {
  int charged = 0;
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    SCOPED_TRACE(seed);
    Dice dice(seed);
    Model model = make_small(dice, Features{});
    for (Stop& stop : model.stops) {
      stop.cost = stop.cost * 3 + dollar;
    }
    const Table<ItemId, Prepared> items = prepared(model);
    const Options options;
    WorkBudget budget(options);
    SubproblemCache cache(model, items, budget);
    const StopsResult first = choose_stops(cache, plain_terms(model), choices_of(model));
    for (const ItemId item : ids(items)) {
      for (std::size_t visit = 0; visit < items[item].visits.size(); ++visit) {
        charged += cache.share({item, visit}) > Cost{} ? 1 : 0;
      }
    }
    const StopsResult again = choose_stops(cache, plain_terms(model), choices_of(model));
    EXPECT_EQ(again.cost, first.cost);
    EXPECT_EQ(again.bound, first.bound);
    for (const StopId stop : ids(model.stops)) {
      Cost paid;
      for (const Meeting meeting : cache.at_stop(stop)) {
        paid += cache.share(meeting);
      }
      EXPECT_LE(paid, stop_cost(model.stops[stop]));
    }
  }
  EXPECT_GT(charged, 10);
}

} // namespace
} // namespace manciple::buying
