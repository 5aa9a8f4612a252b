// Commands about the days and the sessions of a plan.
#include "cli/commands.hpp"
#include "cli/compile.hpp"
#include "emit/emit.hpp"

#include <fmt/format.h>

#include <cstdio>

namespace manciple::cli {
namespace {

constexpr int good = 0;
constexpr int bad_input = 1;

std::optional<emit::Compiled> compiled_or_said(const std::string& plan) {
  text::Sources sources;
  text::Diagnostics diagnostics;
  auto compiled = compile(plan, sources, diagnostics);
  fmt::print(stderr, "{}", text::render(diagnostics, sources));
  return diagnostics.errors() == 0 ? std::move(compiled) : std::nullopt;
}

} // namespace

int day(const std::string& date, const std::string& plan) {
  const auto compiled = compiled_or_said(plan);
  if (!compiled) {
    return bad_input;
  }
  const auto wanted = text::parse_date(date);
  if (!wanted || *wanted < compiled->plan().from || *wanted > compiled->plan().until) {
    fmt::print(stderr, "manciple: '{}' is no day of the plan, which goes from {} to {}\n", date,
               text::print_date(compiled->plan().from), text::print_date(compiled->plan().until));
    return bad_input;
  }
  fmt::print("{}", emit::day_text(*compiled, *wanted));
  return good;
}

int prep(const std::string& plan) {
  const auto compiled = compiled_or_said(plan);
  if (!compiled) {
    return bad_input;
  }
  fmt::print("{}", emit::sessions_text(*compiled));
  return good;
}

} // namespace manciple::cli
