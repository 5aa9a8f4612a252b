#include "purchase/budget.hpp"

#include "purchase/errors.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace manciple::purchase {
namespace {

using kitchen::Cents;

/// Something that could be left out.
struct Thing {
  Rational cost; ///< cents
  std::string name;
  std::optional<text::Span> at;
};

// A longer list helps nobody.
constexpr std::size_t most_things = 5;

void warn(const std::string& what, Cents paid, Cents budget, text::Span at,
          std::vector<Thing> things, const kitchen::Currency& currency,
          text::Diagnostics& diagnostics) {
  if (paid <= budget) {
    return;
  }
  text::Diagnostic& warning = diagnostics.warning(
      errors::over_budget, at,
      fmt::format("{} costs {}, {} over its budget of {}", what, currency.print(paid),
                  currency.print(paid - budget), currency.print(budget)));
  std::stable_sort(things.begin(), things.end(),
                   [](const Thing& a, const Thing& b) { return a.cost > b.cost; });
  Rational open = paid - budget;
  for (std::size_t i = 0; i < things.size() && i < most_things && open > 0; ++i) {
    const Cents cost = measure::to_int64(measure::round(things[i].cost));
    warning.note(things[i].at,
                 fmt::format("without {}: about {} less", things[i].name, currency.print(cost)));
    open -= things[i].cost;
  }
}

} // namespace

void check_budgets(const kitchen::Kitchen& kitchen, const Shopping& shopping, const Worth& worth,
                   text::Diagnostics& diagnostics) {
  const kitchen::Plan& plan = *kitchen.plan;
  if (const auto budget = plan.budget ? plan.budget : kitchen.household.budget) {
    std::vector<Thing> dishes;
    for (std::size_t m = 0; m < plan.meals.size(); ++m) {
      for (std::size_t d = 0; d < plan.meals[m].dishes.size(); ++d) {
        const kitchen::Dish& dish = plan.meals[m].dishes[d];
        dishes.push_back(
            {worth.dishes[m][d],
             fmt::format("'{}' on {}", dish.what.text, text::print_day(plan.meals[m].date)),
             dish.at});
      }
    }
    warn("the plan", shopping.paid, *budget, plan.at, std::move(dishes), kitchen.household.currency,
         diagnostics);
  }
  for (std::size_t t = 0; t < plan.trips.size(); ++t) {
    if (!plan.trips[t].budget) {
      continue;
    }
    Cents paid = 0;
    std::vector<Thing> lines;
    for (std::size_t v = 0; v < shopping.visits.size(); ++v) {
      if (shopping.visits[v].trip != t) {
        continue;
      }
      paid += shopping.visits[v].paid();
      for (const Line& line : shopping.lines) {
        if (line.visit == v) {
          lines.push_back({line.cost.value_or(0), kitchen.food(line.food).name, std::nullopt});
        }
      }
    }
    warn(fmt::format("the trip on {}", text::print_day(plan.trips[t].date)), paid,
         *plan.trips[t].budget, plan.trips[t].at, std::move(lines), kitchen.household.currency,
         diagnostics);
  }
}

} // namespace manciple::purchase
