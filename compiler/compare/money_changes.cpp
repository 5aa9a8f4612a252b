#include "compare/align.hpp"
#include "compare/parts.hpp"
#include "measure/rational.hpp"

#include <fmt/format.h>

#include <cmath>
#include <map>

namespace manciple::compare {

std::string more_or_less(const kitchen::Currency& currency, Cents before, Cents after) {
  return after > before ? currency.print(after - before) + " more"
                        : currency.print(before - after) + " less";
}

std::string parts(double number, int of_one) {
  const auto whole = static_cast<std::int64_t>(std::llround(std::min(number, 1e9) * of_one));
  return measure::print_exact(measure::Rational(whole, of_one));
}

std::string at_stop(const Stop& stop) {
  return fmt::format("{} {}", stop.shop, text::print_day(stop.date));
}

namespace {

std::string left_of(const Result& result) {
  if (!result.budget) {
    return "none is set";
  }
  const Cents left = *result.budget - result.paid;
  return left < 0 ? fmt::format("{} over", result.currency.print(-left))
                  : fmt::format("{} left", result.currency.print(left));
}

} // namespace

std::vector<Change> money_changes(const Result& before, const Result& after) {
  std::map<std::pair<Date, std::string>, Group<Stop>> stops;
  for (const Stop& stop : before.stops) {
    stops[{stop.date, stop.shop}].before.push_back(&stop);
  }
  for (const Stop& stop : after.stops) {
    stops[{stop.date, stop.shop}].after.push_back(&stop);
  }
  std::vector<Change> out;
  const auto add = [&](std::string what) { out.push_back({Part::money, std::move(what)}); };
  for (const auto& [when, group] : stops) {
    for (const Pair<Stop>& pair :
         align<Stop>(group.before, group.after, {[](const Stop&, const Stop&) { return true; }})) {
      if (pair.before == nullptr) {
        add(fmt::format("{}: an extra stop, {}", at_stop(*pair.after),
                        after.currency.print(pair.after->paid)));
      } else if (pair.after == nullptr) {
        add(fmt::format("{}: no longer a stop, {} before", at_stop(*pair.before),
                        before.currency.print(pair.before->paid)));
      } else if (pair.before->paid != pair.after->paid) {
        add(fmt::format("{}: {} instead of {}", at_stop(*pair.after),
                        after.currency.print(pair.after->paid),
                        before.currency.print(pair.before->paid)));
      }
    }
  }
  // Of what is done nobody says what comes back.
  const bool half_done = before.past || after.past;
  if (!half_done && before.cash_back != after.cash_back) {
    add(fmt::format("Cash back later: {} instead of {}", after.currency.print(after.cash_back),
                    before.currency.print(before.cash_back)));
  }
  const bool one_is_set = before.budget || after.budget;
  if (one_is_set && left_of(before) != left_of(after)) {
    add(fmt::format("Budget: {}, {} before", left_of(after), left_of(before)));
  }
  return out;
}

} // namespace manciple::compare
