#include "purchase/shortfall.hpp"

#include "foods/counted.hpp"
#include "purchase/errors.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace manciple::purchase {
namespace {

using buying::Demand;
using buying::Item;
using buying::Stop;
using buying::StopId;
using foods::Food;
using kitchen::Kitchen;
using resolve::Resolved;

class Explainer {
public:
  Explainer(const Kitchen& kitchen, const Resolved& resolved, const Shopping& shopping,
            text::Diagnostics& diagnostics)
      : kitchen_(kitchen),
        resolved_(resolved),
        shopping_(shopping),
        model_(shopping.lowered.model),
        diagnostics_(diagnostics) {}

  // Of each food the first use that something is missing of.
  void run() {
    const Lowered& lowered = shopping_.lowered;
    for (const buying::ItemId id : buying::ids(model_.items)) {
      std::optional<buying::DemandId> first;
      Rational missing = 0;
      for (const buying::Short& one : shopping_.solution.items[id].shorts) {
        if (one.missing > 0) {
          missing += from_model(one.missing + one.lacking);
          const bool earlier = !first || model_.items[id].demands[one.demand].at <
                                             model_.items[id].demands[*first].at;
          first = earlier ? one.demand : *first;
        }
      }
      if (first) {
        explain(model_.items[id], kitchen_.food(lowered.foods[id]),
                model_.items[id].demands[*first], lowered.uses[id][*first], missing);
      }
    }
  }

private:
  bool sells(const buying::Offer& offer, const Stop& stop) const {
    return offer.shop == stop.shop && offer.first_day <= stop.day() && stop.day() <= offer.last_day;
  }
  bool sells(const Item& item, const Stop& stop) const {
    return std::any_of(item.offers.begin(), item.offers.end(),
                       [&](const buying::Offer& offer) { return sells(offer, stop); });
  }

  std::string said(StopId stop) const {
    const auto [t, c] = shopping_.lowered.stops[stop];
    const kitchen::Trip& trip = kitchen_.plan->trips[t];
    return fmt::format("{} on {}", kitchen_.shop(trip.stops[c].shop).name,
                       text::print_day(trip.date));
  }

  // Bought at the stop, it could serve the demand.
  bool serves(const Item& item, const Stop& stop, const Demand& demand, bool frozen) const {
    return std::any_of(item.offers.begin(), item.offers.end(), [&](const buying::Offer& offer) {
      const int age = demand.day - stop.day();
      const bool keeps =
          frozen ? offer.life.frozen && age <= *offer.life.frozen : age <= offer.life.cool;
      return sells(offer, stop) && keeps && age >= offer.life.ready;
    });
  }

  void explain(const Item& item, const Food& food, const Demand& demand,
               const std::vector<std::size_t>& uses, const Rational& missing) {
    const resolve::Use& use = resolved_.uses[uses.front()];
    const std::string when = text::print_day(use.date);
    const std::string amount = foods::amount_seen(food, missing, kitchen_.household.system);
    const text::Span at = place_of(kitchen_, resolved_, use);
    const auto warn = [&](text::Code code, std::string what, std::string fix) {
      diagnostics_.warning(code, at, std::move(what), std::move(fix));
    };
    if (item.offers.empty()) {
      warn(errors::no_offer,
           fmt::format("no shop on any trip is known to have '{}'; still to find: {} by {}",
                       food.name, amount, when),
           food.given ? "cook a dish that leaves some before then, mark it optional in the recipe, "
                        "or add it to the prices of a shop in plans/stores"
                      : fmt::format("add it to the prices of a shop in plans/stores, or add '{}' "
                                    "to the departments of the shop",
                                    foods::name(food.department)));
      return;
    }
    std::optional<StopId> before;
    std::optional<StopId> after;
    bool cool = false;
    bool frozen = false;
    for (const StopId id : buying::ids(model_.stops)) {
      const Stop& stop = model_.stops[id];
      if (!sells(item, stop)) {
        continue;
      }
      if (stop.at > demand.at) {
        after = !after || stop.at < model_.stops[*after].at ? id : *after;
        continue;
      }
      before = !before || stop.at > model_.stops[*before].at ? id : *before;
      cool = cool || serves(item, stop, demand, false);
      frozen = frozen || serves(item, stop, demand, true);
    }
    if (before && item.missing == item.lacking) {
      warn(errors::worth_no_stop,
           fmt::format("no stop is made for '{}' alone; still to find: {} by {}", food.name, amount,
                       when),
           "leave it out, or pick it up when you pass a shop");
    } else if (!before) {
      warn(errors::too_late,
           fmt::format("no trip brings '{}' home in time for {}; still to find: {}", food.name,
                       when, amount),
           after ? fmt::format("the first stop that sells it is {}; add it to what is on hand, "
                               "move the meal, or add a trip",
                               said(*after))
                 : "add a trip to a shop that sells it: 'trips: [{date: 2027-03-01, stops: "
                   "[SHOP]}]'");
    } else if (!cool && !frozen) {
      warn(errors::does_not_keep,
           fmt::format(
               "'{}' for {} would not keep: bought at {}, it is good for {}; still to find: {}",
               food.name, when, said(*before), text::print_days(life_of(item, *before)), amount),
           "add a trip nearer to that day, or cook it earlier");
    } else if (!cool && !demand.takes_frozen) {
      warn(errors::must_be_fresh,
           fmt::format("'{}' must be fresh on {}, but from {} it would keep only in the freezer; "
                       "still to find: {}",
                       food.name, when, said(*before), amount),
           "add a trip nearer to that day, or drop 'fresh'");
    } else if (std::any_of(item.offers.begin(), item.offers.end(), [](const buying::Offer& offer) {
                 return offer.limit < std::numeric_limits<int>::max();
               })) {
      warn(errors::limit,
           fmt::format("the shops do not sell enough '{}' at one stop; still to find: {} by {}",
                       food.name, amount, when),
           "add a trip, or another shop");
    } else {
      warn(errors::no_room,
           fmt::format("there is no room for '{}'; still to find: {} by {}", food.name, amount,
                       when),
           "give the household more storage, shop more often, or add smaller packs");
    }
  }

  int life_of(const Item& item, StopId stop) const {
    int days = 0;
    for (const buying::Offer& offer : item.offers) {
      if (sells(offer, model_.stops[stop])) {
        days = std::max(days, offer.life.cool);
      }
    }
    return days;
  }

  const Kitchen& kitchen_;
  const Resolved& resolved_;
  const Shopping& shopping_;
  const buying::Model& model_;
  text::Diagnostics& diagnostics_;
};

} // namespace

void explain_shortfalls(const Kitchen& kitchen, const Resolved& resolved, const Shopping& shopping,
                        text::Diagnostics& diagnostics) {
  Explainer(kitchen, resolved, shopping, diagnostics).run();
}

} // namespace manciple::purchase
