// Commands about the days and the sessions of a plan.
#include "cli/commands.hpp"
#include "cli/exit.hpp"
#include "cli/report.hpp"
#include "cli/say.hpp"
#include "emit/emit.hpp"

#include "text/words.hpp"

#include <fmt/format.h>

#include <charconv>

namespace manciple::cli {
namespace {

// The days of a plan that words mean: "2027-03-09", "9 mar", "9", "fri" (each Friday).
std::vector<text::Date> days_meant(std::string_view words, const kitchen::Plan& plan) {
  const auto weekday = text::parse_weekday(words);
  const auto date = text::parse_day(words, plan.from);
  unsigned number = 0;
  const auto [end, error] = std::from_chars(words.data(), words.data() + words.size(), number);
  const bool is_number = error == std::errc() && end == words.data() + words.size();
  std::vector<text::Date> out;
  for (text::Date day = plan.from; day <= plan.until; day += std::chrono::days(1)) {
    const std::chrono::year_month_day of_month(day);
    if ((weekday && std::chrono::weekday(day) == *weekday) || (date && day == *date) ||
        (is_number && static_cast<unsigned>(of_month.day()) == number)) {
      out.push_back(day);
    }
  }
  return out;
}

} // namespace

int day(const std::string& date, const std::string& plan) {
  const auto compiled = compile_and_report(plan);
  if (!compiled) {
    return bad_input;
  }
  const std::vector<text::Date> meant = days_meant(text::trim(date), compiled->plan());
  if (meant.empty()) {
    complain("manciple: '{}' is not a day of the plan, which runs from {} to {}\n", date,
             text::print_date(compiled->plan().from), text::print_date(compiled->plan().until));
    return bad_input;
  }
  if (meant.size() > 1) {
    std::vector<std::string> others;
    for (std::size_t i = 1; i < meant.size(); ++i) {
      others.push_back(text::print_day(meant[i]));
    }
    complain("manciple: '{}' is also {}; this is {}\n", date, text::join(others, ", "),
             text::print_day(meant.front()));
  }
  say(std::string_view(emit::day_text(*compiled, meant.front())));
  return good;
}

int prep(const std::string& plan) {
  const auto compiled = compile_and_report(plan);
  if (!compiled) {
    return bad_input;
  }
  say(std::string_view(emit::sessions_text(*compiled)));
  return good;
}

} // namespace manciple::cli
