// Commands about the month as it happens: what was bought, what is there.
#include "cli/command_line.hpp"
#include "cli/commands.hpp"
#include "cli/compile.hpp"
#include "cli/exit.hpp"
#include "cli/report.hpp"
#include "cli/say.hpp"
#include "cli/write_file.hpp"
#include "emit/emit.hpp"
#include "history/written.hpp"
#include "kitchen/paths.hpp"
#include "text/words.hpp"

#include <algorithm>

namespace manciple::cli {
namespace {

/// What `receipt` and `on-hand` are asked for.
struct WriteRequest {
  std::string date; ///< of `on-hand`, empty: the day from which the plan continues
  std::string plan;
  bool write = false; ///< into plans/, but over no file that is there
};

// A day as people write it, near the plan's beginning.
std::optional<text::Date> day_meant(const std::string& words, const kitchen::Plan& plan) {
  const auto day = text::parse_day(text::trim(words), plan.begins);
  if (!day) {
    complain("manciple: '{}' is not a date such as 2027-03-10 or '10 mar'\n", words);
  }
  return day;
}

// The plan's file and what is read with it, without a word of what is wrong with it.
kitchen::Kitchen read_quietly(const std::string& plan, std::optional<text::Date> as_of = {}) {
  text::Sources sources;
  text::Diagnostics said;
  return kitchen::read_kitchen(plan, sources, said, text::disk(), as_of);
}

// What the list says about a day of shopping, as a receipt for each stop.
int receipt(const WriteRequest& request) {
  const auto& [date, plan, write] = request;
  const kitchen::Kitchen read = read_quietly(plan);
  const auto day = read.plan ? day_meant(date, *read.plan) : std::nullopt;
  if (read.plan && !day) {
    return bad_input;
  }
  const bool past = day && read.as_of && *day < *read.as_of;
  const auto compiled = compile_and_report(plan, {}, false, past ? day : std::nullopt);
  if (!compiled) {
    return bad_input;
  }
  int code = good;
  bool any = false;
  for (std::size_t v = 0; v < compiled->shopping.visits.size(); ++v) {
    const purchase::StopMade& visit = compiled->shopping.visits[v];
    if (visit.date != *day) {
      continue;
    }
    const std::string path =
        kitchen::in_root(kitchen::root_of(plan),
                         fmt::format("plans/receipts/{}-{}.yaml", text::print_date(visit.date),
                                     compiled->kitchen.shop(visit.shop).slug));
    const std::string text = emit::receipt_yaml(*compiled, v);
    if (!write) {
      say("{}# {}\n{}", any ? "\n" : "", path, text);
    } else {
      code = std::max(code, write_and_say(path, text, false));
    }
    any = true;
  }
  if (!any) {
    complain("manciple: the list has no stop on {}{}\n", text::print_day(*day),
             past ? " without a receipt" : "");
    return bad_input;
  }
  return code;
}

// What should be in the house on the morning of a day, as a file of what is on hand.
int on_hand(const WriteRequest& request) {
  const auto& [date, plan, write] = request;
  const kitchen::Kitchen read = read_quietly(plan);
  const auto day = date.empty() || !read.plan ? std::nullopt : day_meant(date, *read.plan);
  if (read.plan && !date.empty() && !day) {
    return bad_input;
  }
  text::Sources sources;
  text::Diagnostics diagnostics;
  const auto done = done_until(plan, day, sources, diagnostics);
  if (report(diagnostics, sources) != good || !done) {
    return bad_input;
  }
  const std::string text = history::file_written(done->kitchen, done->past);
  if (!write) {
    say(std::string_view(text));
    return good;
  }
  const std::string path =
      kitchen::in_root(kitchen::root_of(plan),
                       fmt::format("plans/on-hand/{}.yaml", text::print_date(done->past.until)));
  return write_and_say(path, text, false);
}

} // namespace

void add_receipt(CommandLine& to) {
  auto [command, asked] = to.add<WriteRequest>(
      "receipt", "the receipts of a shopping day, filled in from the list for you to correct",
      receipt);
  command.add_option("DATE", asked.date, "for example 2027-03-06 or '6 mar'")->required();
  take_plan(command, asked.plan);
  take_write(command, asked.write, "into plans/receipts");
}

void add_on_hand(CommandLine& to) {
  auto [command, asked] = to.add<WriteRequest>(
      "on-hand",
      "what should be in the house on the morning of a day, where it is, and how long it is good",
      on_hand);
  command.add_option("--date", asked.date,
                     "the day (default: the day from which the plan continues)");
  take_plan(command, asked.plan);
  take_write(command, asked.write, "into plans/on-hand");
}

} // namespace manciple::cli
