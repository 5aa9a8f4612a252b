// When and where a plan shops, and when it prepares.
#include "kitchen/errors.hpp"
#include "kitchen/keys.hpp"
#include "kitchen/plan_reader.hpp"
#include "text/errors.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace manciple::kitchen {

using text::Date;
using text::Fields;
using text::Node;

namespace {

// What is eaten from the first day on is bought so many days before it, at most.
constexpr int shopping_before = 31;

} // namespace

std::vector<Candidate> PlanReader::stops(const std::vector<const Node*>& list) {
  std::vector<Candidate> out;
  for (const Node* node : list) {
    Candidate stop;
    const Node* shop = node;
    if (node->is_mapping()) {
      const Fields fields(*node, keys::stop, diagnostics_);
      shop = fields.find("shop");
      if (const Node* always = fields.find("always")) {
        stop.always = read_yes_no(*always, diagnostics_).value_or(false);
      }
    }
    if (shop == nullptr) {
      continue;
    }
    if (const auto id = shop_named(shop->scalar, shop->span, context_.shops, diagnostics_)) {
      stop.shop = *id;
      out.push_back(stop);
    }
  }
  return out;
}

// A date, or "every: Saturday".
std::vector<Date> PlanReader::dates_of(const Fields& fields, const Node& node,
                                       std::string_view what, int days_before) {
  const Node* date = fields.find("date");
  const Node* every = fields.find("every");
  if (fields.has("date") == fields.has("every")) {
    diagnostics_.error(text::errors::missing_key, node.span,
                       fmt::format("{} needs either a 'date' or an 'every'", what));
    return {};
  }
  if (date != nullptr) {
    const auto day = inside(*date, days_before);
    return day ? std::vector<Date>{*day} : std::vector<Date>{};
  }
  if (every == nullptr) {
    return {};
  }
  Node key = *every;
  key.scalar = "every " + key.scalar;
  return days(key);
}

// Every shop of the house; where none is known, wherever one likes.
std::vector<Candidate> PlanReader::all_shops() {
  if (context_.shops.empty()) {
    (void)shop_named(any_shop, plan_.at, context_.shops, diagnostics_);
  }
  std::vector<Candidate> out;
  for (const Shop& shop : context_.shops) {
    out.push_back({shop.id, false});
  }
  return out;
}

// The day before the plan begins and every week from then; or the day before that, and so on, where
// more shops are open on it.
void PlanReader::usual_trips() {
  Trip trip;
  trip.at = plan_.at;
  trip.stops = all_shops();
  const auto open_on = [&](Date day) {
    return std::count_if(context_.shops.begin(), context_.shops.end(),
                         [&](const Shop& shop) { return shop.is_open(day, trip.home); });
  };
  Date first = plan_.from - std::chrono::days(1);
  for (Date day = first; day > plan_.from - std::chrono::weeks(1); day -= std::chrono::days(1)) {
    first = open_on(day) > open_on(first) ? day : first;
  }
  for (trip.date = first; trip.date < plan_.until; trip.date += std::chrono::weeks(1)) {
    plan_.trips.push_back(trip);
    leave_out_closed(plan_.trips.back(), false);
  }
}

// Unless the plan shops on its first day or before it, a trip on a day of the week is also made on
// the last such day before the plan begins: what the first days need has to be in the house.
void PlanReader::trips(const std::vector<const Node*>& nodes) {
  std::vector<Trip> before;
  for (const Node* node : nodes) {
    if (auto earlier = trip(*node)) {
      before.push_back(std::move(*earlier));
    }
  }
  const bool in_time = std::any_of(plan_.trips.begin(), plan_.trips.end(),
                                   [&](const Trip& one) { return one.date <= plan_.from; });
  for (Trip& one : before) {
    leave_out_closed(one, false);
    if (!in_time && !one.stops.empty()) {
      plan_.trips.push_back(std::move(one));
    }
  }
}

// Returns the one of a trip `every` day of the week that would be the last before the plan begins.
std::optional<Trip> PlanReader::trip(const Node& node) {
  const Fields fields(node, keys::trip, diagnostics_);
  const std::vector<Date> on = dates_of(fields, node, "a trip", shopping_before);
  Trip trip;
  trip.at = node.span;
  trip.stops = fields.has("stops") ? stops(fields.list("stops")) : all_shops();
  if (const Node* home = fields.find("home by")) {
    trip.home = read_clock(*home, diagnostics_).value_or(trip.home);
  }
  if (const Node* budget = fields.find("budget")) {
    trip.budget = read_money(*budget, context_.household.currency, diagnostics_);
  }
  for (const Date date : on) {
    trip.date = date;
    plan_.trips.push_back(trip);
    leave_out_closed(plan_.trips.back(), fields.has("date") && fields.has("stops"));
  }
  const Node* every = fields.find("every");
  const auto weekday = every != nullptr ? text::parse_weekday(every->scalar) : std::nullopt;
  if (!weekday) {
    return std::nullopt;
  }
  trip.date = plan_.from - (std::chrono::weekday(plan_.from) - *weekday); // up to six days
  return trip;
}

// Stops at shops that are closed are not made; where the plan names the day and the shop, it hears
// of it.
void PlanReader::leave_out_closed(Trip& trip, bool named) {
  std::erase_if(trip.stops, [&](const Candidate& stop) {
    const Shop& shop = context_.shops[static_cast<std::size_t>(stop.shop)];
    const bool closed = !shop.is_open(trip.date, trip.home);
    if (closed && named) {
      diagnostics_.warning(errors::closed, trip.at,
                           fmt::format("{} is not open on {} before {}, so that stop is left out",
                                       shop.name, text::print_day(trip.date),
                                       text::print_clock(trip.home)),
                           "shop there on another day, or correct 'open' in its file");
    }
    return closed;
  });
}

void PlanReader::session(const Node& node) {
  const Fields fields(node, keys::session, diagnostics_);
  const std::vector<Date> on = dates_of(fields, node, "a prep session");
  Session session;
  session.at = node.span;
  if (const Node* from = fields.find("from")) {
    session.from = read_clock(*from, diagnostics_).value_or(0);
  }
  if (const Node* until = fields.find("until")) {
    session.until = read_clock(*until, diagnostics_).value_or(text::minutes_a_day - 1);
    if (session.until <= session.from) {
      diagnostics_.error(errors::wrong_order, until->span, "this session ends before it begins");
    }
  }
  const std::vector<const Node*> cooks = fields.list("cooks");
  if (cooks.size() == 1 && !cooks.front()->scalar.empty() &&
      text::is_digit(cooks.front()->scalar.front())) {
    session.cooks = read_count(*cooks.front(), diagnostics_, 1).value_or(1);
  } else if (!cooks.empty()) {
    for (const Node* cook : cooks) {
      (void)is_known(*cook);
      session.names.push_back(cook->scalar);
    }
    session.cooks = static_cast<int>(cooks.size());
  }
  for (const Date date : on) {
    session.date = date;
    plan_.sessions.push_back(session);
  }
}

} // namespace manciple::kitchen
