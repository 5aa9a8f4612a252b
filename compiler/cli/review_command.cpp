// What plans came to.
#include "cli/commands.hpp"
#include "cli/compile.hpp"
#include "cli/exit.hpp"
#include "cli/report.hpp"
#include "cli/say.hpp"
#include "kitchen/paths.hpp"
#include "review/review.hpp"

#include <algorithm>

namespace manciple::cli {
namespace {

// What was counted last, if that was after the day on which the review begins.
std::optional<review::LaterCount> later_count(const std::string& plan, kitchen::Kitchen& kitchen) {
  text::Sources sources;
  text::Diagnostics said;
  kitchen::Kitchen now = kitchen::read_kitchen(plan, sources, said);
  if (!now.on_hand.date || !kitchen.on_hand.date || *now.on_hand.date <= *kitchen.on_hand.date) {
    return std::nullopt;
  }
  review::LaterCount out{*now.on_hand.date, {}};
  for (const kitchen::StockLot& lot : now.on_hand.lots) {
    // Foods by the numbers of the other house.
    if (const auto food = kitchen.foods.find(now.food(*lot.what.food()).name)) {
      out.amounts[*food] += lot.amount;
    }
  }
  return out;
}

// The day up to which a plan is reviewed: where it is, or its last count.
std::optional<text::Date> reviewed_until(const std::string& plan) {
  text::Sources sources;
  text::Diagnostics said;
  const kitchen::Kitchen now = kitchen::read_kitchen(plan, sources, said);
  return now.as_of;
}

} // namespace

int review(const std::vector<std::string>& named) {
  const std::vector<std::string> plans =
      named.empty() ? kitchen::plan_files(kitchen::house_here()) : named;
  bool any = false;
  for (const std::string& plan : plans) {
    const auto until = reviewed_until(plan);
    if (!until && named.empty()) {
      continue;
    }
    text::Sources sources;
    text::Diagnostics diagnostics;
    auto done = reviewed(plan, until, sources, diagnostics);
    if (report(diagnostics, sources) != good || !done) {
      return bad_input;
    }
    const auto later = later_count(plan, done->kitchen);
    say("{}{}", any ? "\n" : "",
        review::in_words(done->kitchen,
                         review::review(done->kitchen, done->resolved, done->past, later)));
    any = true;
  }
  if (!any) {
    complain("manciple: no plan here has receipts yet\n");
    return bad_input;
  }
  return good;
}

} // namespace manciple::cli
