// Commands about the days and the sessions of a plan.
#include "cli/command_line.hpp"
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

struct DayRequest {
  std::string date;
  std::string plan;
};

struct PrepRequest {
  std::string plan;
};

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

int day(const DayRequest& request) {
  const std::string& date = request.date;
  const auto compiled = compile_and_report(request.plan);
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

int prep(const PrepRequest& request) {
  const auto compiled = compile_and_report(request.plan);
  if (!compiled) {
    return bad_input;
  }
  say(std::string_view(emit::sessions_text(*compiled)));
  return good;
}

} // namespace

void add_day(CommandLine& to) {
  auto [command, asked] =
      to.add<DayRequest>("day", "one day of a plan: what to buy, thaw, soak, cook and eat", day);
  command.add_option("DATE", asked.date, "for example 2027-03-09, '9 mar', 9 or fri")->required();
  take_plan(command, asked.plan);
}

void add_prep(CommandLine& to) {
  auto [command, asked] = to.add<PrepRequest>(
      "prep", "the prep sessions of a plan, with a chart of who and what is busy when", prep);
  command.add_option("PLAN", asked.plan, "the plan, for example plans/2027-03.yaml")->required();
}

} // namespace manciple::cli
