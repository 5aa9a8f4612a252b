#include "cli/commands.hpp"

#include "cli/compile.hpp"
#include "cli/write.hpp"
#include "emit/emit.hpp"
#include "text/errors.hpp"
#include "text/nearest.hpp"

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
int with_plan(const std::string& plan, Then then) {
  text::Sources sources;
  text::Diagnostics diagnostics;
  auto compiled = compile(plan, sources, diagnostics);
  const int code = report(diagnostics, sources);
  if (!compiled || code != good) {
    return bad_input;
  }
  return then(*compiled);
}

} // namespace

int build(const std::string& plan, std::string out) {
  return with_plan(plan, [&](const emit::Compiled& compiled) {
    if (out.empty()) {
      out = (std::filesystem::path("out") / std::filesystem::path(plan).stem()).string();
    }
    const std::string failed = write_all(out, emit::outputs(compiled));
    if (!failed.empty()) {
      fmt::print(stderr, "manciple: {}\n", failed);
      return bad_input;
    }
    fmt::print("{}\nWritten to {}\n", emit::summary(compiled), out);
    return good;
  });
}

int check(const std::vector<std::string>& plans) {
  text::Sources sources;
  text::Diagnostics diagnostics;
  std::vector<std::string> all = plans;
  if (all.empty()) {
    all = kitchen::plan_files(".");
    const kitchen::Kitchen everything = kitchen::read_everything(".", sources, diagnostics);
    if (diagnostics.errors() > 0) {
      return report(diagnostics, sources);
    }
    fmt::print("{} recipes and {} price lists read\n", everything.recipes.size(),
               everything.shops.size());
  }
  if (all.empty()) {
    fmt::print(stderr, "manciple: there is no plan below this folder (plans/NAME.yaml)\n");
    return bad_input;
  }
  int code = good;
  for (const std::string& plan : all) {
    text::Sources own_sources;
    text::Diagnostics own;
    (void)compile(plan, own_sources, own);
    code = std::max(code, report(own, own_sources));
    if (own.errors() == 0) {
      fmt::print("{}: good\n", plan);
    }
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
