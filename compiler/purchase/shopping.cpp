#include "purchase/shopping.hpp"

#include "foods/spoken.hpp"
#include "purchase/errors.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>

namespace manciple::purchase {
namespace {

using foods::Food;
using kitchen::Kitchen;
using resolve::Resolved;

Rational from_micro(Amount amount) {
  return {amount, micro};
}

class Shopper {
public:
  Shopper(const Kitchen& kitchen, const Resolved& resolved, text::Diagnostics& diagnostics,
          double seconds)
      : kitchen_(kitchen), resolved_(resolved), diagnostics_(diagnostics), seconds_(seconds) {}

  Shopping run();

private:
  void explain();
  void explain(const Shortage& shortage);
  void visits();
  void lines();
  void supplies(std::size_t good, const std::vector<std::size_t>& line_of_purchase);
  void money();
  [[nodiscard]] kitchen::InTermsOf in_terms_of(foods::FoodId food) const {
    return kitchen_.household.in_terms_of(food);
  }

  const Kitchen& kitchen_;
  const Resolved& resolved_;
  text::Diagnostics& diagnostics_;
  double seconds_;
  Shopping out_;
  std::vector<std::size_t> visit_of_stop_;
};

void Shopper::explain(const Shortage& shortage) {
  const auto& plan = *kitchen_.plan;
  const Food& food = kitchen_.food(out_.lowered.foods[shortage.good]);
  const auto& of_demand = out_.lowered.uses[shortage.good][shortage.demand];
  const resolve::Use& use = resolved_.uses[of_demand.front()];
  const std::string when = text::print_day(use.date);
  const std::string amount =
      foods::customary(food, from_micro(shortage.missing), kitchen_.household.system);
  const auto trip = [&](const std::optional<StopId>& stop) {
    if (!stop) {
      return std::string("none");
    }
    const auto [t, c] = out_.lowered.stops[*stop];
    return fmt::format("{} on {}", kitchen_.shop(plan.trips[t].stops[c].shop).name,
                       text::print_day(plan.trips[t].date));
  };
  text::Code code = errors::no_offer;
  std::string what;
  std::string fix;
  switch (shortage.why) {
  case Why::no_offer:
    what =
        fmt::format("no price list has '{}', of which {} is needed by {}", food.name, amount, when);
    fix = fmt::format("add it to a file in plans/stores, for example '{}: [\"1 lb 2.99\"]'",
                      food.name);
    break;
  case Why::no_stop:
    code = errors::too_late;
    what = fmt::format("no trip on or before {} goes to a shop that sells '{}' ({} needed)", when,
                       food.name, amount);
    fix = fmt::format("the first stop that sells it is {}", trip(shortage.after));
    break;
  case Why::does_not_keep:
    code = errors::does_not_keep;
    what = fmt::format("'{}' is needed on {} ({}), but bought at {} it keeps only {}", food.name,
                       when, amount, trip(shortage.before),
                       text::print_days(out_.lowered.model.goods[shortage.good].keeps_cool));
    fix = "add a trip nearer to that day, or cook it earlier";
    break;
  case Why::must_be_fresh:
    code = errors::must_be_fresh;
    what =
        fmt::format("'{}' must be fresh on {} ({}), but from {} it would keep only in the freezer",
                    food.name, when, amount, trip(shortage.before));
    fix = "add a trip nearer to that day, or drop 'fresh'";
    break;
  case Why::limit:
    code = errors::limit;
    what = fmt::format("shops sell too little of '{}' in a visit: {} is missing on {}", food.name,
                       amount, when);
    break;
  case Why::room:
    code = errors::no_room;
    what = fmt::format("there is no room for what is needed; '{}' for {} takes the most of it",
                       food.name, when);
    fix = "give the household more storage, shop more often, or buy smaller packs";
    break;
  }
  diagnostics_.error(code, place_of(kitchen_, resolved_, use), std::move(what), std::move(fix));
}

void Shopper::explain() {
  for (const Shortage& shortage : out_.solution.shortages) {
    explain(shortage);
  }
  if (out_.solution.status == Status::feasible) {
    diagnostics_.warning(
        errors::not_proven, std::nullopt,
        fmt::format("the list may not be the cheapest: its cost of {} is proven to be at most {} "
                    "above the least",
                    kitchen::print_money(out_.solution.total / 100),
                    kitchen::print_money((out_.solution.total - out_.solution.bound + 99) / 100)));
  }
  if (out_.solution.status == Status::unknown) {
    diagnostics_.error(errors::not_proven, std::nullopt, "no list was found in the time allowed");
  }
}

void Shopper::visits() {
  const auto& plan = *kitchen_.plan;
  visit_of_stop_.resize(out_.lowered.stops.size());
  for (const StopId stop : out_.solution.stops) {
    const auto [t, c] = out_.lowered.stops[stop];
    const kitchen::Shop& shop = kitchen_.shop(plan.trips[t].stops[c].shop);
    visit_of_stop_[stop] = out_.visits.size();
    out_.visits.push_back({t, shop.id, plan.trips[t].date, 0, 0, 0, 0, 0,
                           shop.stop_cost.value_or(kitchen_.household.stop_cost)});
  }
}

void Shopper::lines() {
  for (std::size_t g = 0; g < out_.solution.goods.size(); ++g) {
    std::vector<std::size_t> line_of_purchase;
    for (const Purchase& bought : out_.solution.goods[g].purchases) {
      const std::size_t visit = visit_of_stop_[bought.stop];
      const std::size_t index = out_.lowered.offers[g][bought.offer];
      const kitchen::Offer& offer = kitchen_.shop(out_.visits[visit].shop).offers[index];
      line_of_purchase.push_back(out_.lines.size());
      const Rational worth = in_terms_of(offer.food).worth;
      out_.lines.push_back({visit, offer.food, index, bought.packs,
                            offer.cost(bought.packs, out_.visits[visit].date),
                            offer.size * bought.packs, from_micro(bought.frozen) / worth,
                            from_micro(bought.kept) / worth, from_micro(bought.wasted) / worth});
    }
    const std::size_t before = out_.supplies.size();
    supplies(g, line_of_purchase);
    // What is left is what no use has, exactly: a line adds up.
    for (const std::size_t bought : line_of_purchase) {
      Line& line = out_.lines[bought];
      Rational rest = line.amount;
      for (std::size_t s = before; s < out_.supplies.size(); ++s) {
        rest -= out_.supplies[s].line == bought ? out_.supplies[s].amount : 0;
      }
      if (line.kept > 0) {
        line.kept = rest - line.wasted;
      } else if (line.wasted > 0) {
        line.wasted = rest;
      }
    }
  }
}

// Servings are of whole demands; each is handed out to the uses of its demand in their order. The
// last serving of a use makes it whole, so that amounts add up exactly.
void Shopper::supplies(std::size_t g, const std::vector<std::size_t>& line_of_purchase) {
  const auto& of_good = out_.lowered.uses[g];
  std::vector<std::size_t> next(of_good.size(), 0);
  std::vector<Rational> used(of_good.size(), Rational(0)); // of the use that `next` points at
  std::vector<Amount> left;
  for (const Demand& demand : out_.lowered.model.goods[g].demands) {
    left.push_back(demand.amount);
  }
  for (const Serving& serving : out_.solution.goods[g].servings) {
    const std::size_t d = serving.demand;
    Rational amount = from_micro(serving.amount);
    left[d] -= serving.amount;
    const bool last = left[d] == 0;
    while (next[d] < of_good[d].size() && (last || amount > 0)) {
      const std::size_t u = of_good[d][next[d]];
      const Rational worth = in_terms_of(resolved_.uses[u].food).worth;
      const Rational open = resolved_.missing[u] * worth - used[d];
      const bool all = last || open <= amount;
      const Rational taken = all ? open : amount;
      if (taken > 0) {
        const std::size_t line = line_of_purchase[serving.purchase];
        out_.supplies.push_back({line, u, taken / in_terms_of(out_.lines[line].food).worth,
                                 taken / worth, serving.frozen});
      }
      amount -= taken;
      used[d] = all ? Rational(0) : Rational(used[d] + taken);
      if (all) {
        ++next[d];
      }
    }
  }
}

void Shopper::money() {
  std::vector<Rational> taxed(out_.visits.size(), Rational(0));
  for (const Line& line : out_.lines) {
    StopMade& visit = out_.visits[line.visit];
    visit.goods += line.cost;
    taxed[line.visit] +=
        kitchen_.shop(visit.shop).tax_on(kitchen_.food(line.food).department) * line.cost;
  }
  std::vector<Cents> credit;
  for (const kitchen::Shop& shop : kitchen_.shops) {
    credit.push_back(shop.credit);
  }
  for (std::size_t v = 0; v < out_.visits.size(); ++v) {
    StopMade& visit = out_.visits[v];
    const kitchen::Shop& shop = kitchen_.shop(visit.shop);
    visit.tax = measure::to_int64(measure::round(taxed[v]));
    if (shop.reduction && visit.goods + visit.tax >= shop.reduction->over) {
      visit.off = shop.reduction->off;
    }
    Cents& open = credit[static_cast<std::size_t>(visit.shop)];
    visit.credit = std::min(open, visit.paid());
    open -= visit.credit;
    visit.cash_back = measure::to_int64(measure::round(shop.cash_back * visit.goods));
    out_.paid += visit.paid();
    out_.cash_back += visit.cash_back;
    out_.stop_costs += visit.stop_cost;
  }
}

Shopping Shopper::run() {
  out_.lowered = lower(kitchen_, resolved_, diagnostics_);
  if (diagnostics_.errors() > 0) {
    return std::move(out_);
  }
  out_.solution = solve(out_.lowered.model, {.seconds = seconds_});
  explain();
  if (diagnostics_.errors() > 0) {
    return std::move(out_);
  }
  visits();
  lines();
  money();

  // Lines in the order in which one walks, with the supplies following.
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
  std::stable_sort(out_.supplies.begin(), out_.supplies.end(),
                   [](const Supply& a, const Supply& b) { return a.use < b.use; });
  return std::move(out_);
}

} // namespace

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

Shopping buy(const Kitchen& kitchen, const Resolved& resolved, text::Diagnostics& diagnostics,
             double seconds) {
  return Shopper(kitchen, resolved, diagnostics, seconds).run();
}

} // namespace manciple::purchase
