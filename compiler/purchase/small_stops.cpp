#include "purchase/small_stops.hpp"

#include "purchase/errors.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace manciple::purchase {
namespace {

std::string errand(const kitchen::Kitchen& kitchen, const Shopping& shopping, std::size_t visit) {
  std::vector<std::string> names;
  for (const Line& line : shopping.lines) {
    if (line.visit == visit) {
      names.push_back(kitchen.food(line.food).name);
    }
  }
  return text::the_first_few(names);
}

bool all_priced(const Shopping& shopping, std::size_t visit) {
  return std::all_of(shopping.lines.begin(), shopping.lines.end(),
                     [&](const Line& line) { return line.visit != visit || line.cost; });
}

buying::Amount missing(const buying::Solution& solution) {
  buying::Amount sum = 0;
  for (const buying::ItemSolution& item : solution.items) {
    sum += item.missing();
  }
  return sum;
}

// What the list is without the stop.
std::string without(const Shopping& shopping, buying::StopId left_out, const Search& search,
                    const kitchen::Currency& currency) {
  const buying::Solution& with = shopping.solution;
  buying::Model model = shopping.lowered.model;
  model.stops = {};
  for (const buying::StopId stop : buying::ids(shopping.lowered.model.stops)) {
    if (stop != left_out) {
      model.stops.push_back(shopping.lowered.model.stops[stop]);
    }
  }
  buying::Options options;
  options.stop = search.stop;
  const buying::Solution other = buying::solve(model, options);
  if (missing(other) > missing(with)) {
    return "no other stop has all of that in time";
  }
  const bool proven = shopping.proven() && other.status == buying::Status::optimal;
  return fmt::format("without it the list would cost {}{} more in all, stops and leftovers counted",
                     proven ? "" : "about ",
                     currency.print(shopping.lowered.cents(other.total - with.total)));
}

} // namespace

void tell_small_stops(const kitchen::Kitchen& kitchen, const Shopping& shopping,
                      text::Diagnostics& diagnostics, const Search& search) {
  if (shopping.visits.size() == 1) {
    return; // whoever shops once knows what for
  }
  for (std::size_t v = 0; v < shopping.visits.size(); ++v) {
    const StopMade& visit = shopping.visits[v];
    const buying::StopId stop = shopping.solution.stops[v];
    if (visit.paid() >= visit.stop_cost || !all_priced(shopping, v) ||
        shopping.lowered.model.stops[stop].always) {
      continue;
    }
    text::Diagnostic& told = diagnostics.remark(
        errors::small_stop, kitchen.plan->trips[visit.trip].at,
        fmt::format("{} on {} is a stop for {} of {}, less than the {} that a stop costs",
                    kitchen.shop(visit.shop).name, text::print_day(visit.date),
                    kitchen.household.currency.print(visit.paid()), errand(kitchen, shopping, v),
                    kitchen.household.currency.print(visit.stop_cost)));
    told.note(std::nullopt, without(shopping, stop, search, kitchen.household.currency));
  }
}

} // namespace manciple::purchase
