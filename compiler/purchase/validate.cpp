#include "purchase/validate.hpp"

#include <algorithm>
#include <set>
#include <stdexcept>

#include <fmt/format.h>

#include "purchase/subproblem.hpp"

namespace manciple::purchase {
namespace {

void require(bool holds, const char* what, std::size_t index) {
  if (!holds)
    throw std::invalid_argument(fmt::format("purchase model: {} (number {})", what, index));
}

/// Different keeping limits of the good's demands, and one more for what is kept.
std::size_t limit_count(const Good& good) {
  std::set<int> limits;
  for (const Demand& demand : good.demands) {
    const int cool = std::min(good.keeps_cool, demand.longest_age.value_or(good.keeps_cool));
    const int frozen = demand.takes_frozen ? good.keeps_frozen.value_or(0) : 0;
    limits.insert(std::max(cool, frozen));
  }
  return limits.size() + 1;
}

void validate_good(const Model& model, const Good& good, GoodId id) {
  require(good.keeps_cool >= 0 && good.keeps_frozen.value_or(0) >= 0 &&
              good.keeps_opened.value_or(0) >= 0 && good.salvage_days >= 0,
          "a good's keeping time is negative", id);
  require(good.waste >= 0 && good.salvage >= 0 && good.salvage_cap >= 0 && good.room_cool >= 0 &&
              good.room_frozen >= 0,
          "a good's value or room is negative", id);
  require(good.cool_place != Place::freezer || !good.keeps_frozen,
          "a good that is kept in the freezer is frozen there once more", id);
  for (const Demand& demand : good.demands)
    require(demand.day >= 0 && demand.day <= model.last_day && demand.amount > 0 &&
                demand.longest_age.value_or(0) >= 0,
            "a good has a demand out of range", id);
  for (const Offer& offer : good.offers) {
    require(offer.shop < model.shops.size() && offer.pack > 0 && offer.cost.unit >= 0 &&
                offer.cost.limit >= 0 &&
                std::all_of(offer.cost.table.begin(), offer.cost.table.end(),
                            [](Money money) { return money >= 0; }),
            "a good has an offer out of range", id);
  }
  require(limit_count(good) <= most_groups, "a good has too many different keeping limits", id);
}

} // namespace

void validate(const Model& model) {
  require(model.last_day >= 0, "the plan has no day", 0);
  for (ShopId id = 0; id < model.shops.size(); ++id) {
    const Shop& shop = model.shops[id];
    require(shop.credit >= 0 && shop.off >= 0 && shop.over >= shop.off,
            "a shop's credit or reduction is out of range", id);
  }
  for (StopId id = 0; id < model.stops.size(); ++id) {
    const Stop& stop = model.stops[id];
    require(stop.day >= 0 && stop.day <= model.last_day && stop.shop < model.shops.size() &&
                stop.cost >= 0,
            "a stop is out of range", id);
  }
  for (std::size_t place = 0; place < place_count; ++place)
    require(model.room[place].empty() ||
                model.room[place].size() == static_cast<std::size_t>(model.last_day) + 1,
            "a place's room is not given for every night", place);
  for (GoodId id = 0; id < model.goods.size(); ++id)
    validate_good(model, model.goods[id], id);
}

} // namespace manciple::purchase
