#include "purchase/out_of_stock.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

namespace manciple::purchase {
namespace {

using kitchen::Kitchen;
using resolve::Resolved;

class OtherStops {
public:
  OtherStops(const Kitchen& kitchen, const Shopping& shopping);

  OutOfStock without(std::size_t line) const;

private:
  struct Served {
    buying::Minute until = 0; ///< when it must be at hand
    std::size_t use = 0;
    Rational amount;
  };

  std::optional<OtherOffer> at(std::size_t visit, foods::FoodId food,
                               const std::vector<Served>& served) const;
  [[nodiscard]] int packs_already(std::size_t visit, foods::FoodId food, std::size_t offer) const;

  const Kitchen& kitchen_;
  const Shopping& shopping_;
  std::map<foods::FoodId, buying::ItemId> item_of_;
  std::vector<std::vector<Served>> served_; ///< by line, the one that needs it first first
};

// When something must be at hand for a use is what the solver was told: its demand's moment.
OtherStops::OtherStops(const Kitchen& kitchen, const Shopping& shopping)
    : kitchen_(kitchen), shopping_(shopping), served_(shopping.lines.size()) {
  const Lowered& lowered = shopping.lowered;
  std::map<std::size_t, buying::Minute> until;
  for (const buying::ItemId item : buying::ids(lowered.foods)) {
    item_of_[lowered.foods[item]] = item;
    for (const buying::DemandId demand : buying::ids(lowered.uses[item])) {
      for (const std::size_t use : lowered.uses[item][demand]) {
        until[use] = lowered.model.items[item].demands[demand].at;
      }
    }
  }
  for (const Supply& supply : shopping.supplies) {
    served_[supply.line].push_back({until.at(supply.use), supply.use, supply.amount});
  }
  for (std::vector<Served>& list : served_) {
    std::stable_sort(list.begin(), list.end(), [](const Served& a, const Served& b) {
      return std::tie(a.until, a.use) < std::tie(b.until, b.use);
    });
  }
}

int OtherStops::packs_already(std::size_t visit, foods::FoodId food, std::size_t offer) const {
  int packs = 0;
  for (const Line& line : shopping_.lines) {
    if (line.visit == visit && line.food == food && line.offer == offer) {
      packs += line.packs;
    }
  }
  return packs;
}

// The cheapest offer of one stop that covers what is still in time.
std::optional<OtherOffer> OtherStops::at(std::size_t visit, foods::FoodId food,
                                         const std::vector<Served>& served) const {
  const kitchen::InTermsOf terms = kitchen_.household.in_terms_of(food);
  const Lowered& lowered = shopping_.lowered;
  const buying::ItemId item = item_of_.at(terms.food);
  const StopMade& stop = shopping_.visits[visit];
  const auto today = static_cast<buying::Day>((stop.date - lowered.first).count());
  const buying::Minute home =
      today * buying::minutes_per_day + kitchen_.plan->trips[stop.trip].home;
  Rational wanted = 0;
  std::vector<std::size_t> late;
  for (const Served& one : served) {
    if (one.until < home) {
      late.push_back(one.use);
    } else {
      wanted += one.amount * terms.worth;
    }
  }
  // Rounded as the solver's demands and packs are, so that a pack does for what a pack of the same
  // size did.
  const buying::Amount needed = to_model_down(wanted);
  std::optional<OtherOffer> best;
  if (needed == 0) {
    return best;
  }
  const kitchen::Shop& shop = kitchen_.shop(stop.shop);
  const auto& offers = lowered.model.items[item].offers;
  for (const buying::OfferId o : buying::ids(offers)) {
    if (offers[o].shop.index() != static_cast<std::size_t>(stop.shop) ||
        today < offers[o].first_day || today > offers[o].last_day) {
      continue;
    }
    const std::size_t index = lowered.offers[item][o];
    const kitchen::Offer& offer = shop.offers[index];
    if (offer.food != food) {
      continue; // a substitute
    }
    const int already = packs_already(visit, offer.food, index);
    const auto packs = static_cast<int>((needed + offers[o].pack - 1) / offers[o].pack);
    if (offer.limit && already + packs > *offer.limit) {
      continue;
    }
    std::optional<Cents> cost = offer.cost(already + packs, stop.date);
    if (cost && already > 0) {
      *cost -= *offer.cost(already, stop.date);
    }
    if (!best ||
        std::tuple(!cost, cost, packs) < std::tuple(!best->cost, best->cost, best->packs)) {
      best = OtherOffer{visit, index, packs, cost, offer.size * packs, late};
    }
  }
  return best;
}

OutOfStock OtherStops::without(std::size_t line) const {
  OutOfStock out;
  const std::vector<Served>& served = served_[line];
  for (const Served& one : served) {
    if (out.uses.empty() || out.uses.back() != one.use) {
      out.uses.push_back(one.use);
    }
  }
  for (std::size_t v = shopping_.lines[line].visit + 1; v < shopping_.visits.size(); ++v) {
    if (auto other = at(v, shopping_.lines[line].food, served)) {
      out.offers.push_back(std::move(*other));
    }
  }
  std::stable_sort(out.offers.begin(), out.offers.end(),
                   [](const OtherOffer& a, const OtherOffer& b) {
                     return std::tuple(a.late.size(), !a.cost, a.cost, a.visit) <
                            std::tuple(b.late.size(), !b.cost, b.cost, b.visit);
                   });
  return out;
}

} // namespace

std::vector<OutOfStock> out_of_stock(const Kitchen& kitchen, const Shopping& shopping) {
  const OtherStops stops(kitchen, shopping);
  std::vector<OutOfStock> out;
  for (std::size_t l = 0; l < shopping.lines.size(); ++l) {
    out.push_back(stops.without(l));
  }
  return out;
}

std::vector<resolve::DishRef> dishes_of(const Resolved& resolved,
                                        const std::vector<std::size_t>& uses) {
  std::set<resolve::DishRef> out; // meals stand by date, so this is by date too
  for (const std::size_t u : uses) {
    for (const resolve::DishShare& of : resolved.shares_of(resolved.uses[u])) {
      out.insert(of.dish);
    }
  }
  return {out.begin(), out.end()};
}

} // namespace manciple::purchase
