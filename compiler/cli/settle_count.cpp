// A count beside what should have been there.
#include "cli/settle_count.hpp"
#include "cli/compile.hpp"
#include "cli/exit.hpp"
#include "cli/report.hpp"
#include "cli/say.hpp"
#include "kitchen/paths.hpp"
#include "text/words.hpp"

#include <algorithm>

namespace manciple::cli {
namespace {

// A later count of a plan.
struct Counted {
  text::Sources sources;
  text::Diagnostics diagnostics;
  Reviewed reviewed;
  std::optional<std::size_t> count; ///< among those of the kitchen
};

Counted read_count(const std::string& path, const std::string& plan) {
  Counted out;
  out.reviewed = reviewed(plan, out.sources, out.diagnostics);
  if (!out.reviewed.done) {
    return out;
  }
  const auto file = out.sources.find(path);
  const auto& counts = out.reviewed.done->kitchen.counts;
  for (std::size_t c = 1; c < counts.size() && file; ++c) {
    out.count = counts[c].at.file == *file ? c : out.count;
  }
  return out;
}

void say_differences(const kitchen::Kitchen& kitchen, const history::Past& past, text::Date since,
                     text::Date date, const std::string& path) {
  say("Counted on {}, compared with what should have been there according to the files since {}\n",
      text::print_day(date), text::print_day(since));
  bool any = false;
  bool missing = false;
  for (const history::Difference& one : past.differences) {
    const auto words =
        one.date == date ? review::in_words(kitchen, one) : std::optional<std::string>();
    if (words) {
      say("  {}: {}\n", kitchen.food(one.food).name, *words);
      any = true;
      missing = missing || one.missing() > 0;
    }
  }
  if (!any) {
    say("Everything is as it should be.\n");
  } else if (missing) {
    say("If you know where it went, say so in {}: 'eaten: [2 eggs]', 'thrown away: [1 lb "
        "apples]'.\n",
        path);
  }
}

} // namespace

int settle_count(const std::string& path, const std::string& plan) {
  const std::vector<std::string> plans =
      plan.empty() ? kitchen::plan_files(kitchen::root_of(path)) : std::vector<std::string>{plan};
  for (const std::string& one : plans) {
    const Counted counted = read_count(path, one);
    if (!counted.count) {
      // A plan that cannot be read may be the one.
      if (counted.diagnostics.errors() > 0) {
        return report(counted.diagnostics, counted.sources);
      }
      continue;
    }
    const int code = report(counted.diagnostics, counted.sources);
    const Done& done = *counted.reviewed.done;
    const auto& counts = done.kitchen.counts;
    say_differences(done.kitchen, done.past, *counts[*counted.count - 1].date,
                    *counts[*counted.count].date, path);
    return code;
  }
  complain(
      "manciple: '{}' is not a count on a day of {} with an earlier count to compare it with\n",
      path, plan.empty() ? "any plan of the house" : plan);
  return bad_input;
}

} // namespace manciple::cli
