#include "bench/month.hpp"

#include <algorithm>

#include "purchase/dice.hpp"

namespace manciple::purchase {
namespace {

constexpr Day last_day = 30;
constexpr Amount unit = 1'000'000;

void add_stops(Model& model, int scale, Dice& dice) {
  // One long day of shopping, then short trips week by week; larger months go out more often.
  std::vector<Day> days{0};
  const int trips = std::min(4 + 2 * (scale - 1), 15);
  for (int trip = 1; trip <= trips; ++trip)
    days.push_back(trip * last_day / (trips + 1) + 1);
  const int stops = 11 * scale;
  const int first = 3 * scale;
  for (int i = 0; i < stops; ++i) {
    Stop stop;
    stop.day = i < first ? 0 : days[1 + static_cast<std::size_t>(i - first) % (days.size() - 1)];
    do {
      stop.shop = dice.index(model.shops.size());
    } while (std::any_of(model.stops.begin(), model.stops.end(), [&](const Stop& other) {
      return other.day == stop.day && other.shop == stop.shop;
    }));
    stop.cost = dice.pick(60, 200) * 1000;
    stop.always = i == 0;
    model.stops.push_back(stop);
  }
  std::stable_sort(model.stops.begin(), model.stops.end(),
                   [](const Stop& a, const Stop& b) { return a.day < b.day; });
}

void add_keeping(Good& good, Dice& dice) {
  switch (dice.number(0, 9)) {
  case 0:
  case 1: // leaf and berry
    good.keeps_cool = dice.number(4, 7);
    good.cool_place = Place::fridge;
    break;
  case 2:
  case 3: // root, cheese
    good.keeps_cool = dice.number(14, 30);
    good.cool_place = Place::fridge;
    break;
  case 4:
  case 5: // meat and fish
    good.keeps_cool = dice.number(1, 3);
    good.keeps_frozen = dice.number(90, 180);
    good.cool_place = Place::fridge;
    break;
  case 6: // milk and the like
    good.keeps_cool = dice.number(8, 14);
    good.keeps_opened = dice.number(5, 7);
    good.cool_place = Place::fridge;
    break;
  default:
    good.keeps_cool = 365;
    good.cool_place = Place::pantry;
  }
}

Good make_good(const Model& model, Dice& dice) {
  Good good;
  add_keeping(good, dice);
  const int uses = dice.number(2, 10);
  const Amount portion = dice.pick(5, 50) * 10 * unit;
  for (int i = 0; i < uses; ++i) {
    Demand demand;
    demand.day = dice.number(0, last_day);
    demand.amount = portion * dice.pick(2, 6) / 4;
    demand.takes_frozen = !dice.one_in(6);
    good.demands.push_back(demand);
  }
  const Money per_kilo = dice.pick(8, 150) * 1000;
  const std::size_t shops = std::min<std::size_t>(3, model.shops.size());
  // The first of them at least is visited.
  std::vector<ShopId> sellers{model.stops[dice.index(model.stops.size())].shop};
  while (sellers.size() < shops) {
    const ShopId shop = dice.index(model.shops.size());
    if (std::find(sellers.begin(), sellers.end(), shop) == sellers.end())
      sellers.push_back(shop);
  }
  const bool by_weight = !good.keeps_opened && dice.one_in(4);
  for (const ShopId shop : sellers) {
    Offer offer;
    offer.shop = shop;
    offer.by_weight = by_weight;
    offer.pack = by_weight ? 50 * unit : dice.pick(2, 20) * 50 * unit;
    const Money price = std::max<Money>(100, per_kilo * dice.pick(85, 115) / 100 *
                                                 (offer.pack / unit) / 1000 / 100 * 100);
    offer.cost.unit = price;
    // The first offer has no limit, so that there is always enough.
    if (!by_weight && !good.offers.empty() && dice.one_in(4)) { // two for a little less
      for (int n = 1; n <= 12; ++n)
        offer.cost.table.push_back(n * price - n / 2 * (price / 5));
    } else if (!by_weight && !good.offers.empty() && dice.one_in(4)) {
      offer.cost.limit = dice.number(4, 8);
    }
    good.offers.push_back(offer);
  }
  good.waste = per_kilo / 10;
  good.salvage = good.keeps_cool > 60 || good.keeps_frozen ? per_kilo / 2 : 0;
  good.salvage_cap = portion * 2;
  good.salvage_days = 7;
  good.room_cool = dice.pick(1000, 2500);
  good.room_frozen = dice.pick(1000, 1500);
  return good;
}

/// A food that nobody sells in time would make the month impossible: its uses move to days that
/// its shops can serve.
void make_possible(const Model& model, Good& good) {
  for (Demand& demand : good.demands) {
    const auto served = [&](Day day) {
      const int keeps = std::min(good.keeps_cool, good.keeps_opened.value_or(good.keeps_cool));
      return std::any_of(model.stops.begin(), model.stops.end(), [&](const Stop& stop) {
        return stop.day <= day && day - stop.day <= keeps && good.offers.front().shop == stop.shop;
      });
    };
    for (int tries = 0; tries <= last_day && !served(demand.day); ++tries)
      demand.day = (demand.day + 1) % (last_day + 1);
  }
}

/// Room that is short on the first nights, credit at one shop, a reduction at another.
void add_coupling(Model& model, const MonthSize& size) {
  const auto nights = static_cast<std::size_t>(last_day) + 1;
  const auto litres = [&](Volume per_month) {
    return std::vector<Volume>(nights, per_month * size.foods * 1'000'000);
  };
  model.room[static_cast<std::size_t>(Place::fridge)] = litres(38);
  model.room[static_cast<std::size_t>(Place::freezer)] = litres(12);
  model.room[static_cast<std::size_t>(Place::pantry)] = litres(50);
  // What is opened and shut again is kept in the door: the reference formulation has no room for
  // it.
  for (Good& good : model.goods)
    if (good.keeps_opened)
      good.room_cool = good.room_frozen = 0;
  model.shops[0].credit = 150'000;
  model.shops[1].over = 1'500'000;
  model.shops[1].off = 100'000;
}

} // namespace

Model make_month(const MonthSize& size) {
  Dice dice(size.seed);
  Model model;
  model.last_day = last_day;
  model.shops.resize(static_cast<std::size_t>(4 * size.shops));
  add_stops(model, size.shops, dice);
  for (int i = 0; i < 90 * size.foods; ++i) {
    Good good = make_good(model, dice);
    make_possible(model, good);
    model.goods.push_back(std::move(good));
  }
  if (size.coupled)
    add_coupling(model, size);
  return model;
}

} // namespace manciple::purchase
