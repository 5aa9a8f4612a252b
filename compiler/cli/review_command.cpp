// What plans came to.
#include "cli/command_line.hpp"
#include "cli/commands.hpp"
#include "cli/compile.hpp"
#include "cli/exit.hpp"
#include "cli/report.hpp"
#include "cli/say.hpp"
#include "cli/write_file.hpp"
#include "emit/review_page.hpp"
#include "kitchen/paths.hpp"
#include "review/review.hpp"

#include <algorithm>
#include <list>

namespace manciple::cli {
namespace {

struct ReviewRequest {
  std::vector<std::string> plans; ///< none: all plans of the house that have receipts
  bool write = false;             ///< as a page, too
};

// A plan of which something is done.
struct OfPlan {
  Done done;
  review::Review review;
};

int write_page(const std::list<OfPlan>& plans, const std::string& plan) {
  std::vector<review::Month> months;
  for (const OfPlan& of : plans) {
    months.push_back({&of.done.kitchen, &of.review});
  }
  std::stable_sort(months.begin(), months.end(),
                   [](const auto& a, const auto& b) { return a.review->from < b.review->from; });
  return write_and_say(kitchen::in_root(kitchen::root_of(plan), "out/review.html"),
                       emit::review_html(months), true);
}

int review(const ReviewRequest& request) {
  const auto& [named, write] = request;
  const std::vector<std::string> plans =
      named.empty() ? kitchen::plan_files(kitchen::house_here()) : named;
  std::list<OfPlan> reviewed_plans; // what stands in it stays in its place
  for (const std::string& plan : plans) {
    text::Sources sources;
    text::Diagnostics diagnostics;
    Reviewed read = reviewed(plan, sources, diagnostics);
    if (!read.begun && named.empty()) {
      continue;
    }
    if (report(diagnostics, sources) != good || !read.done) {
      return bad_input;
    }
    OfPlan& of = reviewed_plans.emplace_back(OfPlan{std::move(*read.done), {}});
    of.review = review::review(of.done.kitchen, of.done.resolved, of.done.past);
    say("{}{}", reviewed_plans.size() > 1 ? "\n" : "",
        review::in_words(of.done.kitchen, of.review));
  }
  if (reviewed_plans.empty()) {
    complain("manciple: no plan here has receipts yet\n");
    return bad_input;
  }
  return write ? write_page(reviewed_plans, plans.front()) : good;
}

} // namespace

void add_review(CommandLine& to) {
  auto [command, asked] = to.add<ReviewRequest>(
      "review",
      "what was spent by shop, department, meal and person, prices over time, what was "
      "thrown away, what each shop saved, and how fast staples were used",
      review);
  command.add_option("FILES", asked.plans,
                     "plans (default: all plans of the house that have receipts)");
  command.add_flag("--write", asked.write, "also draw it as a page: out/review.html");
}

} // namespace manciple::cli
