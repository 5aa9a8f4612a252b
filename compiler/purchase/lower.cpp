#include "purchase/errors.hpp"
#include "purchase/shopping.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace manciple::purchase {
namespace {

using foods::Food;
using foods::FoodId;
using kitchen::Cents;
using kitchen::Kitchen;
using kitchen::Plan;
using resolve::Resolved;
using text::Date;

// Packaged food without a figure of its own takes about a millilitre and a half a gram.
// Common practice, no source.
const Rational default_ml_per_gram{3, 2};

// What a scale and rounded lines may take from a sum that has to be reached, in cents.
constexpr Cents margin_of_scales = 20;

// Longer than any plan, for what does not spoil.
constexpr int never_spoils = 3650;

Amount to_micro_down(const Rational& amount) {
  return measure::to_int64(measure::floor(amount * micro));
}
Amount to_micro_up(const Rational& amount) {
  return measure::to_int64(measure::ceil(amount * micro));
}

Rational ml_per_unit(const Food& food) {
  switch (foods::basis(food)) {
  case measure::Dimension::volume:
    return 1;
  case measure::Dimension::count:
    return 0; // household things stand where there is room
  case measure::Dimension::mass:
    break;
  }
  const foods::VolumeWeight* weight = food.volume(foods::Form::plain);
  if (weight == nullptr && !food.volumes.empty()) {
    weight = food.volumes.data();
  }
  return weight == nullptr ? default_ml_per_gram
                           : Rational(measure::facts(weight->unit).factor / weight->grams);
}

// The shorter of two keeping times; `none_is_long` says what it means that one is absent.
std::optional<int> shorter(std::optional<int> a, std::optional<int> b, bool none_is_long) {
  if (!a || !b) {
    return none_is_long ? (a ? a : b) : std::nullopt;
  }
  return std::min(*a, *b);
}

bool names(const std::vector<kitchen::ShopName>& list, const kitchen::Shop& shop) {
  return std::any_of(list.begin(), list.end(),
                     [&](const kitchen::ShopName& name) { return name.slug == shop.slug; });
}

class Lowering {
public:
  Lowering(const Kitchen& kitchen, const Resolved& resolved, text::Diagnostics& diagnostics)
      : kitchen_(kitchen), plan_(*kitchen.plan), resolved_(resolved), diagnostics_(diagnostics) {}

  Lowered run();

private:
  void stops();
  void rooms();
  void goods();
  void good(FoodId id, const std::vector<std::size_t>& uses);
  void demands(Good& good, const std::vector<std::size_t>& uses);
  bool keeping(Good& good, const Food& food, std::size_t first_use);
  void offers(Good& good, const Food& food, FoodId id);
  void add_offer(Good& good, const kitchen::Shop& shop, std::size_t index, const Food& food,
                 Date from, Date until);
  void values(Good& good);
  [[nodiscard]] kitchen::InTermsOf in_terms_of(FoodId food) const {
    return kitchen_.household.in_terms_of(food);
  }
  /// The day on which it must have been bought: the day before, when it is used before that day's
  /// shopping is home.
  [[nodiscard]] Date bought_by(const resolve::Use& use) const;
  [[nodiscard]] int day(Date date) const { return static_cast<int>((date - plan_.from).count()); }
  [[nodiscard]] bool may_buy(FoodId food, const kitchen::Shop& shop) const;
  [[nodiscard]] Rational preference(FoodId food, const kitchen::Shop& shop) const;

  const Kitchen& kitchen_;
  const Plan& plan_;
  const Resolved& resolved_;
  text::Diagnostics& diagnostics_;
  Lowered out_;
};

void Lowering::stops() {
  for (const kitchen::Shop& shop : kitchen_.shops) {
    Shop& made = out_.model.shops.emplace_back();
    made.credit = shop.credit * money_per_cent;
    if (shop.reduction && shop.reduction->off > 0) {
      // What counts at the till is the sum before cash back; offers here cost less by that.
      Rational highest_tax = 0;
      for (const kitchen::Tax& tax : shop.taxes) {
        highest_tax = std::max(highest_tax, tax.rate);
      }
      const Rational counted = 1 - shop.cash_back / (1 + highest_tax);
      made.over = measure::to_int64(measure::ceil(
          Rational(shop.reduction->over + margin_of_scales) * counted * money_per_cent));
      made.off = shop.reduction->off * money_per_cent;
    }
  }
  for (std::size_t t = 0; t < plan_.trips.size(); ++t) {
    const kitchen::Trip& trip = plan_.trips[t];
    for (std::size_t c = 0; c < trip.stops.size(); ++c) {
      const kitchen::Shop& shop = kitchen_.shop(trip.stops[c].shop);
      const Money cost = shop.stop_cost.value_or(kitchen_.household.stop_cost) * money_per_cent;
      out_.model.stops.push_back(
          {day(trip.date), static_cast<ShopId>(shop.id), cost, trip.stops[c].always});
      out_.stops.emplace_back(t, c);
    }
  }
}

// The room that what is on hand leaves free, night by night.
void Lowering::rooms() {
  const auto& household = kitchen_.household;
  const std::array<std::optional<Rational>, 3> litres{
      household.pantry_litres, household.fridge_litres, household.freezer_litres};
  const auto nights = static_cast<std::size_t>(day(plan_.until)) + 1;
  for (std::size_t p = 0; p < litres.size(); ++p) {
    if (!litres[p]) {
      continue;
    }
    std::vector<Rational> free(nights, *litres[p] * micro);
    for (std::size_t l = 0; l < kitchen_.on_hand.lots.size(); ++l) {
      const kitchen::StockLot& lot = kitchen_.on_hand.lots[l];
      if (static_cast<std::size_t>(lot.place) != p) {
        continue;
      }
      const Rational each = ml_per_unit(kitchen_.food(*lot.what.food())) * 1000;
      std::vector<Rational> left(nights, lot.amount);
      for (const resolve::StockUse& used : resolved_.from_stock) {
        if (used.lot == l) {
          for (auto n = static_cast<std::size_t>(std::max(0, day(resolved_.uses[used.use].date)));
               n < nights; ++n) {
            left[n] -= used.amount;
          }
        }
      }
      for (std::size_t n = 0; n < nights; ++n) {
        const bool good = !lot.use_by || plan_.from + std::chrono::days(n) <= *lot.use_by;
        free[n] -= good ? Rational(left[n] * each) : Rational(0);
      }
    }
    for (const Rational& f : free) {
      out_.model.room[p].push_back(std::max<std::int64_t>(0, measure::to_int64(measure::floor(f))));
    }
  }
}

// Demands of one day and one freshness are one; what the stock covers is left out. Cumulative sums
// are rounded down and packs up, so that rounding never asks for a pack more than exact arithmetic.
void Lowering::demands(Good& good, const std::vector<std::size_t>& uses) {
  std::map<std::pair<Date, bool>, std::vector<std::size_t>> by_day;
  for (const std::size_t u : uses) {
    const resolve::Use& use = resolved_.uses[u];
    by_day[{bought_by(use), use.fresh}].push_back(u);
    if (bought_by(use) < plan_.from) {
      const Food& food = kitchen_.food(use.food);
      diagnostics_.error(errors::too_late, place_of(kitchen_, resolved_, use),
                         fmt::format("'{}' is used on {} before that day's shopping is home, and "
                                     "what is in the house does not reach",
                                     food.name, text::print_day(use.date)),
                         "put it on hand, move the meal, or say when the trip is 'home by'");
    }
  }
  Rational sum = 0;
  Amount before = 0;
  auto& of_good = out_.uses.emplace_back();
  for (const auto& [when, list] : by_day) {
    for (const std::size_t u : list) {
      sum += resolved_.missing[u] * in_terms_of(resolved_.uses[u].food).worth;
    }
    const Amount here = to_micro_down(sum);
    if (here > before) {
      good.demands.push_back({std::max(0, day(when.first)), here - before, !when.second, {}});
      of_good.push_back(list);
    } else if (!of_good.empty()) {
      of_good.back().insert(of_good.back().end(), list.begin(), list.end());
    }
    before = here;
  }
}

Date Lowering::bought_by(const resolve::Use& use) const {
  const bool too_early =
      std::any_of(plan_.trips.begin(), plan_.trips.end(), [&](const kitchen::Trip& trip) {
        return trip.date == use.date && trip.home > use.clock;
      });
  return too_early ? use.date - std::chrono::days(1) : use.date;
}

bool Lowering::keeping(Good& good, const Food& food, std::size_t first_use) {
  const auto& keeps = food.keeps;
  good.cool_place = static_cast<Place>(food.stored);
  good.keeps_cool = never_spoils;
  good.salvage_days = 3; // good for some days more is worth keeping; common practice, no source
  if (!food.is_household()) {
    auto best = keeps.in(food.stored);
    // What stands in the pantry may go to the fridge where it keeps longer.
    if (food.stored == foods::Place::pantry && keeps.fridge &&
        (!best || keeps.fridge->value > best->value)) {
      best = keeps.fridge;
      good.cool_place = Place::fridge;
    }
    if (!best) {
      diagnostics_.error(
          errors::unknown_keeping, place_of(kitchen_, resolved_, resolved_.uses[first_use]),
          fmt::format("how long '{}' keeps in the {} is not known", food.name,
                      foods::name(food.stored)),
          fmt::format("add 'keeps: {{{}: [NN days, SOURCE]}}' to '{}' in recipes/foods.yaml",
                      foods::name(food.stored), food.name));
      return false;
    }
    good.keeps_cool = best->value;
  }
  const Rational room = ml_per_unit(food) * 1000;
  good.room_cool = measure::to_int64(measure::ceil(room));
  good.room_frozen = good.room_cool;
  // What a household freezes at home: meat, fish, bread and the dairy that stands it, citrus as
  // cubes of juice. Other fruit and vegetables come out of a freezer fit for cooking only, which
  // the plan cannot see.
  const bool home_frozen =
      food.department == foods::Department::meat || food.department == foods::Department::fish ||
      food.department == foods::Department::bakery || food.department == foods::Department::dairy;
  if (home_frozen && food.stored != foods::Place::freezer && food.freezes.value_or(false) &&
      keeps.freezer) {
    good.keeps_frozen = keeps.freezer->value;
  } else if (keeps.frozen_juice) {
    good.keeps_frozen = keeps.frozen_juice->value;
    const foods::Yield* juice = food.yield(foods::Form::juice);
    good.room_frozen =
        measure::to_int64(measure::ceil(room * (juice != nullptr ? juice->share : Rational(1))));
  }
  // Opening starts a clock for what comes in one pack, not for a bag of onions.
  const bool one_pack = food.department != foods::Department::produce &&
                        food.department != foods::Department::meat &&
                        food.department != foods::Department::fish && !food.is_household();
  // What keeps opened to the end of the plan need not be watched.
  const int length = day(plan_.until) + good.salvage_days;
  if (one_pack && keeps.opened && keeps.opened->value < std::min(good.keeps_cool, length)) {
    good.keeps_opened = keeps.opened->value;
  }
  return true;
}

bool Lowering::may_buy(FoodId food, const kitchen::Shop& shop) const {
  for (const kitchen::BuyingRule& rule : kitchen_.household.buying) {
    if (rule.food == food &&
        ((!rule.only_at.empty() && !names(rule.only_at, shop)) || names(rule.never_at, shop))) {
      return false;
    }
  }
  return true;
}

// What an offer's price counts as, against that of a shop that is preferred.
Rational Lowering::preference(FoodId food, const kitchen::Shop& shop) const {
  for (const kitchen::BuyingRule& rule : kitchen_.household.buying) {
    if (rule.food == food && !rule.prefer.empty() && !names(rule.prefer, shop)) {
      return 1 + kitchen::preference;
    }
  }
  return 1;
}

// An offer as it stands on the days from..until, on which its price does not change.
void Lowering::add_offer(Good& good, const kitchen::Shop& shop, std::size_t index, const Food& food,
                         Date from, Date until) {
  const kitchen::Offer& offer = shop.offers[index];
  from = std::max(from, offer.from.value_or(plan_.from));
  until = std::min(until, offer.until.value_or(plan_.until));
  if (until < from) {
    return;
  }
  Offer made;
  made.shop = static_cast<ShopId>(shop.id);
  made.first_day = day(from);
  made.last_day = day(until);
  made.pack = to_micro_up(offer.size * in_terms_of(offer.food).worth);
  made.by_weight = offer.by_weight;
  // Exact, so that it never pays to split what the scale weighs for the cents that a till rounds.
  const Rational factor = (1 + shop.tax_on(food.department) - shop.cash_back) *
                          preference(offer.food, shop) * money_per_cent;
  if (!offer.deal || offer.on_sale(from)) {
    made.cost.unit = measure::to_int64(measure::round(offer.exact_cost(1, from) * factor));
    made.cost.limit = offer.limit.value_or(made.cost.limit);
  } else {
    // Enough for every demand, and for what may be worth keeping.
    Amount wanted = good.salvage_cap;
    for (const Demand& demand : good.demands) {
      wanted += demand.amount;
    }
    const auto enough = static_cast<int>(std::min<Amount>(wanted / made.pack + 1, 2000));
    const int most = std::min(enough, offer.limit.value_or(enough));
    for (int n = 1; n <= most; ++n) {
      made.cost.table.push_back(
          measure::to_int64(measure::round(offer.exact_cost(n, from) * factor)));
    }
  }
  if (made.cost.most() > 0) {
    good.offers.push_back(std::move(made));
    out_.offers.back().push_back(index);
  }
}

void Lowering::offers(Good& good, const Food& food, FoodId id) {
  for (const kitchen::Shop& shop : kitchen_.shops) {
    if (!may_buy(id, shop)) {
      continue;
    }
    for (std::size_t i = 0; i < shop.offers.size(); ++i) {
      const kitchen::Offer& offer = shop.offers[i];
      if (offer.food != id) {
        continue;
      }
      if (!offer.sale) {
        add_offer(good, shop, i, food, plan_.from, plan_.until);
        continue;
      }
      const Date first = std::max(plan_.from, offer.sale->from.value_or(plan_.from));
      const Date last = std::min(plan_.until, offer.sale->until.value_or(plan_.until));
      add_offer(good, shop, i, food, plan_.from, first - std::chrono::days(1));
      add_offer(good, shop, i, food, first, last);
      add_offer(good, shop, i, food, last + std::chrono::days(1), plan_.until);
    }
  }
}

// What is left over is worth a share of the cheapest price per unit.
void Lowering::values(Good& good) {
  std::optional<Rational> cheapest;
  for (const Offer& offer : good.offers) {
    const Rational each = Rational(offer.cost.of(1)) / Rational(offer.pack);
    cheapest = cheapest ? std::min(*cheapest, each) : each;
  }
  const Rational worth = cheapest.value_or(0) * kitchen_.household.leftovers_worth * 1000 * micro;
  good.salvage = measure::to_int64(measure::floor(worth));
}

// Foods that stand for each other are one good, which keeps as long as all of them do.
void Lowering::good(FoodId id, const std::vector<std::size_t>& uses) {
  const std::vector<FoodId> members = kitchen_.household.instead_of(id);
  Good good;
  if (!keeping(good, kitchen_.food(id), uses.front())) {
    return;
  }
  for (const FoodId member : members) {
    if (member == id) {
      continue;
    }
    Good other;
    if (!keeping(other, kitchen_.food(member), uses.front())) {
      return;
    }
    good.keeps_cool = std::min(good.keeps_cool, other.keeps_cool);
    good.keeps_frozen = shorter(good.keeps_frozen, other.keeps_frozen, false);
    good.keeps_opened = shorter(good.keeps_opened, other.keeps_opened, true);
    good.room_cool = std::max(good.room_cool, other.room_cool);
    good.room_frozen = std::max(good.room_frozen, other.room_frozen);
  }
  demands(good, uses);
  if (good.demands.empty()) {
    out_.uses.pop_back();
    return;
  }
  // Up to two weeks' use more is welcome in the next plan.
  Amount total = 0;
  for (const Demand& demand : good.demands) {
    total += demand.amount;
  }
  good.salvage_cap = total * 14 / (out_.model.last_day + 1);
  out_.offers.emplace_back();
  for (const FoodId member : members) {
    offers(good, kitchen_.food(member), member);
  }
  values(good);
  out_.model.goods.push_back(std::move(good));
  out_.foods.push_back(id);
}

void Lowering::goods() {
  std::map<FoodId, std::vector<std::size_t>> uses; // by the food in terms of which they are
  std::vector<FoodId> order;                       // as they are first used
  for (std::size_t u = 0; u < resolved_.uses.size(); ++u) {
    if (resolved_.missing[u] > 0) {
      const FoodId id = in_terms_of(resolved_.uses[u].food).food;
      if (uses[id].empty()) {
        order.push_back(id);
      }
      uses[id].push_back(u);
    }
  }
  for (const FoodId id : order) {
    good(id, uses[id]);
  }
}

Lowered Lowering::run() {
  out_.model.last_day = day(plan_.until);
  stops();
  rooms();
  goods();
  return std::move(out_);
}

} // namespace

Lowered lower(const Kitchen& kitchen, const Resolved& resolved, text::Diagnostics& diagnostics) {
  return Lowering(kitchen, resolved, diagnostics).run();
}

} // namespace manciple::purchase
