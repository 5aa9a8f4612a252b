// What changed between two results, plans or revisions.
#include "cli/command_line.hpp"
#include "cli/commands.hpp"
#include "cli/compile.hpp"
#include "cli/exit.hpp"
#include "cli/last_result.hpp"
#include "cli/report.hpp"
#include "cli/revision.hpp"
#include "cli/say.hpp"
#include "compare/changes.hpp"
#include "emit/emit.hpp"

#include <filesystem>

namespace manciple::cli {
namespace {

struct CompareRequest {
  std::string before;     ///< a result, its folder or a plan; with `plan`, a revision of git
  std::string after;      ///< likewise; with `plan`, empty for the working files
  std::string plan;       ///< the plan whose revisions are compared
  bool exit_code = false; ///< whether something changed is told by the exit code
};

using compare::Result;

// Says what is wrong with one side.
std::nullopt_t refuse(const std::string& name, const std::string& why) {
  complain("manciple: {} {}\n", name, why);
  return std::nullopt;
}

std::optional<Result> read(const std::string& name, std::string_view json) {
  auto result = compare::read_result(json);
  return result ? std::optional(std::move(*result)) : refuse(name, result.error());
}

// Compiles a plan without a word, unless there are errors.
std::optional<Result> compiled(const std::string& name, const std::string& plan,
                               const text::Files& files) {
  text::Sources sources;
  text::Diagnostics diagnostics;
  const auto made = compile(plan, sources, diagnostics, {}, files);
  if (!made) {
    complain("manciple: {} does not compile\n", name);
    report(diagnostics, sources);
    return std::nullopt;
  }
  return read(name, emit::result_json(*made));
}

// A result, the folder of one, or a plan.
std::optional<Result> at_path(const std::string& path) {
  std::error_code none;
  const bool folder = std::filesystem::is_directory(path, none);
  if (!std::filesystem::exists(path, none)) {
    return refuse(
        path, "does not exist; to compare git revisions, name the plan: --plan plans/NAME.yaml");
  }
  if (!folder && (path.ends_with(".yaml") || path.ends_with(".yml"))) {
    return compiled(path, path, text::disk());
  }
  const std::string file = folder ? (std::filesystem::path(path) / "result.json").string() : path;
  const auto json = read_whole(file);
  return json ? read(file, *json)
              : refuse(file, folder ? "does not exist; a build writes it" : "cannot be read");
}

std::optional<Result> at_revision(const std::string& revision, const std::string& plan) {
  const auto files = files_at(revision, plan);
  if (!files) {
    complain("manciple: {}\n", files.error());
    return std::nullopt;
  }
  return compiled(fmt::format("{} of revision '{}'", plan, revision), plan, *files);
}

int compare(const CompareRequest& request) {
  if (request.plan.empty() && request.after.empty()) {
    complain("manciple: name two results or plans, or a revision and its plan with --plan\n");
    return bad_usage;
  }
  const auto side = [&](const std::string& name) {
    return request.plan.empty() ? at_path(name)
           : name.empty()       ? compiled(request.plan, request.plan, text::disk())
                                : at_revision(name, request.plan);
  };
  const auto before = side(request.before);
  const auto after = before ? side(request.after) : std::nullopt;
  if (!before || !after) {
    return bad_input;
  }
  const compare::Changes changes = compare::compare(*before, *after);
  say(std::string_view(compare::print(changes)));
  return request.exit_code && !changes.none() ? differs : good;
}

} // namespace

void add_compare(CommandLine& to) {
  auto [command, asked] = to.add<CompareRequest>(
      "compare",
      "what changed between two results or plans, or between two revisions in git: the "
      "list, the meals, what is cooked ahead, the days and what is paid",
      compare);
  command
      .add_option("BEFORE", asked.before,
                  "a folder or result.json of a build, or a plan; with --plan, a revision: HEAD~1")
      ->required();
  command.add_option("AFTER", asked.after,
                     "the same (default, with --plan: the files as they are now)");
  command.add_option("--plan", asked.plan,
                     "compare this plan, with everything it needs, in two revisions");
  command.add_flag("--exit-code", asked.exit_code, "end with 1 if something changed");
}

} // namespace manciple::cli
