#include "solver/buying/small_model.hpp"

#include <algorithm>

#include "solver/buying/build.hpp"

namespace manciple::buying {
namespace {

class SmallModel {
public:
  SmallModel(Dice& dice, const Features& features)
      : dice_(dice), features_(features), scale_(features.vast ? 100'000 : 1) {}

  Model make() {
    model_.last_day = dice_.number(4, 10);
    model_.shops.resize(static_cast<std::size_t>(dice_.number(1, 2)));
    for (Shop& shop : model_.shops) {
      if (features_.credit && dice_.one_in(2)) {
        shop.credit = dice_.pick(1, 6) * 4000 * scale_;
        shop.credit_worth = fine_per_money * 97 / 100;
      }
      if (features_.spend_over && dice_.one_in(2)) {
        shop.over = dice_.pick(3, 12) * 5000 * scale_;
        shop.off = std::min(shop.over, dice_.pick(1, 6) * 3000 * scale_);
      }
    }
    const int stops = dice_.number(1, 4);
    for (int i = 0; i < stops; ++i) {
      add_stop(i == 0);
    }
    const int items = dice_.number(1, 3);
    for (int i = 0; i < items; ++i) {
      model_.items.push_back(item());
    }
    if (features_.room) {
      add_room();
    }
    return model_;
  }

private:
  void add_stop(bool first) {
    Stop stop;
    const Day day = first || dice_.one_in(3) ? 0 : dice_.number(0, model_.last_day);
    stop.at = day * minutes_per_day + dice_.pick(8, 20) * 60;
    stop.shop = ShopId(dice_.index(model_.shops.size()));
    stop.cost = dice_.pick(0, 3) * 2000 * scale_;
    stop.always = dice_.one_in(6);
    model_.stops.push_back(stop);
  }

  Life life(bool freezes, bool opened) {
    Life life;
    life.cool = dice_.one_in(4) ? 60 : dice_.number(0, 6);
    if (freezes) {
      life.frozen = dice_.one_in(3) ? dice_.number(4, 12) : 90;
    }
    if (opened) {
      life.opened = dice_.number(0, 4);
      if (dice_.one_in(3)) {
        life.refrozen = dice_.number(1, 20);
      }
    }
    if (!freezes && dice_.one_in(6)) {
      life.ready = dice_.number(1, 2);
    }
    return life;
  }

  Item item() {
    Item item;
    const bool freezes = features_.freezing && dice_.one_in(2);
    const bool opened = features_.opened && dice_.one_in(3);
    const bool contained = features_.containers && dice_.one_in(4);
    cool_place_ = dice_.one_in(2) ? Place::fridge : Place::pantry;
    item.room_cool = dice_.pick(1, 3) * 500;
    item.room_frozen = dice_.pick(1, 3) * 500;
    item.missing = dice_.pick(50, 200) * 1000 * scale_;
    item.missing_once = dice_.one_in(3) ? dice_.pick(1, 30) * 10'000 * scale_ : 0;
    item.kept_day = model_.last_day + dice_.number(1, 4);
    item.buy_late = dice_.one_in(2);
    const int demands = dice_.number(1, opened ? 3 : 4);
    for (int i = 0; i < demands; ++i) {
      item.demands.push_back(demand(contained));
    }
    const int offers = dice_.number(1, 2);
    for (int i = 0; i < offers; ++i) {
      item.offers.push_back(offer(freezes, opened, contained));
    }
    while (features_.stock && item.stock.size() < 3 && dice_.one_in(2)) {
      item.stock.push_back(lot(freezes, opened));
    }
    if (features_.left_over) {
      item.waste = dice_.one_in(2) ? 0 : dice_.pick(1, 10) * 1000 * scale_;
      item.salvage = dice_.one_in(2) ? 0 : dice_.pick(1, 20) * 1000 * scale_;
      item.salvage_cap = dice_.pick(0, 6) * 100 * unit;
      item.lacking = item.salvage;
    }
    if (features_.giving) {
      item.lacking += dice_.pick(1, 60) * 1000 * scale_;
      item.from_freezer = dice_.one_in(2) ? 0 : dice_.pick(1, 20) * 100 * scale_;
      item.least_frozen = dice_.one_in(3) ? 60 * unit : 0;
    }
    return item;
  }

  Demand demand(bool contained) {
    Demand demand;
    demand.day = dice_.number(0, model_.last_day);
    demand.at = demand.day * minutes_per_day + dice_.pick(7, 24) * 60;
    demand.amount = dice_.pick(1, 9) * 100 * unit + (dice_.one_in(3) ? 37 * unit : 0);
    demand.takes_frozen = !dice_.one_in(3);
    if (features_.giving && dice_.one_in(2)) {
      demand.give = demand.amount / dice_.pick(5, 20);
    }
    if (features_.habits && dice_.one_in(5)) {
      demand.slack = dice_.number(1, 3);
    }
    if (contained) {
      demand.containers = dice_.pick(1, 6) * 500;
      demand.amount = demand.containers * 300;
      demand.give = 0;
    }
    return demand;
  }

  Offer offer(bool freezes, bool opened, bool contained) {
    Offer offer;
    offer.shop = ShopId(dice_.index(model_.shops.size()));
    if (dice_.one_in(5)) {
      offer.first_day = dice_.number(0, model_.last_day);
    }
    if (dice_.one_in(5)) {
      offer.last_day = dice_.number(0, model_.last_day);
    }
    offer.by_weight = features_.by_weight && dice_.one_in(5);
    offer.pack = (offer.by_weight ? 100 : dice_.pick(2, 7) * 100) * unit;
    const Money price = (dice_.pick(5, 40) * offer.pack / unit + dice_.pick(0, 9) * 100) * scale_;
    offer.cost.each = price;
    offer.till.packs.each = dice_.one_in(3) ? price + price / 50 : price;
    if (features_.multi_buy && !offer.by_weight && dice_.one_in(3)) {
      offer.cost.deal_packs = offer.till.packs.deal_packs = dice_.number(2, 3);
      offer.cost.deal = price * dice_.number(2, 10) / 10 * offer.cost.deal_packs / 2;
      offer.cost.deal = std::min(offer.cost.deal, price * offer.cost.deal_packs);
      offer.till.packs.deal =
          std::min(offer.cost.deal, offer.till.packs.each * offer.cost.deal_packs);
    }
    if (offer.by_weight) {
      offer.till.less = std::min<Money>(50 * scale_, offer.till.packs.each);
    }
    offer.limit = dice_.one_in(4) ? dice_.number(1, 3) : std::numeric_limits<int>::max();
    offer.place = cool_place_;
    offer.life = life(freezes, opened && !dice_.one_in(5));
    if (features_.places && dice_.one_in(3)) {
      offer.place = static_cast<Place>(dice_.index(place_count));
      if (offer.place == Place::freezer) {
        offer.life.frozen.reset();
        offer.life.refrozen.reset();
      }
    }
    if (contained && !dice_.one_in(3)) {
      offer.containers = 1000;
    }
    if (offer.life.opened && !offer.by_weight && dice_.one_in(4)) {
      offer.inside = dice_.one_in(2) ? 2 : 4;
    }
    return offer;
  }

  Lot lot(bool freezes, bool opened) {
    Lot lot;
    lot.packs = opened ? dice_.number(1, 2) : 1;
    lot.amount = dice_.pick(1, 5) * 100 * unit * lot.packs;
    lot.life = life(freezes, opened);
    lot.place = freezes && dice_.one_in(2) ? Place::freezer : Place::fridge;
    lot.thawed_in = cool_place_;
    if (features_.places && !freezes && dice_.one_in(4)) {
      lot.place = Place::freezer; // bought frozen
    }
    if (opened && lot.place != Place::freezer && dice_.one_in(3)) {
      lot.opened_until = dice_.number(0, 4);
      lot.life.ready = 0;
    }
    return lot;
  }

  void add_room() {
    for (std::size_t place = 0; place < place_count; ++place) {
      if (dice_.one_in(3)) {
        continue;
      }
      // What the stock takes by itself, there must be.
      Volume stock = 0;
      for (const Item& item : model_.items) {
        for (const Lot& lot : item.stock) {
          stock += std::max(item.room_cool, item.room_frozen) * lot.amount / amounts_per_unit;
        }
      }
      for (Day night = 0; night <= model_.last_day; ++night) {
        model_.room[place].push_back(stock + dice_.pick(0, 20) * 100 * 500);
      }
    }
  }

  Dice& dice_;
  const Features& features_;
  Money scale_;
  Place cool_place_ = Place::pantry; ///< of the item being made
  Model model_;
};

} // namespace

Model make_small(Dice& dice, const Features& features) {
  return SmallModel(dice, features).make();
}

} // namespace manciple::buying
