#include "history/past.hpp"

#include "history/written.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace manciple::history {
namespace {

using kitchen::Kitchen;
using kitchen::Plan;

// Packs that are closed stay packs.
std::optional<Rational> packs_of(const Holding& one) {
  return one.pack > 0 ? std::optional(Rational(one.amount / one.pack)) : std::nullopt;
}

kitchen::StockLot lot_of(const Kitchen& kitchen, const Holding& one) {
  kitchen::StockLot lot{one.what,   one.amount, one.place, one.use_by,
                        one.thawed, one.opened, one.hard};
  lot.given = one.given;
  lot.what.containers = packs_of(one);
  lot.what.fresh = one.place != foods::Place::freezer;
  lot.what.text = line_written(kitchen, one);
  return lot;
}

// Stops of a day that have a receipt are made.
void drop_stops_made(const Kitchen& kitchen, Date day, Plan& plan) {
  for (kitchen::Trip& trip : plan.trips) {
    std::erase_if(trip.stops, [&](const kitchen::Candidate& stop) {
      return trip.date == day &&
             std::any_of(kitchen.receipts.begin(), kitchen.receipts.end(),
                         [&](const auto& one) { return one.date == day && one.shop == stop.shop; });
    });
  }
  std::erase_if(plan.trips, [](const kitchen::Trip& trip) { return trip.stops.empty(); });
}

// Store credit is good once in a plan.
void take_off_credit(Date until, Kitchen& kitchen) {
  for (const kitchen::Receipt& receipt : kitchen.receipts) {
    if (is_of_plan(receipt, *kitchen.plan, until)) {
      kitchen::Cents& credit = kitchen.shops[static_cast<std::size_t>(receipt.shop)].credit;
      credit = std::max(kitchen::Cents{0}, credit - receipt.credit);
    }
  }
}

// What was due and never bought is wanted as soon as may be.
void keep_what_is_due(const Past& past, Plan& plan) {
  std::vector<kitchen::Extra> extra;
  for (std::size_t e = 0; e < plan.extra.size(); ++e) {
    kitchen::Extra one = std::move(plan.extra[e]);
    const bool open =
        std::find(past.still_to_buy.begin(), past.still_to_buy.end(), e) != past.still_to_buy.end();
    if (!one.by || *one.by >= past.until || open) {
      one.by = one.by && *one.by < past.until ? std::nullopt : one.by;
      extra.push_back(std::move(one));
    }
  }
  plan.extra = std::move(extra);
}

} // namespace

Kitchen ahead(Kitchen kitchen, const Past& past) {
  kitchen::OnHand there;
  there.date = past.until;
  there.at = kitchen.on_hand.at;
  for (const Holding& one : past.there) {
    there.lots.push_back(lot_of(kitchen, one));
  }
  there.made = past.made;
  kitchen.on_hand = std::move(there);

  Plan& plan = *kitchen.plan;
  take_off_credit(past.until, kitchen);
  plan.from = std::max(plan.begins, past.until);
  const auto done = [&](const auto& one) { return one.date < past.until; };
  std::erase_if(plan.meals, done);
  plan.trips_done = plan.trips;
  std::erase_if(plan.trips, done);
  std::erase_if(plan.sessions, done);
  std::erase_if(plan.changes, done);
  drop_stops_made(kitchen, past.until, plan);
  keep_what_is_due(past, plan);
  if (const auto budget = plan.budget ? plan.budget : kitchen.household.budget) {
    plan.budget = std::max(kitchen::Cents{0}, *budget - past.paid);
  }
  return kitchen;
}

} // namespace manciple::history
