#include "buying/stops/multipliers.hpp"

#include <algorithm>

namespace manciple::buying {
namespace {

/// What a litre that nothing can be put into may cost: several times what all that it could hold
/// costs when it is missing.
Fine dearest_room_of(const Model& model) {
  Wide dearest = 1;
  Wide litres = 1;
  for (const Item& item : model.items) {
    Wide amount = item.salvage_cap;
    for (const Demand& demand : item.demands) {
      amount += Wide{2} * demand.amount;
    }
    for (const Lot& lot : item.stock) {
      amount += lot.amount;
    }
    Amount largest_pack = 0;
    for (const Offer& offer : item.offers) {
      largest_pack = std::max(largest_pack, offer.pack);
    }
    amount += largest_pack;
    const Volume room = std::max(item.room_cool, item.room_frozen);
    if (room == 0) {
      continue;
    }
    litres += amount * room / (Wide{amounts_per_unit} * microlitres_per_litre) + 1;
    // A rate is for so many units, which take so many times the room of one.
    const Wide rate = Wide{item.missing} + item.waste + item.salvage;
    dearest = std::max(
        dearest,
        8 * rate * fine_per_money * microlitres_per_litre / (Wide{units_of_a_rate} * room) + 1);
  }
  // A hundredth of the range of Fine, for all that could stand somewhere on all nights.
  constexpr Wide most = 40'000'000'000'000'000;
  return static_cast<Fine>(std::min(dearest, most / (litres * (model.last_day + 1)) + 1));
}

Fine part_of(Money cost, Money till) {
  return till == 0 ? fine_per_money
                   : static_cast<Fine>(
                         std::min(Wide{fine_per_money}, Wide{cost} * fine_per_money / till));
}

} // namespace

Coupling::Coupling(const Model& model)
    : most_discount(model.stops.size(), fine_per_money), dearest_room(dearest_room_of(model)) {
  room = std::any_of(model.room.begin(), model.room.end(),
                     [](const std::vector<Volume>& place) { return !place.empty(); });
  for (const Shop& shop : model.shops) {
    reductions = reductions || shop.off > 0;
    credit = credit || shop.credit > 0;
  }
  for (const Item& item : model.items) {
    for (const Offer& offer : item.offers) {
      Fine most = part_of(offer.cost.each, offer.till.packs.each);
      if (offer.cost.has_deal()) {
        most = std::min(most, part_of(offer.cost.deal, offer.till.packs.deal));
      }
      for (const StopId stop : ids(model.stops)) {
        if (model.stops[stop].shop == offer.shop) {
          most_discount[stop] = std::min(most_discount[stop], most);
        }
      }
    }
  }
}

Multipliers no_multipliers(const Model& model) {
  Multipliers result;
  for (std::size_t place = 0; place < place_count; ++place) {
    result.room[place].assign(model.room[place].size(), 0);
  }
  result.credit.assign(model.shops.size(), 0);
  result.off.assign(model.stops.size(), 0);
  for (const Stop& stop : model.stops) {
    result.targets.push_back(model.shops[stop.shop].off > 0 ? Target::open : Target::missed);
  }
  return result;
}

Multipliers first_multipliers(const Model& model, const Coupling& coupling) {
  Multipliers result = no_multipliers(model);
  for (const StopId stop : ids(model.stops)) {
    const Shop& shop = model.shops[model.stops[stop].shop];
    if (shop.off > 0) {
      result.off[stop] = std::min(part_of(shop.off, shop.over), coupling.most_discount[stop]);
    }
  }
  return result;
}

Multipliers between(const Multipliers& a, const Multipliers& b, double part) {
  Multipliers result = a;
  const auto mix = [&](auto& to, const auto& other) {
    for (std::size_t i = 0; i < to.size(); ++i) {
      to.data()[i] += static_cast<Fine>(part * static_cast<double>(other.data()[i] - to.data()[i]));
    }
  };
  for (std::size_t place = 0; place < place_count; ++place) {
    mix(result.room[place], b.room[place]);
  }
  mix(result.credit, b.credit);
  mix(result.off, b.off);
  return result;
}

Fine discount(const Model& model, const Multipliers& at, StopId stop) {
  return at.credit[model.stops[stop].shop] + at.off[stop];
}

Fine off_gain(const Model& model, const Multipliers& at, StopId stop) {
  const ShopId id = model.stops[stop].shop;
  const Shop& shop = model.shops[id];
  if (at.targets[stop] == Target::missed) {
    return 0;
  }
  const Fine gain = shop.off * (fine_per_money - at.credit[id]) - at.off[stop] * shop.over;
  return at.targets[stop] == Target::reached ? gain : std::max<Fine>(0, gain);
}

Fine credit_gain(const Model& model, const Multipliers& at, ShopId shop) {
  return model.shops[shop].credit * (model.shops[shop].credit_worth - at.credit[shop]);
}

Fine room_worth(const Model& model, const Multipliers& at) {
  Wide sum = 0;
  for (std::size_t place = 0; place < place_count; ++place) {
    for (std::size_t night = 0; night < at.room[place].size(); ++night) {
      sum += Wide{at.room[place][night]} * model.room[place][night];
    }
  }
  return static_cast<Fine>((sum + microlitres_per_litre - 1) / microlitres_per_litre);
}

RoomRates room_rates(const Model& model, const Multipliers& at, const Item& item) {
  RoomRates result;
  const auto nights = static_cast<std::size_t>(model.last_day) + 1;
  const auto sums = [&](std::size_t place, Volume unit) {
    const std::vector<Fine>& room = at.room[place];
    std::vector<Fine> sum(nights + 1, 0);
    Wide exact = 0;
    for (std::size_t night = 0; night < nights && !room.empty(); ++night) {
      exact += Wide{room[night]} * unit;
      sum[night + 1] = static_cast<Fine>(exact / microlitres_per_litre);
    }
    if (sum.back() == 0) {
      sum.clear();
    }
    return sum;
  };
  for (std::size_t place = 0; place < place_count; ++place) {
    result.cool[place] = sums(place, item.room_cool);
  }
  result.frozen = sums(index(Place::freezer), item.room_frozen);
  return result;
}

Terms terms_at(const Model& model, const Prepared& item, const Multipliers& at,
               const OpenStops& open, const RoomRates& room) {
  Terms terms;
  terms.room = &room;
  for (const Visit& visit : item.visits) {
    terms.charge.push_back(open[visit.stop] ? Cost{} : impossible);
    terms.discount.push_back(discount(model, at, visit.stop));
  }
  return terms;
}

} // namespace manciple::buying
