#include "cli/commands.hpp"

#include "cli/exit.hpp"
#include "cli/last_result.hpp"
#include "cli/report.hpp"
#include "cli/say.hpp"
#include "cli/write.hpp"
#include "emit/emit.hpp"
#include "kitchen/paths.hpp"
#include "purchase/other_offers.hpp"
#include "resolve/by_products.hpp"
#include "safety/safety.hpp"
#include "text/nearest.hpp"
#include "text/yaml.hpp"

#include <algorithm>
#include <filesystem>
#include <iterator>
#include <set>
#include <string>

namespace manciple::cli {
namespace {

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

} // namespace

int build(const BuildRequest& request) {
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
  const auto compiled = compile_and_report(request.plan, search, request.strict, request.as_of);
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

int check(const std::vector<std::string>& files) {
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

int why(const std::string& name, const std::string& plan) {
  auto compiled = compile_and_report(plan);
  if (!compiled) {
    return bad_input;
  }
  const auto food = compiled->kitchen.foods.find(name);
  const auto& uses = compiled->resolved.uses;
  const purchase::Shopping& shopping = compiled->shopping;
  const auto is_used = [&](const resolve::Use& use) { return use.food == *food; };
  const auto is_bought = [&](const purchase::Line& line) { return line.food == *food; };
  const auto is_taken = [&](const purchase::StockUse& used) {
    return purchase::food_of(compiled->kitchen, used) == *food;
  };
  const bool used =
      food && (std::any_of(uses.begin(), uses.end(), is_used) ||
               std::any_of(shopping.lines.begin(), shopping.lines.end(), is_bought) ||
               std::any_of(shopping.from_stock.begin(), shopping.from_stock.end(), is_taken));
  const auto gives = [&](const resolve::ByProduct& one) {
    const auto& given = resolve::given_as(compiled->kitchen, compiled->resolved, one);
    return food && given.what.target == kitchen::Target(*food);
  };
  const auto& given = compiled->resolved.by_products;
  if (!used && std::none_of(given.begin(), given.end(), gives)) {
    std::vector<std::string_view> names;
    for (const resolve::Use& use : uses) {
      names.push_back(compiled->kitchen.food(use.food).name);
    }
    complain_of_name("the plan does not use", name,
                     text::did_you_mean(foods::normal_name(name), names));
    return bad_input;
  }
  const auto other_ways = purchase::other_offers(compiled->kitchen, shopping, *food);
  say(std::string_view(emit::why_text(*compiled, *food, other_ways)));
  return good;
}

} // namespace manciple::cli
