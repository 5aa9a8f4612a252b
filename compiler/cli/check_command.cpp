// What reads files and says what is wrong with them.
#include "cli/command_line.hpp"
#include "cli/commands.hpp"
#include "cli/exit.hpp"
#include "cli/report.hpp"
#include "cli/say.hpp"
#include "kitchen/paths.hpp"
#include "safety/safety.hpp"
#include "text/yaml.hpp"

#include <algorithm>
#include <set>

namespace manciple::cli {
namespace {

struct CheckRequest {
  std::vector<std::string> files; ///< none: all below this folder
};

// Adds the recipes whose dangers are told with the plan.
int check_plan(const std::string& plan, std::set<std::string>& told) {
  const auto compiled = compile_and_report(plan);
  if (!compiled) {
    return bad_input;
  }
  for (const resolve::Making& making : compiled->resolved.makings) {
    told.insert(compiled->kitchen.recipe(making.recipe).slug);
  }
  say("{}: no errors\n", plan);
  return good;
}

// Any other file of a house is read with the house around it, and only its own mistakes are said.
int check_file(const std::string& file) {
  text::Sources sources;
  text::Diagnostics diagnostics;
  const kitchen::Kitchen everything =
      kitchen::read_everything(kitchen::root_of(file), sources, diagnostics);
  if (diagnostics.errors() == 0) {
    safety::check_recipes(everything, {}, diagnostics);
  }
  const auto id = sources.find(file);
  if (!id) {
    // It may be no file of a house, or one that cannot be read at all.
    text::Diagnostics own;
    if (text::load(file, text::disk(), sources, own)) {
      complain(
          "manciple: '{}' is not in a folder that manciple reads (recipes, plans, plans/stores)\n",
          file);
      return bad_input;
    }
    return report(own, sources);
  }
  const int code = report(diagnostics.of(*id), sources);
  if (code == good) {
    say("{}: no errors\n", file);
  }
  return code;
}

int check(const CheckRequest& request) {
  const std::vector<std::string>& files = request.files;
  if (!files.empty()) {
    int code = good;
    for (const std::string& file : files) {
      std::set<std::string> told;
      code = std::max(code, kitchen::is_plan(file) ? check_plan(file, told) : check_file(file));
    }
    return code;
  }
  const std::string house = kitchen::house_here();
  const std::vector<std::string> plans = kitchen::plan_files(house);
  if (plans.empty()) {
    complain("manciple: there is no plan below this folder (plans/NAME.yaml)\n");
    return bad_input;
  }
  text::Sources sources;
  text::Diagnostics diagnostics;
  const kitchen::Kitchen everything = kitchen::read_everything(house, sources, diagnostics);
  if (diagnostics.errors() > 0) {
    return report(diagnostics, sources);
  }
  say("{} recipes and {} price lists read\n", everything.recipes.size(), everything.shops.size());
  int code = good;
  std::set<std::string> told;
  for (const std::string& plan : plans) {
    code = std::max(code, check_plan(plan, told));
  }
  text::Diagnostics dangers;
  safety::check_recipes(everything, told, dangers);
  return std::max(code, report(dangers, sources));
}

} // namespace

void add_check(CommandLine& to) {
  auto [command, asked] =
      to.add<CheckRequest>("check",
                           "read everything, write nothing: the files named, or all plans, "
                           "recipes and price lists below this folder",
                           check);
  command.add_option("FILES", asked.files, "plans (compiled), recipes, price lists, the household");
}

} // namespace manciple::cli
