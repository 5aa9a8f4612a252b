#include "purchase/small_stops.hpp"

#include "purchase/errors.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace manciple::purchase {
namespace {

// More is no longer a small stop's errand.
constexpr std::size_t most_named = 3;

std::string errand(const kitchen::Kitchen& kitchen, const Shopping& shopping, std::size_t visit) {
  std::vector<std::string> names;
  std::size_t others = 0;
  for (const Line& line : shopping.lines) {
    if (line.visit == visit && names.size() < most_named) {
      names.push_back(kitchen.food(line.food).name);
    } else {
      others += line.visit == visit ? 1 : 0;
    }
  }
  const std::string all = text::join(names, ", ");
  return others == 0 ? all : fmt::format("{} and {} more", all, others);
}

bool all_priced(const Shopping& shopping, std::size_t visit) {
  return std::all_of(shopping.lines.begin(), shopping.lines.end(),
                     [&](const Line& line) { return line.visit != visit || line.cost; });
}

// What the list is without the stop: as if it cost more than all else.
std::string without(const Shopping& shopping, buying::StopId stop, const Search& search) {
  buying::Model model = shopping.lowered.model;
  const buying::Money before = model.stops[stop].cost;
  model.stops[stop].cost = before + shopping.solution.total;
  if (buying::most_that_may_be_paid(model) > buying::most_money) {
    return "";
  }
  buying::Options options;
  options.stop = search.stop;
  const buying::Solution other = buying::solve(model, options);
  const bool made = std::find(other.stops.begin(), other.stops.end(), stop) != other.stops.end();
  const buying::Money per_cent = shopping.lowered.per_cent;
  const kitchen::Cents more = (other.total - shopping.solution.total + per_cent / 2) / per_cent;
  return made ? "no other stop brings that in time"
              : fmt::format("without it the list would cost {} more in all, stops and leftovers "
                            "counted",
                            kitchen::print_money(more));
}

} // namespace

void tell_small_stops(const kitchen::Kitchen& kitchen, const Shopping& shopping,
                      text::Diagnostics& diagnostics, const Search& search) {
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
                    kitchen::print_money(visit.paid()), errand(kitchen, shopping, v),
                    kitchen::print_money(visit.stop_cost)));
    const std::string otherwise = without(shopping, stop, search);
    if (!otherwise.empty()) {
      told.note(std::nullopt, otherwise);
    }
  }
}

} // namespace manciple::purchase
