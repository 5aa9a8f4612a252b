#include "purchase/prices.hpp"

#include <algorithm>

namespace manciple::purchase {
namespace {

std::size_t index(Place place) {
  return static_cast<std::size_t>(place);
}

} // namespace

Prices no_prices(const Model& model) {
  Prices prices;
  for (std::size_t place = 0; place < place_count; ++place)
    prices.room[place].assign(model.room[place].size(), 0);
  prices.credit.assign(model.shops.size(), 0);
  prices.off.assign(model.stops.size(), 0);
  for (const Stop& stop : model.stops)
    prices.targets.push_back(model.shops[stop.shop].off > 0 ? Target::open : Target::missed);
  return prices;
}

Prices first_prices(const Model& model) {
  Prices prices = no_prices(model);
  for (StopId stop = 0; stop < model.stops.size(); ++stop) {
    const Shop& shop = model.shops[model.stops[stop].shop];
    if (shop.off > 0)
      prices.off[stop] = fine_per_money * shop.off / shop.over;
  }
  return prices;
}

Prices between(const Prices& a, const Prices& b, double part) {
  Prices result = a;
  const auto mix = [&](std::vector<Fine>& to, const std::vector<Fine>& other) {
    for (std::size_t i = 0; i < to.size(); ++i)
      to[i] += static_cast<Fine>(part * static_cast<double>(other[i] - to[i]));
  };
  for (std::size_t place = 0; place < place_count; ++place)
    mix(result.room[place], b.room[place]);
  mix(result.credit, b.credit);
  mix(result.off, b.off);
  return result;
}

bool has_room_limit(const Model& model) {
  return std::any_of(model.room.begin(), model.room.end(),
                     [](const std::vector<Volume>& room) { return !room.empty(); });
}

bool is_coupled(const Model& model) {
  return has_room_limit(model) ||
         std::any_of(model.shops.begin(), model.shops.end(),
                     [](const Shop& shop) { return shop.credit > 0 || shop.off > 0; });
}

Fine per_money(const Model& model, const Prices& prices, StopId stop) {
  return fine_per_money - prices.credit[model.stops[stop].shop] - prices.off[stop];
}

Fine off_gain(const Model& model, const Prices& prices, StopId stop) {
  const ShopId id = model.stops[stop].shop;
  const Shop& shop = model.shops[id];
  if (prices.targets[stop] == Target::missed)
    return 0;
  const Fine gain = shop.off * (fine_per_money - prices.credit[id]) - prices.off[stop] * shop.over;
  return prices.targets[stop] == Target::reached ? gain : std::max<Fine>(0, gain);
}

Fine credit_gain(const Model& model, const Prices& prices, ShopId shop) {
  return model.shops[shop].credit * (fine_per_money - prices.credit[shop]);
}

Fine room_worth(const Model& model, const Prices& prices) {
  Fine sum = 0;
  for (std::size_t place = 0; place < place_count; ++place)
    for (std::size_t night = 0; night < prices.room[place].size(); ++night)
      sum += prices.room[place][night] * model.room[place][night];
  return sum;
}

Tariff tariff(const Model& model, const Prices& prices, const std::vector<bool>& made) {
  Tariff result;
  for (StopId stop = 0; stop < model.stops.size(); ++stop) {
    result.discount.push_back(fine_per_money - per_money(model, prices, stop));
    result.closed.push_back(made[stop] ? 0 : 1);
  }
  result.discount.push_back(0);
  result.closed.push_back(0);
  for (std::size_t place = 0; place < place_count; ++place) {
    const std::vector<Fine>& nights = prices.room[place];
    std::vector<Fine> sums{0};
    for (const Fine night : nights)
      sums.push_back(sums.back() + night);
    if (sums.back() > 0)
      result.room[place] = std::move(sums);
  }
  return result;
}

RoomPrices room_prices(const Model& model, const Prices& prices, const Good& good) {
  RoomPrices result;
  const auto nights = static_cast<std::size_t>(model.last_day) + 1;
  const auto sums = [&](Place place, Volume unit) {
    std::vector<Fine> sum(nights + 1, 0);
    const std::vector<Fine>& room = prices.room[index(place)];
    for (std::size_t night = 0; night < nights; ++night)
      sum[night + 1] = sum[night] + (room.empty() ? 0 : room[night] * unit);
    return sum;
  };
  result.cool = sums(good.cool_place, good.room_cool);
  result.frozen = sums(Place::freezer, good.keeps_frozen ? good.room_frozen : 0);
  if (result.cool.back() == 0 && result.frozen.back() == 0)
    return {};
  return result;
}

Outcome cheapest(const Model& model, const Prepared& good, const Prices& prices,
                 const std::vector<bool>& made, Workspace& workspace) {
  const RoomPrices room = room_prices(model, prices, *good.good);
  Terms terms;
  terms.room = &room;
  for (const Visit& visit : good.visits) {
    terms.charge.push_back(made[visit.stop] ? Cost{} : impossible);
    terms.per_money.push_back(per_money(model, prices, visit.stop));
  }
  return cheapest(good, terms, workspace);
}

void set_prices(Ledger& ledger, const Prices& prices) {
  for (GoodId good = 0; good < ledger.goods().size(); ++good) {
    const Prepared& prepared = ledger.goods()[good];
    std::vector<Fine> worth;
    bool plain = true;
    for (const Visit& visit : prepared.visits) {
      worth.push_back(per_money(ledger.model(), prices, visit.stop));
      plain = plain && worth.back() == fine_per_money;
    }
    if (plain)
      worth.clear();
    ledger.set_prices(good, room_prices(ledger.model(), prices, *prepared.good), std::move(worth));
  }
}

} // namespace manciple::purchase
