#include "purchase/small_model.hpp"

#include <algorithm>

namespace manciple::purchase {
namespace {

constexpr Amount unit = 1'000'000;

class SmallModel {
public:
  SmallModel(Dice& dice, const Features& features) : dice_(dice), features_(features) {}

  Model make() {
    model_.last_day = dice_.number(6, 12);
    model_.shops.resize(static_cast<std::size_t>(dice_.number(1, 3)));
    for (Shop& shop : model_.shops) {
      if (features_.credit && dice_.one_in(2))
        shop.credit = dice_.pick(1, 6) * 4000;
      if (features_.spend_over && dice_.one_in(2)) {
        shop.over = dice_.pick(4, 20) * 10000;
        shop.off = dice_.pick(1, 4) * 10000;
      }
    }
    const int stops = dice_.number(2, 5);
    for (int i = 0; i < stops; ++i)
      add_stop(i == 0);
    const int goods = dice_.number(1, 3);
    for (int i = 0; i < goods; ++i)
      model_.goods.push_back(good());
    if (features_.room)
      add_room();
    return model_;
  }

private:
  void add_stop(bool first) {
    Stop stop;
    stop.day = first || dice_.one_in(3) ? 0 : dice_.number(0, model_.last_day);
    stop.shop = dice_.index(model_.shops.size());
    const bool taken =
        std::any_of(model_.stops.begin(), model_.stops.end(), [&](const Stop& other) {
          return other.day == stop.day && other.shop == stop.shop;
        });
    if (taken)
      return;
    stop.cost = dice_.pick(0, 4) * 7000;
    stop.always = dice_.one_in(5);
    model_.stops.push_back(stop);
  }

  Good good() {
    Good good;
    good.keeps_cool = dice_.one_in(3) ? 60 : dice_.number(1, 10);
    if (features_.freezing && dice_.one_in(2))
      good.keeps_frozen = dice_.one_in(3) ? dice_.number(4, 12) : 90;
    if (features_.opened && dice_.one_in(3))
      good.keeps_opened = dice_.number(0, 5);
    good.cool_place = dice_.one_in(2) ? Place::fridge : Place::pantry;
    good.room_cool = dice_.pick(1, 3) * 500;
    good.room_frozen = dice_.pick(1, 3) * 500;
    // Opened packs are dear for the reference, which looks at every single one.
    const bool opened = good.keeps_opened.has_value();
    const int demands = dice_.number(1, opened ? 3 : 4);
    for (int i = 0; i < demands; ++i) {
      Demand demand;
      demand.day = dice_.number(0, model_.last_day);
      // Rarely more than can be had fresh: most instances are to have a solution.
      for (int tries = 0; tries < 20 && !near_stop(good, demand.day); ++tries)
        demand.day = dice_.number(0, model_.last_day);
      demand.amount = dice_.pick(1, 9) * 100 * unit;
      demand.takes_frozen = !dice_.one_in(3);
      if (features_.longest_age && dice_.one_in(5))
        demand.longest_age = dice_.number(1, 7);
      good.demands.push_back(demand);
    }
    const int offers = opened ? 2 : dice_.number(2, 3);
    for (int i = 0; i < offers; ++i) {
      good.offers.push_back(offer(i == 0));
      PackCost& cost = good.offers.back().cost;
      if (opened && !good.offers.back().by_weight) {
        cost.limit = std::min(cost.limit, 4);
        if (cost.table.size() > 4)
          cost.table.resize(4);
      }
    }
    if (features_.left_over) {
      good.waste = dice_.one_in(2) ? 0 : dice_.pick(1, 30) * 1000;
      good.salvage = dice_.one_in(2) ? 0 : dice_.pick(1, 30) * 1000;
      good.salvage_cap = dice_.pick(0, 8) * 100 * unit;
      good.salvage_days = dice_.number(0, 3);
    }
    return good;
  }

  bool near_stop(const Good& good, Day day) const {
    return std::any_of(model_.stops.begin(), model_.stops.end(), [&](const Stop& stop) {
      return stop.day <= day && day - stop.day <= good.keeps_cool;
    });
  }

  Offer offer(bool first) {
    Offer offer;
    offer.shop = first ? model_.stops[dice_.index(model_.stops.size())].shop
                       : dice_.index(model_.shops.size());
    if (dice_.one_in(first ? 12 : 4))
      offer.first_day = dice_.number(0, model_.last_day);
    if (dice_.one_in(first ? 12 : 4))
      offer.last_day = dice_.number(0, model_.last_day);
    offer.by_weight = features_.by_weight && dice_.one_in(4);
    offer.pack = (offer.by_weight ? 50 : dice_.pick(1, 7) * 150) * unit;
    const Money price = dice_.pick(5, 40) * offer.pack / unit + dice_.pick(0, 99) * 10;
    offer.cost.unit = price;
    offer.cost.limit = offer.by_weight ? 80 : dice_.one_in(5) ? dice_.number(1, 3) : 8;
    if (features_.multi_buy && !offer.by_weight && dice_.one_in(3)) {
      const int most = dice_.number(2, 6);
      for (int n = 1; n <= most; ++n)
        offer.cost.table.push_back(n * price - n / 2 * price * dice_.number(0, 12) / 10);
      for (Money& money : offer.cost.table)
        money = std::max<Money>(money, 0);
    }
    return offer;
  }

  void add_room() {
    for (std::vector<Volume>& room : model_.room) {
      if (dice_.one_in(3))
        continue;
      for (Day night = 0; night <= model_.last_day; ++night)
        room.push_back(dice_.pick(6, 30) * 100 * 500);
      std::sort(room.begin(), room.end());
    }
  }

  Dice& dice_;
  const Features& features_;
  Model model_;
};

} // namespace

Model make_small(Dice& dice, const Features& features) {
  return SmallModel(dice, features).make();
}

} // namespace manciple::purchase
