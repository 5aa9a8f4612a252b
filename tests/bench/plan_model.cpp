// Writes the purchases of a plan as a model without names: `plan_model PLAN > FILE`. So that a real
// month can be solved by others. How long a pack keeps once opened is left out: the reference
// formulation of that has a column a pack, day and use, 800 MB for a month of a family; it is
// compared on small instances (tests/oracle).

#include "bench/model_text.hpp"
#include "purchase/shopping.hpp"

#include <fmt/format.h>

#include <cstdio>

int main(int count, char** arguments) {
  using namespace manciple;
  if (count != 2) {
    fmt::print(stderr, "usage: plan_model PLAN\n");
    return 2;
  }
  text::Sources sources;
  text::Diagnostics diagnostics;
  const kitchen::Kitchen kitchen = kitchen::read_kitchen(arguments[1], sources, diagnostics);
  if (!kitchen.plan) {
    fmt::print(stderr, "{}", text::render(diagnostics, sources));
    return 1;
  }
  const resolve::Resolved resolved = resolve::resolve(kitchen, diagnostics);
  purchase::Lowered lowered = purchase::lower(kitchen, resolved, diagnostics);
  for (purchase::Good& good : lowered.model.goods) {
    good.keeps_opened.reset();
  }
  fmt::print(stderr, "{}", text::render(diagnostics, sources));
  if (diagnostics.errors() > 0) {
    return 1;
  }
  fmt::print("{}", purchase::write_model(lowered.model));
  return 0;
}
