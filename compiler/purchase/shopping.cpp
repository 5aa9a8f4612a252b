#include "purchase/shopping.hpp"

#include "purchase/errors.hpp"
#include "purchase/lives.hpp"
#include "purchase/rules.hpp"
#include "purchase/shortfall.hpp"
#include "purchase/slivers.hpp"
#include "purchase/small_stops.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <span>
#include <tuple>

namespace manciple::purchase {
namespace {

using buying::ItemId;
using foods::Food;
using kitchen::Kitchen;
using resolve::Resolved;

/// Work of the search for an effort of 1: some ten seconds.
constexpr double usual_work = 40'000'000;

/// Thousandths of a unit.
constexpr buying::Amount least_served = 2;

class Shopper {
public:
  Shopper(const Kitchen& kitchen, const Resolved& resolved)
      : kitchen_(kitchen), resolved_(resolved) {}

  Shopping run(Lowered lowered, const Search& search) {
    out_.lowered = std::move(lowered);
    out_.solution = buying::solve(out_.lowered.model, options(search));
    out_.first = out_.lowered.first;
    for (const ItemId item : buying::ids(out_.lowered.foods)) {
      out_.foods.push_back(out_.lowered.foods[item]);
    }
    visits();
    for (const ItemId item : buying::ids(out_.solution.items)) {
      take(item);
    }
    money();
    account();
    litres();
    sort();
    return std::move(out_);
  }

private:
  kitchen::InTermsOf in_terms_of(foods::FoodId food) const {
    return kitchen_.household.in_terms_of(food);
  }
  Rational cents(buying::Fine fine) const {
    return Rational(fine) / (Rational(buying::fine_per_money) * out_.lowered.per_cent);
  }
  Cents whole_cents(buying::Fine fine) const {
    return measure::to_int64(measure::round(cents(fine)));
  }

  buying::Options options(const Search& search) const {
    buying::Options options;
    options.work = static_cast<std::int64_t>(std::min(usual_work * search.effort, 1e17));
    options.stop = search.stop;
    if (search.progress) {
      options.progress = [this, progress = search.progress](const buying::Progress& how) {
        progress(whole_cents(how.best), whole_cents(how.bound), kitchen_.household.currency);
      };
    }
    return options;
  }

  void visits() {
    const auto& plan = *kitchen_.plan;
    visit_of_stop_.resize(out_.lowered.stops.size());
    for (const buying::StopId stop : out_.solution.stops) {
      const auto [t, c] = out_.lowered.stops[stop];
      const kitchen::Shop& shop = kitchen_.shop(plan.trips[t].stops[c].shop);
      visit_of_stop_[stop] = out_.visits.size();
      StopMade visit;
      visit.trip = t;
      visit.shop = shop.id;
      visit.date = plan.trips[t].date;
      visit.home = plan.trips[t].home;
      visit.stop_cost = shop.stop_cost.value_or(kitchen_.household.stop_cost);
      out_.visits.push_back(visit);
    }
  }

  text::Date date(buying::Day day) const { return out_.first + std::chrono::days(day); }

  // What is held of an item: its lines first, then its lots. Each is used by demands, which are
  // handed out to their uses in order; the last part of a use makes it whole, so that amounts add
  // up exactly.
  void take(ItemId id) {
    const buying::ItemSolution& solution = out_.solution.items[id];
    first_line_ = out_.lines.size();
    first_supply_ = out_.supplies.size();
    for (const buying::Purchase& bought : solution.purchases) {
      const std::size_t visit = visit_of_stop_[bought.stop];
      const std::size_t index = out_.lowered.offers[id][bought.offer];
      const kitchen::Offer& offer = kitchen_.shop(out_.visits[visit].shop).offers[index];
      Line line;
      line.visit = visit;
      line.food = offer.food;
      line.offer = index;
      line.packs = bought.packs;
      line.cost = offer.cost(bought.packs, out_.visits[visit].date);
      line.amount = offer.size * bought.packs;
      out_.lines.push_back(line);
    }
    hand_out(id);
    leftovers(id);
  }

  foods::FoodId food_of(const buying::Fate& fate, ItemId item) const {
    return fate.stock
               ? kitchen_.on_hand.lots[out_.lowered.lots[item][buying::LotId(fate.of)]].food()
               : out_.lines[first_line_ + fate.of].food;
  }

  // In the order of the demands. What is lacking, all its uses lack by what they give; what is
  // missing, the last ones.
  void hand_out(ItemId id) {
    const buying::Item& item = out_.lowered.model.items[id];
    for (const buying::DemandId demand : buying::ids(item.demands)) {
      hand_out(id, item, demand);
    }
  }

  void hand_out(ItemId id, const buying::Item& item, buying::DemandId demand) {
    const buying::ItemSolution& solution = out_.solution.items[id];
    const std::vector<std::size_t>& uses = out_.lowered.uses[id][demand];
    std::vector<const buying::Serving*> servings;
    for (const buying::Serving& serving : solution.servings) {
      if (serving.demand == demand) {
        servings.push_back(&serving);
      }
    }
    // What the model's rounding left of a pack is none.
    if (servings.size() > 1) {
      const auto most = *std::max_element(servings.begin(), servings.end(),
                                          [](auto* a, auto* b) { return a->amount < b->amount; });
      std::erase_if(servings, [&](const buying::Serving* one) {
        return one != most && one->amount <= least_served;
      });
    }
    Rational lacking = 0;
    Rational missing = 0;
    for (const buying::Short& one : solution.shorts) {
      if (one.demand == demand) {
        lacking = from_model(one.lacking);
        missing = from_model(one.missing);
      }
    }
    const std::vector<Rational> without = lacked(uses, lacking);
    const auto wanted = [&](std::size_t n) {
      return Rational((resolved_.uses[uses[n]].amount - without[n]) * worth_of(uses[n]));
    };
    std::vector<Portion> portions;
    std::size_t next = 0;
    Rational done = 0; // of the use that `next` points at
    for (const buying::Serving* const serving : servings) {
      // By the container, whatever is in it.
      const Rational counts = counts_for(*serving, item, solution);
      Rational amount = from_model(serving->amount) * counts;
      const bool last = serving == servings.back() && missing == 0;
      while (next < uses.size() && (last || amount > 0)) {
        const Rational left = wanted(next) - done;
        const bool all = last || left <= amount;
        const Rational taken = all ? left : amount;
        if (taken > 0) {
          portions.push_back({*serving, uses[next], taken / counts, taken / worth_of(uses[next])});
        }
        amount -= taken;
        done = all ? Rational(0) : Rational(done + taken);
        next += all ? 1 : 0;
      }
    }
    leave_slivers(kitchen_, resolved_, solution, portions);
    for (const Portion& one : portions) {
      serve(one.of, id, one.use, one.taken, one.covers);
    }
    for (std::size_t n = 0; n < uses.size(); ++n) {
      const bool served = n < next || missing == 0;
      const Rational rest = served ? Rational(0) : Rational(wanted(n) - (n == next ? done : 0));
      if (rest > 0 || without[n] > 0) {
        out_.shortfalls.push_back({uses[n], without[n], rest / worth_of(uses[n])});
      }
    }
  }

  Rational worth_of(std::size_t use) const { return in_terms_of(resolved_.uses[use].food).worth; }

  // What each of a demand's uses lacks of `lacking`, which is in terms of the item.
  std::vector<Rational> lacked(const std::vector<std::size_t>& uses,
                               const Rational& lacking) const {
    Rational give = 0;
    for (const std::size_t u : uses) {
      give += resolved_.uses[u].give * worth_of(u);
    }
    std::vector<Rational> out;
    for (const std::size_t u : uses) {
      out.push_back(give > 0 ? Rational(resolved_.uses[u].give * lacking / give) : Rational(0));
    }
    return out;
  }

  // What a unit of what serves a demand counts for.
  static Rational counts_for(const buying::Serving& serving, const buying::Item& item,
                             const buying::ItemSolution& solution) {
    const buying::Demand& demand = item.demands[serving.demand];
    const auto of = [&](buying::Amount containers, buying::Amount pack) {
      return demand.containers == 0 || containers == 0
                 ? Rational(1)
                 : Rational(demand.amount) * containers / (Rational(demand.containers) * pack);
    };
    if (serving.stock) {
      const buying::Lot& lot = item.stock[buying::LotId(serving.of)];
      return of(lot.containers, lot.amount / lot.packs);
    }
    const buying::Offer& offer = item.offers[solution.purchases[serving.of].offer];
    return of(offer.containers, offer.pack);
  }

  // `taken` in terms of the item, of which it covers so much of the use.
  void serve(const buying::Serving& serving, ItemId id, std::size_t use, const Rational& taken,
             const Rational& covers) {
    Served served;
    served.use = use;
    served.amount = taken / in_terms_of(food_of(serving, id)).worth;
    served.covers = covers;
    served.frozen = serving.frozen;
    served.frozen_on = date(serving.frozen_on);
    if (serving.opened_on && *serving.opened_on >= 0) {
      served.opened_on = date(*serving.opened_on);
    }
    if (serving.stock) {
      StockUse of;
      static_cast<Served&>(of) = served;
      of.lot = out_.lowered.lots[id][buying::LotId(serving.of)];
      add(of, out_.from_stock);
    } else {
      Supply of;
      static_cast<Served&>(of) = served;
      of.line = first_line_ + serving.of;
      add(of, out_.supplies);
    }
  }

  // What the use must have and what it takes besides is one part.
  template <typename Part>
  static void add(const Part& part, std::vector<Part>& all) {
    if (!all.empty() && all.back().is_more_of(part)) {
      all.back().amount += part.amount;
      all.back().covers += part.covers;
    } else {
      all.push_back(part);
    }
  }

  // What the item's uses have of its lines.
  std::span<Supply> supplies() { return std::span(out_.supplies).subspan(first_supply_); }

  // What uses have of a line. The model's packs may be some thousandths of a unit larger than they
  // are: the largest use has that much less.
  Rational take_up(std::size_t line) {
    Rational used = 0;
    Supply* most = nullptr;
    for (Supply& supply : supplies()) {
      if (supply.line == line) {
        used += supply.amount;
        most = most == nullptr || supply.amount > most->amount ? &supply : most;
      }
    }
    const Rational over = used - out_.lines[line].amount;
    if (over <= 0) {
      return used;
    }
    most->amount -= over;
    return out_.lines[line].amount;
  }
  // What goes into the freezer when it comes home, for some use.
  Rational frozen_at_once(std::size_t line) {
    Rational out = 0;
    for (const Supply& supply : supplies()) {
      const bool frozen =
          supply.line == line &&
          (supply.frozen ? supply.frozen_on == out_.visits[out_.lines[line].visit].date
                         : resolve::is_for_freezer(kitchen_, resolved_.uses[supply.use]));
      out += frozen ? supply.amount : Rational(0);
    }
    return out;
  }

  Rest& add_rest(const buying::Fate& fate, ItemId id) {
    Rest rest;
    rest.stock = fate.stock;
    rest.of = fate.stock ? out_.lowered.lots[id][buying::LotId(fate.of)] : first_line_ + fate.of;
    rest.amount = from_model(fate.amount) / in_terms_of(food_of(fate, id)).worth;
    out_.rests.push_back(rest);
    return out_.rests.back();
  }

  // What is left is what no use has, exactly: a line adds up.
  void leftovers(ItemId id) {
    const buying::ItemSolution& solution = out_.solution.items[id];
    std::map<std::pair<bool, std::size_t>, std::pair<Rational, Rational>> left; // kept, wasted
    std::map<std::size_t, Rational> frozen; // of what is kept, by purchase
    for (const buying::Kept& kept : solution.kept) {
      Rest& rest = add_rest(kept, id);
      rest.frozen = kept.frozen;
      rest.opened_on = kept.opened_on ? std::optional(date(*kept.opened_on)) : std::nullopt;
      left[{kept.stock, kept.of}].first += rest.amount;
      if (!kept.stock && kept.frozen) {
        frozen[kept.of] += rest.amount;
      }
    }
    for (const buying::Waste& waste : solution.wastes) {
      Rest& rest = add_rest(waste, id);
      rest.until = date(waste.day - 1);
      left[{waste.stock, waste.of}].second += rest.amount;
    }
    for (std::size_t l = first_line_; l < out_.lines.size(); ++l) {
      Line& line = out_.lines[l];
      const Rational rest = line.amount - take_up(l);
      std::tie(line.kept, line.wasted) = left[{false, l - first_line_}];
      const kitchen::Offer& offer = kitchen_.shop(out_.visits[line.visit].shop).offers[line.offer];
      // What the scale rounds up is eaten with the rest, not left, but for what is a step of it,
      // where slivers stay.
      if (offer.by_weight) {
        const Rational more = rest - line.kept - line.wasted;
        (line.kept > 0 ? line.kept : line.wasted) += more < offer.size ? Rational(0) : more;
      } else {
        line.wasted = line.kept > 0 ? std::min(line.wasted, rest) : rest;
        line.kept = rest - line.wasted;
      }
      line.to_freeze = frozen_at_once(l) + std::min(frozen[l - first_line_], line.kept);
    }
    for (const buying::LotId lot : buying::ids(out_.lowered.lots[id])) {
      const auto& [kept, wasted] = left[{true, lot.index()}];
      if (kept > 0 || wasted > 0) {
        out_.stock_left.push_back({out_.lowered.lots[id][lot], kept, wasted});
      }
    }
  }

  void money() {
    for (Line& line : out_.lines) {
      StopMade& visit = out_.visits[line.visit];
      line.tax = measure::to_int64(
          measure::round(kitchen_.shop(visit.shop).tax_on(kitchen_.food(line.food).department) *
                         line.cost.value_or(0)));
      visit.goods += line.cost.value_or(0);
      visit.tax += line.tax;
    }
    std::vector<Cents> credit;
    for (const kitchen::Shop& shop : kitchen_.shops) {
      credit.push_back(shop.credit);
    }
    for (StopMade& visit : out_.visits) {
      const kitchen::Shop& shop = kitchen_.shop(visit.shop);
      if (shop.reduction && visit.goods + visit.tax >= shop.reduction->over) {
        visit.off = shop.reduction->off;
      }
      Cents& open = credit[static_cast<std::size_t>(visit.shop)];
      visit.credit = std::min(open, visit.paid());
      open -= visit.credit;
      visit.cash_back = shop.comes_back(visit.goods, visit.credit);
      out_.paid += visit.paid();
      out_.cash_back += visit.cash_back;
      out_.stop_costs += visit.stop_cost;
    }
  }

  void account() {
    Account& account = out_.account;
    for (const Line& line : out_.lines) {
      const StopMade& visit = out_.visits[line.visit];
      const kitchen::Shop& shop = kitchen_.shop(visit.shop);
      const kitchen::Offer& offer = shop.offers[line.offer];
      const std::optional<Rational> known = offer.exact_cost(line.packs, visit.date);
      if (!known) {
        account.unpriced += offer.guess * line.packs * (1 + preference(kitchen_, line.food, shop));
        continue;
      }
      const Rational& price = *known;
      const Rational tax = price * shop.tax_on(kitchen_.food(line.food).department);
      account.prices += price;
      account.tax += tax;
      account.cash_back += price * shop.cash_back;
      account.preference += (price + tax) * preference(kitchen_, line.food, shop);
    }
    for (const StopMade& visit : out_.visits) {
      account.reductions += visit.off;
      account.credit += visit.credit;
      account.cash_back -= kitchen_.shop(visit.shop).cash_back * visit.credit;
      account.stops += visit.stop_cost;
    }
    for (const buying::ItemSolution& item : out_.solution.items) {
      account.wasted += cents(item.waste_value);
      account.kept += cents(item.salvage_value);
      account.lacking += cents(item.lacking_value);
      account.missing += cents(item.missing_value);
      account.handling += cents(buying::fine(item.handling));
    }
    account.total = cents(out_.solution.total_fine);
  }

  void litres() {
    const Lowered& lowered = out_.lowered;
    const auto before = static_cast<std::size_t>((kitchen_.plan->from - lowered.first).count());
    constexpr auto room_a_litre = buying::microlitres_per_litre * buying::amounts_per_unit;
    for (const foods::Place place : foods::all_places) {
      const std::size_t row = buying::index(in_model(place));
      std::vector<Rational>& taken = out_.litres[place];
      for (std::size_t night = before; night < out_.solution.room[row].size(); ++night) {
        taken.push_back(Rational(out_.solution.room[row][night]) / room_a_litre +
                        Rational(lowered.other_room[row][night]) / buying::microlitres_per_litre);
      }
    }
  }

  // Lines in the order in which one walks, with the supplies following.
  void sort() {
    std::vector<std::size_t> order(out_.lines.size());
    for (std::size_t i = 0; i < order.size(); ++i) {
      order[i] = i;
    }
    const auto place = [&](std::size_t i) {
      const Line& line = out_.lines[i];
      const Food& food = kitchen_.food(line.food);
      const auto& walk = kitchen_.shop(out_.visits[line.visit].shop).walk;
      const auto at = std::find(walk.begin(), walk.end(), food.department) - walk.begin();
      return std::tuple(line.visit, at, food.department, std::string_view(food.name), line.offer);
    };
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return place(a) < place(b); });
    std::vector<Line> sorted;
    std::vector<std::size_t> new_place(order.size());
    for (std::size_t i = 0; i < order.size(); ++i) {
      new_place[order[i]] = i;
      sorted.push_back(std::move(out_.lines[order[i]]));
    }
    out_.lines = std::move(sorted);
    for (Supply& supply : out_.supplies) {
      supply.line = new_place[supply.line];
    }
    for (Rest& rest : out_.rests) {
      rest.of = rest.stock ? rest.of : new_place[rest.of];
    }
    const auto by_use = [](const auto& a, const auto& b) { return a.use < b.use; };
    std::stable_sort(out_.supplies.begin(), out_.supplies.end(), by_use);
    std::stable_sort(out_.from_stock.begin(), out_.from_stock.end(), by_use);
    std::stable_sort(out_.shortfalls.begin(), out_.shortfalls.end(), by_use);
    std::sort(out_.stock_left.begin(), out_.stock_left.end(),
              [](const StockRest& a, const StockRest& b) { return a.lot < b.lot; });
  }

  const Kitchen& kitchen_;
  const Resolved& resolved_;
  Shopping out_;
  buying::Table<buying::StopId, std::size_t> visit_of_stop_;
  std::size_t first_line_ = 0; ///< of the item at hand
  std::size_t first_supply_ = 0;
};

void say_what_is_proven(const Shopping& shopping, const kitchen::Currency& currency,
                        text::Diagnostics& diagnostics) {
  if (shopping.proven()) {
    return;
  }
  const buying::Money gap = shopping.solution.total - shopping.solution.bound;
  const Cents above = (gap + shopping.lowered.per_cent - 1) / shopping.lowered.per_cent;
  diagnostics.warning(errors::not_proven, std::nullopt,
                      fmt::format("a list that is up to {} cheaper may exist{}",
                                  currency.print(above),
                                  shopping.stopped_by_hand()
                                      ? "; the search was stopped by hand before it proved this "
                                        "list the cheapest, so another run may give a different one"
                                      : ""),
                      "search longer with --search 10");
}

} // namespace

foods::FoodId food_of(const Kitchen& kitchen, const StockUse& used) {
  return kitchen.on_hand.lots[used.lot].food();
}

Shopping buy(const Kitchen& kitchen, const Resolved& resolved, text::Diagnostics& diagnostics,
             const Search& search) {
  Lowered lowered = lower(kitchen, resolved, diagnostics);
  if (diagnostics.errors() > 0) {
    return {};
  }
  Shopping shopping = Shopper(kitchen, resolved).run(std::move(lowered), search);
  explain_shortfalls(kitchen, resolved, shopping, diagnostics);
  tell_small_stops(kitchen, shopping, diagnostics, search);
  say_what_is_proven(shopping, kitchen.household.currency, diagnostics);
  return shopping;
}

} // namespace manciple::purchase
