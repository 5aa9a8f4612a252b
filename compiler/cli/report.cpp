#include "cli/report.hpp"

#include "cli/compile.hpp"
#include "cli/exit.hpp"
#include "cli/say.hpp"
#include "cli/watch.hpp"
#include "emit/words.hpp"
#include "kitchen/errors.hpp"

namespace manciple::cli {

int report(const text::Diagnostics& diagnostics, const text::Sources& sources) {
  complain(std::string_view(text::render(diagnostics, sources)));
  if (diagnostics.errors() > 0) {
    complain("{} {}\n", diagnostics.errors(), diagnostics.errors() == 1 ? "error" : "errors");
  }
  return diagnostics.errors() > 0 ? bad_input : good;
}

std::optional<emit::Compiled> compile_and_report(const std::string& plan,
                                                 const purchase::Search& search, bool strict,
                                                 std::optional<text::Date> as_of) {
  text::Sources sources;
  text::Diagnostics diagnostics;
  Watch watch;
  purchase::Search watched = search;
  watched.stop = [&] { return watch.stop(); };
  watched.progress = [&](kitchen::Cents best, kitchen::Cents bound,
                         const kitchen::Currency& currency) {
    watch.progress(best, bound, currency);
  };
  auto compiled = compile(plan, sources, diagnostics, watched, text::disk(), as_of);
  watch.clear();
  if (report(diagnostics, sources) != good || !compiled) {
    return std::nullopt;
  }
  const bool missing = !emit::still_to_find(*compiled).empty();
  const bool unknown = diagnostics.said(kitchen::errors::as_written) ||
                       diagnostics.said(kitchen::errors::wrong_measure) ||
                       diagnostics.said(kitchen::errors::unknown_recipe);
  const bool old = diagnostics.said(kitchen::errors::old_count);
  if (strict && (missing || unknown || old)) {
    complain("manciple: {}, and --strict makes that an error\n",
             missing   ? "some things are still to be found"
             : unknown ? "some foods, amounts or recipes are not known"
                       : "what is in the house was counted too long ago");
    return std::nullopt;
  }
  return compiled;
}

void complain_of_name(std::string_view what, std::string_view name, std::string_view nearest) {
  complain("manciple: {} '{}'{}{}\n", what, name, nearest.empty() ? "" : "; ", nearest);
}

} // namespace manciple::cli
