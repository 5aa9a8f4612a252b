// What compiles a plan and writes what comes of it.
#include "cli/command_line.hpp"
#include "cli/commands.hpp"
#include "cli/exit.hpp"
#include "cli/last_result.hpp"
#include "cli/report.hpp"
#include "cli/say.hpp"
#include "cli/write.hpp"
#include "emit/emit.hpp"
#include "kitchen/paths.hpp"

#include <filesystem>

namespace manciple::cli {
namespace {

struct BuildRequest {
  std::string plan;
  std::string out;     ///< the folder to write to; empty: out/ and the plan's name
  double search = 1;   ///< how hard to look for the cheapest list, times the usual work
  bool strict = false; ///< what is still to be found, not known or counted long ago is an error
  std::string as_of;   ///< the day from which is planned; empty: not said
};

// Whether a plan stands in a folder, however deep: that folder is the house's, and not to be
// replaced.
bool holds(const std::string& folder, const std::string& plan) {
  std::error_code none;
  const auto inner = std::filesystem::weakly_canonical(plan, none)
                         .lexically_relative(std::filesystem::weakly_canonical(folder, none));
  return !none && !inner.empty() && *inner.begin() != "..";
}

// out/ and the plan's name, beside the folder that the plan is in; nothing where that is no name.
std::optional<std::string> usual_folder(const std::string& plan) {
  const std::string name = std::filesystem::path(plan).stem().string();
  if (name.find_first_not_of('.') == std::string::npos) {
    return std::nullopt;
  }
  return kitchen::in_root(kitchen::root_of(plan), "out/" + name);
}

int build(const BuildRequest& request) {
  std::optional<text::Date> as_of;
  if (!request.as_of.empty()) {
    as_of = date_of("--as-of", request.as_of, "2027-03-10");
  }
  const auto out = request.out.empty() ? usual_folder(request.plan) : std::optional(request.out);
  if (!out) {
    complain("manciple: no folder can be named after '{}'; give a name with --out\n", request.plan);
    return bad_input;
  }
  if (holds(*out, request.plan)) {
    complain("manciple: the plan itself is in '{}'; give another folder with --out\n", *out);
    return bad_input;
  }
  purchase::Search search;
  search.effort = request.search;
  const auto compiled = compile_and_report(request.plan, search, request.strict, as_of);
  if (!compiled) {
    return bad_input;
  }
  const auto in_folder = [&](const char* name) {
    return read_whole((std::filesystem::path(*out) / name).string());
  };
  // Revisions of events are counted on from the calendar that is there.
  const std::vector<emit::Output> outputs =
      emit::outputs(*compiled, in_folder("calendar.ics").value_or(""));
  const auto last = in_folder("result.json");
  const std::string failed = write_all(*out, outputs);
  if (!failed.empty()) {
    complain("manciple: {}\n", failed);
    return bad_input;
  }
  say("{}\nWritten to {}\n{}", emit::summary(*compiled), *out,
      since_last_build(last, outputs, request.plan));
  return good;
}

} // namespace

void add_build(CommandLine& to) {
  auto [command, asked] = to.add<BuildRequest>(
      "build", "compile a plan and write the list, the menu, the schedule and the sums", build);
  command.add_option("PLAN", asked.plan, "the plan, for example plans/2027-03.yaml")->required();
  command.add_option("--out", asked.out,
                     "the folder to write to (default: out/ and the plan's name, beside plans/)");
  command
      .add_option("--search", asked.search,
                  "how hard to search for the cheapest list, as a multiple of the usual effort "
                  "(default: 1; most months take a second, the hardest half a minute); if the "
                  "list is not proven by then, the build says how far off it may be")
      ->check(CLI::Range(0.01, 1e6));
  command.add_flag(
      "--strict", asked.strict,
      "write nothing and fail if something is still to be found or is not known, or if "
      "what is on hand was counted long before the plan");
  command.add_option("--as-of", asked.as_of,
                     "the day to plan from, for example 2027-03-10; everything before it is done "
                     "(default: as the plan, the last receipt or the last count has it)");
}

} // namespace manciple::cli
