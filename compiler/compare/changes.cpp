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
  if (before.paid == after.paid) {
    return after.paid == 0 ? std::string()
                           : after.currency.print(after.paid) + " in all, as before";
  }
  return fmt::format("{} in all, {}", after.currency.print(after.paid),
                     more_or_less(after.currency, before.paid, after.paid));
}

bool same_money(const kitchen::Currency& a, const kitchen::Currency& b) {
  return a.code == b.code && a.sign == b.sign && a.digits == b.digits;
}

} // namespace

Changes compare(const Result& before, const Result& after) {
  Changes out;
  out.plan = name_of(before, after);
  if (!same_money(before.currency, after.currency)) {
    out.sum = fmt::format("{} in all, before {}", after.currency.print(after.paid),
                          before.currency.print(before.paid));
    out.all.push_back({Part::money, "The currency is another one, so nothing else is compared."});
    return out;
  }
  out.sum = sum_of(before, after);
  if (before.until < after.from || after.until < before.from) {
    out.all.push_back(
        {Part::money,
         fmt::format("{} to {} instead of {} to {}: other days, so only sums are compared.",
                     text::print_day(after.from), text::print_day(after.until),
                     text::print_day(before.from), text::print_day(before.until))});
    return out;
  }
  for (const auto& part : {meal_changes, list_changes, prep_changes, day_changes, money_changes}) {
    const std::vector<Change> changes = part(before, after);
    out.all.insert(out.all.end(), changes.begin(), changes.end());
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
