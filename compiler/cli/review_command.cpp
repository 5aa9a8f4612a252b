// What plans came to.
#include "cli/commands.hpp"
#include "cli/compile.hpp"
#include "cli/exit.hpp"
#include "cli/report.hpp"
#include "cli/say.hpp"
#include "kitchen/paths.hpp"
#include "review/review.hpp"

namespace manciple::cli {

int review(const std::vector<std::string>& named) {
  const std::vector<std::string> plans =
      named.empty() ? kitchen::plan_files(kitchen::house_here()) : named;
  bool any = false;
  for (const std::string& plan : plans) {
    text::Sources sources;
    text::Diagnostics diagnostics;
    const Reviewed read = reviewed(plan, sources, diagnostics);
    if (!read.begun && named.empty()) {
      continue;
    }
    if (report(diagnostics, sources) != good || !read.done) {
      return bad_input;
    }
    const Done& done = *read.done;
    say("{}{}", any ? "\n" : "",
        review::in_words(done.kitchen,
                         review::review(done.kitchen, done.resolved, done.past, read.later)));
    any = true;
  }
  if (!any) {
    complain("manciple: no plan here has receipts yet\n");
    return bad_input;
  }
  return good;
}

} // namespace manciple::cli
