#include "cli/compile.hpp"

#include "purchase/budget.hpp"
#include "purchase/likely.hpp"
#include "purchase/makers.hpp"
#include "safety/safety.hpp"

namespace manciple::cli {

std::optional<emit::Compiled> compile(const std::string& plan_path, text::Sources& sources,
                                      text::Diagnostics& diagnostics,
                                      const purchase::Search& search, const text::Files& files,
                                      std::optional<text::Date> as_of) {
  emit::Compiled out;
  out.kitchen = kitchen::read_kitchen(plan_path, sources, diagnostics, files, as_of);
  if (!out.kitchen.plan) {
    return std::nullopt;
  }
  if (out.kitchen.as_of) {
    text::Diagnostics of_all; // what is done needs no word
    const resolve::Resolved all = resolve::resolve(out.kitchen, of_all);
    if (of_all.errors() == 0 && diagnostics.errors() == 0) {
      out.past = history::past(out.kitchen, all, *out.kitchen.as_of, diagnostics);
      out.kitchen = history::ahead(std::move(out.kitchen), *out.past);
    }
  }
  // What the files say may be wrong in places; what follows from the rest is worth saying too.
  out.resolved = resolve::resolve(out.kitchen, diagnostics);
  if (diagnostics.errors() > 0) {
    return std::nullopt;
  }
  safety::check(out.kitchen, out.resolved, diagnostics);
  if (diagnostics.errors() > 0) {
    return std::nullopt;
  }
  purchase::add_likely_offers(out.kitchen, out.resolved);
  out.shopping = purchase::buy(out.kitchen, out.resolved, diagnostics, search);
  purchase::check_makers(out.kitchen, out.resolved, out.shopping, diagnostics);
  if (diagnostics.errors() > 0) {
    return std::nullopt;
  }
  out.worth = purchase::worth(out.kitchen, out.resolved, out.shopping);
  purchase::check_budgets(out.kitchen, out.shopping, out.worth, diagnostics);
  out.nutrition = nutrition::nutrition(out.kitchen, out.resolved);
  out.aims = nutrition::look_at_aims(out.kitchen, out.resolved, out.nutrition, out.worth);
  nutrition::tell_aims(out.kitchen, out.aims, diagnostics);
  out.out_of_stock = purchase::out_of_stock(out.kitchen, out.shopping);
  out.prep = prep::prepare(out.kitchen, out.resolved, out.shopping, diagnostics);
  return out;
}

} // namespace manciple::cli
