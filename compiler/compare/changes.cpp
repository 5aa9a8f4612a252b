#include "compare/changes.hpp"

#include "compare/parts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace manciple::compare {
namespace {

constexpr std::array<std::string_view, 5> headings{"Meals", "List", "Cooking ahead", "Days",
                                                   "Money"};

// A build ends with so many at most.
constexpr std::size_t first_few = 5;

std::string name_of(const Result& before, const Result& after) {
  return before.plan == after.plan ? after.plan
                                   : fmt::format("{} (before: {})", after.plan, before.plan);
}

// What a plan comes to, against before.
std::string sum_of(const Result& before, const Result& after) {
  if (before.paid_in_all() == after.paid_in_all()) {
    return after.paid_in_all() == 0
               ? std::string()
               : after.currency.print(after.paid_in_all()) + " in all, as before";
  }
  return fmt::format("{} in all, {}", after.currency.print(after.paid_in_all()),
                     more_or_less(after.currency, before.paid_in_all(), after.paid_in_all()));
}

// Of both plans only what is to come, if something of one of them is done: what is past is settled
// by receipts.
void leave_out_past(Result& of, Date from, const std::vector<Stop>& stops) {
  const auto done = [&](const auto& one) { return one.date < from; };
  const auto stop_done = [&](const Stop& stop) {
    return done(stop) || std::any_of(stops.begin(), stops.end(),
                                     [&](const Stop& other) { return stop.is_at(other); });
  };
  std::erase_if(of.lines, [&](const Line& line) { return stop_done(line.stop); });
  std::erase_if(of.stops, stop_done);
  std::erase_if(of.meals, done);
  std::erase_if(of.makings, done);
  std::erase_if(of.sessions, done);
  std::erase_if(of.reminders, done);
}

// What was paid for what the other plan had still to come.
std::optional<Change> paid_since(const Result& before, const Result& after) {
  const Date from = before.past ? before.past->until : before.from;
  if (!after.past || after.past->until < from) {
    return std::nullopt;
  }
  Cents listed = 0;
  Cents paid = 0;
  for (const Stop& stop : after.past->stops) {
    const auto planned = std::find_if(before.stops.begin(), before.stops.end(),
                                      [&](const Stop& other) { return stop.is_at(other); });
    if (planned != before.stops.end()) {
      listed += planned->paid;
      paid += stop.paid;
    }
  }
  if (listed == paid) {
    return std::nullopt;
  }
  return Change{Part::money,
                fmt::format("Bought since the earlier result, until {}: {} paid, the list said {}",
                            text::print_day(after.past->until), after.currency.print(paid),
                            after.currency.print(listed))};
}

bool same_money(const kitchen::Currency& a, const kitchen::Currency& b) {
  return a.code == b.code && a.sign == b.sign && a.digits == b.digits;
}

} // namespace

Changes compare(const Result& before, const Result& after) {
  Changes out;
  out.plan = name_of(before, after);
  if (!same_money(before.currency, after.currency)) {
    out.sum = fmt::format("{} in all, {} before", after.currency.print(after.paid),
                          before.currency.print(before.paid));
    out.all.push_back({Part::money, "The currency is different, so nothing else is compared."});
    return out;
  }
  out.sum = sum_of(before, after);
  if (before.until < after.from || after.until < before.from) {
    out.all.push_back(
        {Part::money,
         fmt::format(
             "{} to {} instead of {} to {}: the days are different, so only totals are compared.",
             text::print_day(after.from), text::print_day(after.until),
             text::print_day(before.from), text::print_day(before.until))});
    return out;
  }
  Result old = before;
  Result now = after;
  if (before.past || after.past) {
    std::vector<Stop> stops;
    Date from = after.from;
    for (const Result* result : {&before, &after}) {
      if (result->past) {
        from = std::max(from, result->past->until);
        stops.insert(stops.end(), result->past->stops.begin(), result->past->stops.end());
      }
    }
    leave_out_past(old, from, stops);
    leave_out_past(now, from, stops);
  }
  for (const auto& part : {meal_changes, list_changes, prep_changes, day_changes, money_changes}) {
    const std::vector<Change> changes = part(old, now);
    out.all.insert(out.all.end(), changes.begin(), changes.end());
  }
  if (const auto paid = paid_since(before, after)) {
    out.all.push_back(*paid);
  }
  return out;
}

std::string print(const Changes& changes) {
  std::string out = changes.plan + (changes.sum.empty() ? "" : ": " + changes.sum) + "\n";
  if (changes.none()) {
    return out + "Nothing changed.\n";
  }
  std::optional<Part> last;
  for (const Change& change : changes.all) {
    if (last != change.part) {
      out += fmt::format("\n{}\n", headings.at(static_cast<std::size_t>(change.part)));
      last = change.part;
    }
    out += fmt::format("  {}\n", change.what);
  }
  return out;
}

std::string print_since_last_build(const Changes& changes, std::string_view command) {
  if (changes.none()) {
    return "Nothing changed since the last build.\n";
  }
  std::string out = fmt::format("Changed since the last build{}:\n",
                                changes.sum.empty() ? "" : " (" + changes.sum + ")");
  for (std::size_t i = 0; i < std::min(first_few, changes.all.size()); ++i) {
    out += fmt::format("  {}\n", changes.all[i].what);
  }
  if (changes.all.size() > first_few) {
    out += fmt::format("  and {} more{}{}\n", changes.all.size() - first_few,
                       command.empty() ? "" : "; since the last commit: ", command);
  }
  return out;
}

} // namespace manciple::compare
