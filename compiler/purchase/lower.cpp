#include "purchase/lower.hpp"

#include "foods/classes.hpp"
#include "purchase/errors.hpp"
#include "purchase/lives.hpp"
#include "purchase/offer_terms.hpp"
#include "purchase/ranges.hpp"
#include "purchase/rules.hpp"
#include "purchase/usual_price.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <tuple>

namespace manciple::purchase {
namespace {

using buying::Day;
using buying::Item;
using buying::ItemId;
using buying::Money;
using foods::Food;
using foods::FoodId;
using kitchen::Kitchen;
using kitchen::Plan;
using resolve::Resolved;
using text::Date;

// What is left over is worth something up to so many days' use. Our own choice.
constexpr int worth_days = 14;
// What is missing, or lacking although the dish can do without, counts so many times its usual
// price. Our own choice: high enough that nothing goes missing to save money, and that what gives
// is not used to buy less of what is weighed.
constexpr int missing_counts = 20;
// A garnish that is missing counts so many times its pack, and half the cheapest stop. Our own
// choice.
const Rational garnish_counts{11, 10};
constexpr int lacking_counts = 2;
// To bag and label what is frozen for one use, and to take it out again. Common practice, no
// source.
constexpr int minutes_to_freeze = 3;
// What is on hand in more containers than that is taken as one pack. Our own choice.
constexpr int most_containers = 1000;
// Money for a cent, unless sums are too large for it.
constexpr Money fine_cent = 100;
constexpr Money coarse_cent = 1;

class Lowering {
public:
  Lowering(const Kitchen& kitchen, const Resolved& resolved, Money per_cent,
           text::Diagnostics& diagnostics)
      : kitchen_(kitchen),
        plan_(*kitchen.plan),
        resolved_(resolved),
        first_(kitchen.plan->first_day()),
        days_(static_cast<int>((plan_.until - first_).count()) + 1),
        diagnostics_(diagnostics) {
    out_.per_cent = per_cent;
    out_.first = first_;
  }

  /// Not to be used where it is `too_much`.
  Lowered run() {
    out_.model.last_day = days_ - 1;
    shops();
    stops();
    items();
    rooms();
    worth_of_credit();
    sums_too_large_ = buying::most_that_may_be_paid(out_.model) > buying::most_money;
    return std::move(out_);
  }
  /// Whether something is beyond what is solved exactly.
  bool too_much() const { return sums_too_large_ || price_too_large_; }
  /// The price that is, if it is one.
  std::optional<text::Span> price_too_large() const { return price_too_large_; }

private:
  Money to_money(const Rational& cents) const {
    return measure::to_int64(measure::round(Rational(cents * out_.per_cent)));
  }
  Money to_money_down(const Rational& cents) const {
    return measure::to_int64(measure::floor(Rational(cents * out_.per_cent)));
  }

  int days_done() const {
    Date begins = std::min(plan_.begins, first_);
    for (const kitchen::Trip& trip : plan_.trips_done) {
      begins = std::min(begins, trip.date);
    }
    return static_cast<int>((first_ - begins).count());
  }
  Day day(Date date) const { return static_cast<Day>((date - first_).count()); }
  kitchen::InTermsOf in_terms_of(FoodId food) const { return kitchen_.household.in_terms_of(food); }

  void shops() {
    for (const kitchen::Shop& shop : kitchen_.shops) {
      buying::Shop& made = out_.model.shops.emplace_back();
      made.credit = shop.credit * out_.per_cent;
      if (shop.reduction && shop.reduction->off > 0) {
        made.over = shop.reduction->over * out_.per_cent;
        made.off = shop.reduction->off * out_.per_cent;
      }
    }
  }

  // What credit pays earns no cash back. Nothing costs less than what counts for the credit, to the
  // last digit, so that nothing is bought for its sake.
  void worth_of_credit() {
    for (const kitchen::Shop& shop : kitchen_.shops) {
      const buying::ShopId id(static_cast<std::size_t>(shop.id));
      buying::Fine worth = measure::to_int64(
          measure::floor(Rational((1 - shop.cash_back) * Rational(buying::fine_per_money))));
      for (const Item& item : out_.model.items) {
        for (const buying::Offer& offer : item.offers) {
          if (offer.shop == id) {
            worth = std::min({worth, share(offer.cost.each, offer.till.packs.each),
                              share(offer.cost.deal, offer.till.packs.deal)});
          }
        }
      }
      out_.model.shops[id].credit_worth = worth;
    }
  }
  static buying::Fine share(Money cost, Money till) {
    return till == 0 ? buying::fine_per_money
                     : measure::to_int64(measure::floor(Rational(cost) * buying::fine_per_money /
                                                        Rational(till)));
  }

  void stops() {
    for (std::size_t t = 0; t < plan_.trips.size(); ++t) {
      const kitchen::Trip& trip = plan_.trips[t];
      for (std::size_t c = 0; c < trip.stops.size(); ++c) {
        const kitchen::Shop& shop = kitchen_.shop(trip.stops[c].shop);
        const Cents cost = shop.stop_cost.value_or(kitchen_.household.stop_cost);
        dearest_stop_ = std::max(dearest_stop_, cost);
        least_stop_ = std::min(least_stop_.value_or(cost), cost);
        out_.model.stops.push_back({day(trip.date) * buying::minutes_per_day + trip.home,
                                    buying::ShopId(static_cast<std::size_t>(shop.id)),
                                    cost * out_.per_cent, trip.stops[c].always});
        out_.stops.emplace_back(t, c);
      }
    }
  }

  void items() {
    std::map<FoodId, std::vector<std::size_t>> uses; // by the food in terms of which they are
    std::vector<FoodId> order;                       // as they are first used
    for (std::size_t u = 0; u < resolved_.uses.size(); ++u) {
      const resolve::Use& use = resolved_.uses[u];
      if (use.amount == 0) {
        continue;
      }
      if (use.containers) {
        usual_container_.emplace(use.food, use.amount / *use.containers);
      }
      const FoodId id = in_terms_of(use.food).food;
      if (uses[id].empty()) {
        order.push_back(id);
      }
      uses[id].push_back(u);
    }
    for (const FoodId id : order) {
      item(id, uses[id]);
    }
  }

  // Foods that stand for each other are one item. Each stands where it would alone; a unit takes
  // the room of the one that takes most.
  void item(FoodId id, const std::vector<std::size_t>& uses) {
    const Keeping keeping = keeping_of(kitchen_.food(id), days_);
    if (const Food& food = kitchen_.food(id); !keeping.known && !food.as_written) {
      diagnostics_.warning(
          errors::unknown_keeping, place_of(kitchen_, resolved_, resolved_.uses[uses.front()]),
          fmt::format("it is not known how long '{}' keeps in the {}; it is assumed to keep until "
                      "it is used, so check its label",
                      food.name, foods::name(food.stored)),
          fmt::format("add 'keeps: {{{}: [NN days, SOURCE]}}' to '{}' in recipes/foods.yaml",
                      foods::name(food.stored), food.name));
    }
    Item item;
    item.kept_day = days_ - 1 + kept_days;
    // What keeps is what would keep through the plan as a whole, however much of it is done.
    item.buy_late = keeping.life.cool < item.kept_day + days_done();
    out_.offers.emplace_back();
    out_.lots.emplace_back();
    demands(item, uses);
    for (const FoodId member : kitchen_.household.instead_of(id)) {
      const Food& food = kitchen_.food(member);
      const Rational worth = in_terms_of(member).worth;
      const auto in_terms = [&](buying::Volume room) {
        return measure::to_int64(measure::ceil(Rational(room) / worth));
      };
      item.room_cool = std::max(item.room_cool, in_terms(room_cool(food)));
      item.room_frozen = std::max(item.room_frozen, in_terms(room_frozen(food)));
      stock(item, member);
      offers(item, member);
    }
    const Food& first = kitchen_.food(id);
    if (foods::basis(first) == measure::Dimension::mass &&
        first.department != foods::Department::spices) {
      item.least_frozen = to_model_down(least_frozen * in_terms_of(id).worth);
    }
    values(item, id);
    out_.model.items.push_back(std::move(item));
    out_.foods.push_back(id);
  }

  // Demands of one moment, freshness and slack are one, but for those that are counted in
  // containers. Cumulative sums are rounded down.
  void demands(Item& item, const std::vector<std::size_t>& uses) {
    std::map<std::tuple<buying::Minute, Day, bool, bool, int>, std::vector<std::size_t>> by_moment;
    for (const std::size_t u : uses) {
      const resolve::Use& use = resolved_.uses[u];
      // Before the plan begins there is only what is on hand.
      const Day on = std::max(0, day(use.date));
      const bool before = day(use.date) < 0;
      const buying::Minute at = before ? 0 : on * buying::minutes_per_day + use.clock;
      by_moment[{at, on, !use.fresh, use.containers.has_value(), use.slack}].push_back(u);
    }
    bool counts_containers = false;
    Rational sum = 0;
    buying::Amount before = 0;
    auto& of_item = out_.uses.emplace_back();
    for (const auto& [when, list] : by_moment) {
      Rational give = 0;
      Rational containers = 0;
      for (const std::size_t u : list) {
        const resolve::Use& use = resolved_.uses[u];
        const Rational worth = in_terms_of(use.food).worth;
        sum += use.amount * worth;
        give += use.give * worth;
        containers += use.containers.value_or(0);
      }
      const buying::Amount here = to_model_down(sum);
      if (here > before) {
        buying::Demand demand;
        std::tie(demand.at, demand.day, demand.takes_frozen, counts_containers, demand.slack) =
            when;
        demand.amount = here - before;
        demand.give = std::min(to_model_down(give), demand.amount);
        demand.containers = to_thousandths(containers);
        item.demands.push_back(demand);
        of_item.push_back(list);
      } else if (!of_item.empty()) {
        of_item.back().insert(of_item.back().end(), list.begin(), list.end());
      }
      before = here;
    }
  }

  static buying::Amount to_thousandths(const Rational& containers) {
    return measure::to_int64(measure::floor(containers * buying::amounts_per_unit));
  }

  // What holds `amount`, as a number of containers (in thousandths) such as the food's uses ask
  // for; 0 if it is too far from the usual size, or another food than they name.
  buying::Amount in_containers(FoodId food, const Rational& amount, const Rational& count) const {
    const auto one = usual_container_.find(food);
    if (one == usual_container_.end()) {
      return 0;
    }
    return is_usual_container(amount, one->second * count) ? to_thousandths(count) : 0;
  }

  void stock(Item& item, FoodId id) {
    const Food& food = kitchen_.food(id);
    for (std::size_t l = 0; l < kitchen_.on_hand.lots.size(); ++l) {
      const kitchen::StockLot& lot = kitchen_.on_hand.lots[l];
      const auto keeping = keeping_of(lot, food, first_, days_);
      if (lot.food() != id || !keeping) {
        continue;
      }
      buying::Lot made;
      made.place = keeping->place;
      made.life = keeping->life;
      made.thawed_in = keeping_of(food, days_).place;
      made.packs = keeping->life.opened ? packs_of(lot) : 1;
      const Rational amount = lot.amount * in_terms_of(id).worth;
      // A can on hand is enough for a use of a can, as one that is bought is.
      made.amount = to_model_up(amount / made.packs) * made.packs;
      made.containers = in_containers(id, lot.amount, lot.what.containers.value_or(1)) / made.packs;
      if (made.amount > 0) {
        item.stock.push_back(made);
        out_.lots.back().push_back(l);
      }
    }
  }

  // "3 jars" and "3 (15 oz) cans" are three packs; anything else is one.
  static int packs_of(const kitchen::StockLot& lot) {
    const Rational count = lot.what.containers.value_or(1);
    return count >= 1 && count <= most_containers && Rational(measure::floor(count)) == count
               ? static_cast<int>(measure::to_int64(measure::floor(count)))
               : 1;
  }

  void offers(Item& item, FoodId id) {
    for (const kitchen::Shop& shop : kitchen_.shops) {
      for (std::size_t i = 0; i < shop.offers.size() && may_buy(kitchen_, id, shop); ++i) {
        if (shop.offers[i].food == id) {
          for (const OfferTerms& terms : terms_of(shop.offers[i], first_, plan_.until)) {
            offer(item, shop, i, terms);
          }
        }
      }
    }
  }

  void offer(Item& item, const kitchen::Shop& shop, std::size_t index, const OfferTerms& terms) {
    const kitchen::Offer& offer = shop.offers[index];
    const Food& food = kitchen_.food(offer.food);
    const Keeping keeping = keeping_of(food, days_);
    const Rational tax = terms.known ? shop.tax_on(food.department) : Rational(0);
    const Rational counts = (1 + tax) * (1 + preference(kitchen_, offer.food, shop)) -
                            (terms.known ? shop.cash_back : Rational(0));
    buying::Offer made;
    made.shop = buying::ShopId(static_cast<std::size_t>(shop.id));
    made.first_day = day(terms.from);
    made.last_day = day(terms.until);
    made.by_weight = offer.by_weight;
    made.containers = offer.by_weight ? 0 : in_containers(offer.food, offer.size, offer.inside);
    made.limit = offer.limit.value_or(made.limit);
    made.place = keeping.place;
    made.life = keeping.life;
    made.inside = made.life.opened ? offer.inside : 1;
    made.pack = to_model_up(offer.size * in_terms_of(offer.food).worth / made.inside) * made.inside;
    if (offer.by_weight && made.life.opened) { // cut at the counter: it has been opened
      made.life.cool = *made.life.opened;
      made.life.opened = made.life.refrozen = std::nullopt;
    }
    // Exact, so that it never pays to split what the scale weighs for the cents that a till rounds.
    made.cost.each = to_money(terms.each * counts);
    made.till.packs.each = terms.known ? to_money_down(terms.each * (1 + tax)) : 0;
    if (terms.deal) {
      made.cost.deal_packs = made.till.packs.deal_packs = terms.deal->packs;
      made.cost.deal =
          std::min(to_money(terms.deal->price * counts), made.cost.each * terms.deal->packs);
      made.till.packs.deal = std::min(to_money_down(Rational(terms.deal->price) * (1 + tax)),
                                      made.till.packs.each * terms.deal->packs);
    }
    // Half a cent may be lost by rounding what is weighed, and half a cent by rounding the tax.
    const int rounded = (offer.by_weight ? 1 : 0) + (tax > 0 ? 1 : 0);
    made.till.less = (rounded * out_.per_cent + 1) / 2;
    item.offers.push_back(made);
    out_.offers.back().push_back(index);
  }

  void values(Item& item, FoodId id) {
    buying::Amount total = 0;
    for (const buying::Demand& demand : item.demands) {
      total += demand.amount;
    }
    const auto plan_days = (plan_.until - plan_.from).count() + 1;
    item.salvage_cap = total / plan_days * worth_days + total % plan_days * worth_days / plan_days;
    item.from_freezer = to_money(Rational(kitchen_.household.hour_cost * minutes_to_freeze, 60));
    item.freezes_rest = !kitchen_.food(id).freezes_for_cooking;
    const auto usual = usual_price(kitchen_, id);
    if (!usual) {
      return;
    }
    const auto rate = [&](const Rational& times) {
      return to_money(usual->unit * times * buying::units_of_a_rate);
    };
    if (usual->unit * missing_counts * buying::units_of_a_rate * out_.per_cent >
        Rational(buying::most_money)) {
      price_too_large_ = usual->at;
      return;
    }
    item.salvage = rate(kitchen_.household.leftovers_worth);
    item.waste = rate(kitchen_.household.waste_costs);
    item.lacking = std::max(rate(lacking_counts), item.salvage);
    item.missing = rate(missing_counts);
    item.missing_once = to_money(usual->pack * missing_counts + Rational(dearest_stop_));
    if (is_garnish(item, id, *usual)) { // bought where one shops anyway, but worth no stop
      item.missing = item.lacking;
      item.missing_once = to_money(usual->pack * garnish_counts + Rational(*least_stop_) / 2);
    }
  }

  // Fresh herbs of which no dish takes more than half a bunch.
  [[nodiscard]] bool is_garnish(const Item& item, FoodId id, const UsualPrice& usual) const {
    const buying::Amount bunch = to_model_down(usual.size);
    return least_stop_ && foods::is(kitchen_.food(id), foods::Class::herb) &&
           std::all_of(item.demands.begin(), item.demands.end(),
                       [&](const buying::Demand& demand) { return demand.amount * 2 <= bunch; });
  }

  // The room of a place is what the household says, or at least what the stock takes alone. What is
  // on hand of foods that no item has is taken off.
  void rooms() {
    const auto& household = kitchen_.household;
    for (const auto& [place, litres] :
         {std::pair(buying::Place::pantry, household.pantry_litres),
          std::pair(buying::Place::fridge, household.fridge_litres),
          std::pair(buying::Place::freezer, household.freezer_litres)}) {
      const std::size_t p = buying::index(place);
      out_.other_room[p].assign(static_cast<std::size_t>(days_), 0);
      std::vector<buying::Volume> stock(static_cast<std::size_t>(days_), 0);
      for (std::size_t l = 0; l < kitchen_.on_hand.lots.size(); ++l) {
        add_lot(l, p, stock);
      }
      if (!litres) {
        continue;
      }
      const buying::Volume most =
          measure::to_int64(measure::floor(*litres * buying::microlitres_per_litre));
      for (std::size_t night = 0; night < stock.size(); ++night) {
        out_.model.room[p].push_back(std::max(most, stock[night]) - out_.other_room[p][night]);
      }
    }
  }

  void add_lot(std::size_t l, std::size_t place, std::vector<buying::Volume>& stock) {
    const kitchen::StockLot& lot = kitchen_.on_hand.lots[l];
    const Food& food = kitchen_.food(lot.food());
    const auto keeping = keeping_of(lot, food, first_, days_);
    if (!keeping || buying::index(keeping->place) != place) {
      return;
    }
    ItemId item(0);
    bool in_item = false;
    for (const ItemId id : buying::ids(out_.lots)) {
      if (std::find(out_.lots[id].begin(), out_.lots[id].end(), l) != out_.lots[id].end()) {
        item = id;
        in_item = true;
      }
    }
    const bool frozen =
        keeping->place == buying::Place::freezer && food.stored != foods::Place::freezer;
    const buying::Volume unit =
        in_item ? (frozen ? out_.model.items[item].room_frozen : out_.model.items[item].room_cool)
                : (frozen ? room_frozen(food) : room_cool(food));
    const Rational worth = in_item ? in_terms_of(lot.food()).worth : Rational(1);
    // In the model a pack may hold a thousandth of a unit more.
    const Rational most = lot.amount * worth + from_model(packs_of(lot));
    const buying::Volume taken = measure::to_int64(measure::ceil(most * unit));
    for (int night = 0; night < days_ && night <= keeping->life.cool; ++night) {
      stock[static_cast<std::size_t>(night)] += taken;
      if (!in_item) {
        out_.other_room[place][static_cast<std::size_t>(night)] += taken;
      }
    }
  }

  const Kitchen& kitchen_;
  const Plan& plan_;
  const Resolved& resolved_;
  Date first_; ///< the model's day 0
  int days_;
  text::Diagnostics& diagnostics_;
  Cents dearest_stop_ = 0;
  std::optional<Cents> least_stop_;
  std::map<FoodId, Rational> usual_container_; ///< what one holds, of foods asked for by it
  std::optional<text::Span> price_too_large_;
  bool sums_too_large_ = false;
  Lowered out_;
};

} // namespace

Rational from_model(buying::Amount amount) {
  return {amount, buying::amounts_per_unit};
}
buying::Amount to_model_down(const Rational& amount) {
  return measure::to_int64(measure::floor(amount * Rational(buying::amounts_per_unit)));
}
buying::Amount to_model_up(const Rational& amount) {
  return measure::to_int64(measure::ceil(amount * Rational(buying::amounts_per_unit)));
}

Lowered lower(const Kitchen& kitchen, const Resolved& resolved, text::Diagnostics& diagnostics) {
  check_ranges(kitchen, resolved, diagnostics);
  if (diagnostics.errors() > 0) {
    return {};
  }
  Lowering fine(kitchen, resolved, fine_cent, diagnostics);
  Lowered lowered = fine.run();
  if (diagnostics.errors() > 0 || !fine.too_much()) {
    return lowered;
  }
  Lowering coarse(kitchen, resolved, coarse_cent, diagnostics);
  lowered = coarse.run();
  if (const auto price = coarse.price_too_large()) {
    diagnostics.error(errors::too_much, *price, "this price is too large to solve exactly",
                      "use a larger unit of money, or look for a digit too many");
  } else if (coarse.too_much()) {
    diagnostics.error(errors::too_much, kitchen.plan->at,
                      "the amounts in this plan are too large to solve exactly",
                      "use a larger unit of money, or look for a price or an amount that is wrong");
  }
  return lowered;
}

text::Span place_of(const Kitchen& kitchen, const Resolved& resolved, const resolve::Use& use) {
  const auto& plan = *kitchen.plan;
  if (const auto* of = std::get_if<resolve::OfMaking>(&use.reason)) {
    return kitchen.recipe(resolved.making(of->making).recipe).ingredients[of->ingredient].at;
  }
  if (const auto* of = std::get_if<resolve::OfDish>(&use.reason)) {
    return plan.meals[of->dish.meal].dishes[of->dish.dish].at;
  }
  if (const auto* of = std::get_if<resolve::OfStaple>(&use.reason)) {
    return plan.staples[of->staple].what.at;
  }
  return plan.extra[std::get<resolve::OfExtra>(use.reason).extra].what.at;
}

} // namespace manciple::purchase
