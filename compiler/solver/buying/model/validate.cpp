#include "buying/model/model.hpp"

#include <stdexcept>
#include <string>

namespace manciple::buying {
namespace {

void require(bool holds, const char* what) {
  if (!holds) {
    throw std::invalid_argument(std::string("buying: ") + what);
  }
}

/// Days and minutes may be added up without care.
constexpr int most_days = 1'000'000;
/// Amounts times room, and a night's sum of that, fit into 64 bits.
constexpr Amount most_amount = 1'000'000'000'000;
constexpr Volume most_room_of_unit = 1'000'000;
constexpr Volume most_room = 1'000'000'000'000;

bool is_day(int day) {
  return 0 <= day && day <= most_days;
}

bool is_amount(Amount amount) {
  return 0 < amount && amount <= most_amount;
}

void validate_life(const Life& life) {
  require(is_day(life.ready) && is_day(life.cool), "a life is not between 0 and a million days");
  require(!life.frozen || is_day(*life.frozen), "a frozen life out of range");
  require(!life.opened || is_day(*life.opened), "an opened life out of range");
  require(!life.refrozen || is_day(*life.refrozen), "a refrozen life out of range");
  require(life.opened || !life.refrozen, "a refrozen life without an opened one");
}

Wide worth(Money spent, const Shop& shop) {
  return Wide{spent} * shop.credit_worth;
}

void validate_offer(const Model& model, const Offer& offer) {
  require(offer.shop < model.shops.end_id(), "an offer of no shop");
  require(is_amount(offer.pack), "a pack of nothing, or a vast one");
  require(offer.inside >= 1 && offer.pack % offer.inside == 0 &&
              offer.containers % offer.inside == 0 && (offer.inside == 1 || !offer.by_weight),
          "packs in a pack that are not equal");
  require(offer.limit >= 1, "an offer that cannot be bought");
  require(0 <= offer.containers && offer.containers <= most_amount, "containers out of range");
  for (const PackPrice& price : {offer.cost, offer.till.packs}) {
    require(0 <= price.each && price.each <= most_money, "a price out of range");
    require(price.deal_packs == 0 || (price.deal_packs >= 2 && 0 <= price.deal &&
                                      price.each <= most_money / price.deal_packs &&
                                      price.deal <= price.deal_packs * price.each),
            "a deal that is dearer than its packs");
  }
  const Shop& shop = model.shops[offer.shop];
  require(shop.credit == 0 || (worth(offer.till.packs.each, shop) <= fine(offer.cost.each) &&
                               worth(offer.till.packs.deal, shop) <= fine(offer.cost.deal)),
          "a credit that is worth more than what it pays");
  require(0 <= offer.till.less && offer.till.less <= most_money, "a till price out of range");
  validate_life(offer.life);
}

void validate_lot(const Lot& lot) {
  require(is_amount(lot.amount), "a lot of nothing, or a vast one");
  require(lot.packs >= 1 && lot.amount % lot.packs == 0, "a lot of unequal packs");
  require(0 <= lot.containers && lot.containers <= most_amount, "containers out of range");
  require(!lot.opened_until ||
              (lot.life.opened && lot.life.ready == 0 && lot.place != Place::freezer),
          "an opened lot without an opened life, unripe or in the freezer");
  validate_life(lot.life);
}

void validate_demand(const Demand& demand) {
  require(is_amount(demand.amount), "a demand of nothing, or a vast one");
  require(0 <= demand.give && demand.give <= demand.amount, "a give out of range");
  require(is_day(demand.day) && 0 <= demand.at && 0 <= demand.slack &&
              demand.slack <= demand.day + most_days,
          "a demand's time out of range");
  require(0 <= demand.containers && demand.containers <= most_amount, "containers out of range");
}

void validate_item(const Model& model, const Item& item) {
  for (const Demand& demand : item.demands) {
    validate_demand(demand);
  }
  for (const Offer& offer : item.offers) {
    validate_offer(model, offer);
  }
  for (const Lot& lot : item.stock) {
    validate_lot(lot);
  }
  for (const Money value : {item.waste, item.salvage, item.lacking, item.missing, item.missing_once,
                            item.from_freezer}) {
    require(0 <= value && value <= most_money, "a value out of range");
  }
  for (const Volume room : {item.room_cool, item.room_frozen}) {
    require(0 <= room && room <= most_room_of_unit, "the room of a unit out of range");
  }
  require(0 <= item.salvage_cap && item.salvage_cap <= most_amount, "a salvage cap out of range");
  require(item.kept_day > model.last_day && is_day(item.kept_day), "kept within the plan");
  require(item.lacking >= item.salvage, "what is lacking counts less than what is left");
  require(item.least_frozen >= 0, "a least part to freeze below nothing");
}

/// value_of, which may go beyond the range.
Wide wide_value(Wide amount, Money rate) {
  return amount * rate / fine_per_money;
}

/// What an item may cost at most while it is looked at: all of it missing, all stock wasted, all
/// of it bought by any one offer, and as much again for what is kept.
Wide most_of(const Item& item) {
  Wide needed = item.salvage_cap;
  Wide sum = 0;
  for (const Demand& demand : item.demands) {
    needed += demand.amount;
    sum += item.from_freezer + item.missing_once;
  }
  Wide stock = 0;
  for (const Lot& lot : item.stock) {
    stock += lot.amount;
  }
  sum += wide_value(needed, item.missing) + wide_value(needed, item.lacking) +
         wide_value(needed + stock, item.waste) + wide_value(needed + stock, item.salvage);
  Wide dearest = 0;
  for (const Offer& offer : item.offers) {
    // See Prepared::useful_packs: as many as are needed, one begun for each demand, a full deal.
    const Wide packs =
        needed / offer.pack + 2 + static_cast<Wide>(item.demands.size()) + offer.cost.deal_packs;
    const Wide cost = packs * offer.cost.each + wide_value(packs * offer.pack, item.waste);
    dearest = cost > dearest ? cost : dearest;
  }
  return sum + 2 * dearest;
}

} // namespace

Money most_that_may_be_paid(const Model& model) {
  Wide sum = 0;
  for (const Stop& stop : model.stops) {
    sum += stop.cost + 2 * model.shops[stop.shop].over;
  }
  for (const Shop& shop : model.shops) {
    sum += shop.credit;
  }
  for (const Item& item : model.items) {
    sum += most_of(item);
  }
  return sum > most_money ? most_money + 1 : static_cast<Money>(sum);
}

void validate(const Model& model) {
  require(is_day(model.last_day), "the last day out of range");
  for (const Shop& shop : model.shops) {
    require(0 <= shop.off && shop.off <= shop.over && shop.over <= most_money,
            "a reduction out of range");
    require(0 <= shop.credit && shop.credit <= most_money && 0 <= shop.credit_worth &&
                shop.credit_worth <= fine_per_money,
            "a credit out of range");
  }
  for (const Stop& stop : model.stops) {
    require(stop.shop < model.shops.end_id(), "a stop at no shop");
    require(0 <= stop.at && stop.day() <= most_days, "a stop's time out of range");
    require(0 <= stop.cost && stop.cost <= most_money, "a stop's cost out of range");
  }
  for (const std::vector<Volume>& place : model.room) {
    require(place.empty() || place.size() == static_cast<std::size_t>(model.last_day) + 1,
            "room for other nights than the plan's");
    for (const Volume room : place) {
      require(0 <= room && room <= most_room, "room out of range");
    }
  }
  for (const Item& item : model.items) {
    validate_item(model, item);
  }
  require(most_that_may_be_paid(model) <= most_money, "sums of money out of range");
}

} // namespace manciple::buying
