#include "cli/compile.hpp"

#include "history/as_planned.hpp"
#include "history/errors.hpp"
#include "kitchen/paths.hpp"
#include "purchase/budget.hpp"
#include "purchase/makers.hpp"
#include "purchase/offers.hpp"
#include "safety/safety.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace manciple::cli {
namespace {

// The list of a day as the house is then, as receipts.
std::vector<kitchen::Receipt> list_of(const kitchen::Kitchen& kitchen, const resolve::Resolved& all,
                                      text::Date day, const purchase::Search& search) {
  text::Diagnostics of_then;
  kitchen::Kitchen then = history::ahead(kitchen, history::past(kitchen, all, day, of_then));
  const resolve::Resolved resolved = resolve::resolve(then, of_then);
  if (of_then.errors() > 0) {
    return {};
  }
  then = purchase::with_offers(std::move(then), resolved, of_then);
  return history::as_planned(then, purchase::buy(then, resolved, of_then, search), day);
}

// Of days of shopping that have no receipt, what the list of that day says is taken for one.
void take_lists_for_receipts(kitchen::Kitchen& kitchen, const resolve::Resolved& all,
                             text::Date until, const purchase::Search& search,
                             text::Diagnostics& diagnostics,
                             std::optional<text::Date> planned_from = std::nullopt) {
  for (const text::Date day : history::days_without_receipt(kitchen, until, planned_from)) {
    const auto receipts = list_of(kitchen, all, day, search);
    if (receipts.empty()) {
      continue;
    }
    // What is still to come goes as the list says, and needs no word.
    if (!planned_from || day < *planned_from) {
      diagnostics.remark(history::errors::no_receipt, kitchen.plan->at,
                         fmt::format("there is no receipt for {}, so what the list now says for "
                                     "that day is assumed to have been bought",
                                     text::print_day(day)),
                         fmt::format("'manciple receipt {}' writes one for you to correct",
                                     text::print_date(day)));
    }
    kitchen.receipts.insert(kitchen.receipts.end(), receipts.begin(), receipts.end());
    kitchen::by_date(kitchen.receipts);
  }
}

// What has been by the morning of a day; days of shopping that have no receipt go by their lists,
// those from `planned_from` on without a word. Nothing when there are errors.
std::optional<Done> done_by(kitchen::Kitchen kitchen, text::Date until,
                            text::Diagnostics& diagnostics,
                            std::optional<text::Date> planned_from = std::nullopt) {
  resolve::Resolved all = resolve::resolve(kitchen, diagnostics);
  if (diagnostics.errors() > 0) {
    return std::nullopt;
  }
  kitchen.as_of = until;
  take_lists_for_receipts(kitchen, all, until, {}, diagnostics, planned_from);
  history::Past past = history::past(kitchen, all, until, diagnostics);
  return Done{std::move(kitchen), std::move(all), std::move(past)};
}

} // namespace

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
      take_lists_for_receipts(out.kitchen, all, *out.kitchen.as_of, search, diagnostics);
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
  out.kitchen = purchase::with_offers(std::move(out.kitchen), out.resolved, diagnostics);
  out.shopping = purchase::buy(out.kitchen, out.resolved, diagnostics, search);
  if (diagnostics.errors() > 0) {
    return std::nullopt;
  }
  out.resolved.labels = purchase::labels_to_read(out.kitchen, out.resolved, out.shopping);
  out.worth = purchase::worth(out.kitchen, out.resolved, out.shopping);
  purchase::check_budgets(out.kitchen, out.shopping, out.worth, diagnostics);
  out.nutrition = nutrition::nutrition(out.kitchen, out.resolved);
  kitchen::Library library;
  if (!out.kitchen.plan->aims.empty()) {
    library = kitchen::read_library(kitchen::root_of(plan_path), kitchen::Recipes::suited, files);
  }
  out.aims = nutrition::look_at_aims(out.kitchen, out.resolved, out.nutrition, out.worth,
                                     std::move(library));
  nutrition::tell_aims(out.kitchen, out.aims, diagnostics);
  out.out_of_stock = purchase::out_of_stock(out.kitchen, out.shopping);
  out.prep = prep::prepare(out.kitchen, out.resolved, out.shopping, diagnostics);
  return out;
}

std::optional<Done> done_until(const std::string& plan_path, std::optional<text::Date> day,
                               text::Sources& sources, text::Diagnostics& diagnostics,
                               const text::Files& files) {
  kitchen::Kitchen kitchen = kitchen::read_kitchen(plan_path, sources, diagnostics, files);
  if (!kitchen.plan) {
    return std::nullopt;
  }
  const kitchen::Plan& plan = *kitchen.plan;
  const text::Date now = kitchen.as_of.value_or(plan.from);
  const text::Date until = day.value_or(now);
  const text::Date first = plan.first_day();
  if (until < first || until > plan.until + std::chrono::days(1)) {
    diagnostics.error(history::errors::unknown_day, plan.at,
                      fmt::format("what is in the house is known from {} to {}, but not on {}",
                                  text::print_day(first),
                                  text::print_day(plan.until + std::chrono::days(1)),
                                  text::print_day(until)),
                      "name the plan of that day with --plan");
    return std::nullopt;
  }
  if (until < now) { // what was known then
    sources = {};
    diagnostics = {};
    kitchen = kitchen::read_kitchen(plan_path, sources, diagnostics, files, until);
  }
  return done_by(std::move(kitchen), until, diagnostics, now);
}

Reviewed reviewed(const std::string& plan_path, text::Sources& sources,
                  text::Diagnostics& diagnostics, const text::Files& files) {
  kitchen::Kitchen kitchen =
      kitchen::read_kitchen(plan_path, sources, diagnostics, files, {}, kitchen::Counts::all);
  if (!kitchen.plan) {
    return {};
  }
  const text::Date first = kitchen.plan->first_day();
  text::Date until = kitchen.as_of.value_or(first);
  kitchen.on_hand = {};
  if (!kitchen.counts.empty()) {
    const auto counted = [](const kitchen::OnHand& count) { return *count.date; };
    until = std::max(until, counted(kitchen.counts.back()));
    if (counted(kitchen.counts.front()) <= first) {
      kitchen.on_hand = kitchen.counts.front();
    }
  }
  Reviewed out{kitchen.as_of || until > first, {}};
  out.done = done_by(std::move(kitchen), until, diagnostics);
  return out;
}

std::optional<BesideList> beside_list(const std::string& plan_path, const std::string& receipt,
                                      text::Sources& sources, text::Diagnostics& diagnostics,
                                      const text::Files& files) {
  BesideList out{
      kitchen::read_kitchen(plan_path, sources, diagnostics, files, kitchen::day_in_name(receipt)),
      {},
      {}};
  auto& receipts = out.kitchen.receipts;
  const auto mine = std::find_if(receipts.begin(), receipts.end(),
                                 [&](const auto& one) { return one.slug == receipt; });
  if (mine == receipts.end() || !out.kitchen.plan) {
    return std::nullopt;
  }
  out.receipt = std::move(*mine);
  receipts.erase(mine);
  const kitchen::Plan& plan = *out.kitchen.plan;
  const text::Date day = out.receipt.date;
  const bool shops = std::any_of(plan.trips.begin(), plan.trips.end(),
                                 [&](const auto& trip) { return trip.date == day; });
  if ((day < plan.begins && !shops) || day > plan.until) {
    return std::nullopt;
  }
  text::Diagnostics said; // by `build`
  const resolve::Resolved all = resolve::resolve(out.kitchen, said);
  if (said.errors() > 0) {
    return out;
  }
  take_lists_for_receipts(out.kitchen, all, day, {}, said);
  for (kitchen::Receipt& list : list_of(out.kitchen, all, day, {})) {
    if (list.shop == out.receipt.shop) {
      out.list = std::move(list);
    }
  }
  return out;
}

} // namespace manciple::cli
