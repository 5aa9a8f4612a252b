// Commands about the days and the sessions of a plan.
#include "cli/commands.hpp"
#include "cli/exit.hpp"
#include "cli/report.hpp"
#include "cli/say.hpp"
#include "emit/emit.hpp"

namespace manciple::cli {

int day(const std::string& date, const std::string& plan) {
  const auto compiled = compile_and_report(plan);
  if (!compiled) {
    return bad_input;
  }
  const auto wanted = text::parse_date(date);
  if (!wanted || *wanted < compiled->plan().from || *wanted > compiled->plan().until) {
    complain("manciple: '{}' is not a day of the plan, which runs from {} to {}\n", date,
             text::print_date(compiled->plan().from), text::print_date(compiled->plan().until));
    return bad_input;
  }
  say(std::string_view(emit::day_text(*compiled, *wanted)));
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
