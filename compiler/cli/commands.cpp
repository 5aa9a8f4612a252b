#include "cli/commands.hpp"

#include "cli/compile.hpp"
#include "cli/write.hpp"
#include "emit/emit.hpp"
#include "text/errors.hpp"
#include "text/nearest.hpp"
#include "text/yaml.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdio>
#include <filesystem>

namespace manciple::cli {
namespace {

constexpr int good = 0;
constexpr int bad_input = 1;

// Says what there is to say, on the error stream, and gives the exit code.
int report(const text::Diagnostics& diagnostics, const text::Sources& sources) {
  fmt::print(stderr, "{}", text::render(diagnostics, sources));
  if (diagnostics.errors() > 0) {
    fmt::print(stderr, "{} {}\n", diagnostics.errors(),
               diagnostics.errors() == 1 ? "error" : "errors");
  }
  return diagnostics.errors() > 0 ? bad_input : good;
}

// Compiles and hands the result on, if there is one.
template <typename Then>
int with_plan(const std::string& plan, Then then, const purchase::Search& search = {}) {
  text::Sources sources;
  text::Diagnostics diagnostics;
  auto compiled = compile(plan, sources, diagnostics, search);
  const int code = report(diagnostics, sources);
  if (!compiled || code != good) {
    return bad_input;
  }
  return then(*compiled);
}

int check_plan(const std::string& plan) {
  text::Sources sources;
  text::Diagnostics diagnostics;
  (void)compile(plan, sources, diagnostics);
  const int code = report(diagnostics, sources);
  if (code == good) {
    fmt::print("{}: good\n", plan);
  }
  return code;
}

// Any other file of a house is read with the house around it, and only its own mistakes are said.
int check_file(const std::string& file) {
  text::Sources sources;
  text::Diagnostics diagnostics;
  (void)kitchen::read_everything(kitchen::root_of(file), sources, diagnostics);
  const auto id = sources.find(file);
  if (!id) {
    // It may be no file of a house, or one that cannot be read at all.
    text::Diagnostics own;
    if (text::load(file, file, sources, own)) {
      fmt::print(stderr,
                 "manciple: '{}' is in no folder that is read: recipes, plans, "
                 "plans/stores\n",
                 file);
      return bad_input;
    }
    return report(own, sources);
  }
  const int code = report(diagnostics.of(*id), sources);
  if (code == good) {
    fmt::print("{}: good\n", file);
  }
  return code;
}

} // namespace

int build(const BuildRequest& request) {
  const auto write = [&](const emit::Compiled& compiled) {
    if (request.strict && !compiled.shopping.shortfalls.empty()) {
      fmt::print(stderr, "manciple: something is still to be found, and --strict asks for more\n");
      return bad_input;
    }
    const std::string out =
        request.out.empty()
            ? (std::filesystem::path("out") / std::filesystem::path(request.plan).stem()).string()
            : request.out;
    const std::string failed = write_all(out, emit::outputs(compiled));
    if (!failed.empty()) {
      fmt::print(stderr, "manciple: {}\n", failed);
      return bad_input;
    }
    fmt::print("{}\nWritten to {}\n", emit::summary(compiled), out);
    return good;
  };
  purchase::Search search;
  search.effort = request.search;
  return with_plan(request.plan, write, search);
}

int check(const std::vector<std::string>& files) {
  if (!files.empty()) {
    int code = good;
    for (const std::string& file : files) {
      code = std::max(code, kitchen::is_plan(file) ? check_plan(file) : check_file(file));
    }
    return code;
  }
  const std::vector<std::string> plans = kitchen::plan_files(".");
  if (plans.empty()) {
    fmt::print(stderr, "manciple: there is no plan below this folder (plans/NAME.yaml)\n");
    return bad_input;
  }
  text::Sources sources;
  text::Diagnostics diagnostics;
  const kitchen::Kitchen everything = kitchen::read_everything(".", sources, diagnostics);
  if (diagnostics.errors() > 0) {
    return report(diagnostics, sources);
  }
  fmt::print("{} recipes and {} price lists read\n", everything.recipes.size(),
             everything.shops.size());
  int code = good;
  for (const std::string& plan : plans) {
    code = std::max(code, check_plan(plan));
  }
  return code;
}

int why(const std::string& name, const std::string& plan) {
  return with_plan(plan, [&](emit::Compiled& compiled) {
    const auto food = compiled.kitchen.foods.find(name);
    const auto& uses = compiled.resolved.uses;
    const bool used = food && std::any_of(uses.begin(), uses.end(), [&](const resolve::Use& use) {
                        return use.food == *food;
                      });
    if (!used) {
      std::vector<std::string_view> names;
      for (const resolve::Use& use : uses) {
        names.push_back(compiled.kitchen.food(use.food).name);
      }
      const std::string near = text::did_you_mean(foods::normal_name(name), names);
      fmt::print(stderr, "manciple: the plan uses no '{}'{}{}\n", name, near.empty() ? "" : "; ",
                 near);
      return bad_input;
    }
    fmt::print("{}", emit::why_text(compiled, *food));
    return good;
  });
}

} // namespace manciple::cli
