#include "history/past.hpp"

#include "foods/spoken.hpp"
#include "history/errors.hpp"
#include "history/house.hpp"
#include "resolve/by_products.hpp"
#include "resolve/makings.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>

namespace manciple::history {
namespace {

using kitchen::Kitchen;
using resolve::Making;
using resolve::Resolved;

// What happens in the order in which it does.
struct Event {
  enum class Kind : std::uint8_t { count, receipt, use, change };
  Date date;
  int clock = 0;
  Kind kind{};
  std::size_t index = 0;
};

// When what was bought is at home: with the trip of the day that goes to the shop, or if none was
// to go there, with the first one.
int home_of(const Kitchen& kitchen, const kitchen::Receipt& receipt) {
  std::optional<int> first;
  for (const kitchen::Trip& trip : kitchen.plan->trips) {
    if (trip.date != receipt.date) {
      continue;
    }
    if (std::any_of(trip.stops.begin(), trip.stops.end(),
                    [&](const kitchen::Candidate& stop) { return stop.shop == receipt.shop; })) {
      return trip.home;
    }
    first = first.value_or(trip.home);
  }
  return first.value_or(kitchen::usually_home);
}

std::vector<Event> events(const Kitchen& kitchen, const Resolved& resolved, Date from, Date until) {
  std::vector<Event> out;
  for (std::size_t c = 0; c < kitchen.counts.size(); ++c) {
    const kitchen::OnHand& count = kitchen.counts[c];
    if (*count.date > from && *count.date <= until) {
      out.push_back({*count.date, 0, Event::Kind::count, c}); // of the morning
    }
  }
  for (std::size_t r = 0; r < kitchen.receipts.size(); ++r) {
    const kitchen::Receipt& receipt = kitchen.receipts[r];
    if (receipt.date >= from && receipt.date <= until) {
      out.push_back({receipt.date, home_of(kitchen, receipt), Event::Kind::receipt, r});
    }
  }
  for (std::size_t u = 0; u < resolved.uses.size(); ++u) {
    const resolve::Use& use = resolved.uses[u];
    if (use.date >= from && use.date < until && use.amount > 0) {
      out.push_back({use.date, use.clock, Event::Kind::use, u});
    }
  }
  for (std::size_t c = 0; c < kitchen.plan->changes.size(); ++c) {
    const kitchen::Change& change = kitchen.plan->changes[c];
    if (change.date >= from && change.date < until) {
      out.push_back({change.date, text::minutes_a_day, Event::Kind::change, c});
    }
  }
  std::stable_sort(out.begin(), out.end(), [](const Event& a, const Event& b) {
    return std::tuple(a.date, a.clock, a.kind) < std::tuple(b.date, b.clock, b.kind);
  });
  return out;
}

// What was cooked since the count and is eaten from a day on.
void add_made(const Kitchen& kitchen, const Resolved& resolved, Date from, Date until, Past& out) {
  for (const Making& making : resolved.makings) {
    if (making.on_hand || making.date < from || making.date >= until) {
      continue;
    }
    const kitchen::Recipe& recipe = kitchen.recipe(making.recipe);
    const Date good = making.good_until.value_or(making.date);
    // Less than a quarter of a serving has been eaten with the rest.
    const bool seen = making.left() * recipe.serves >= Rational(1, 4);
    Rational cool = good >= until && seen ? making.left() : Rational(0);
    Rational frozen = 0;
    for (const resolve::Consumer& consumer : making.consumers) {
      if (consumer.date >= until) {
        (consumer.from_freezer ? frozen : cool) += consumer.times;
      }
    }
    kitchen::Ingredient what;
    what.at = recipe.at;
    what.text = recipe.name;
    what.target = making.recipe;
    if (cool > 0) {
      out.made.push_back({what, recipe.cool_place(), making.date, good, cool});
    }
    if (frozen > 0) {
      out.made.push_back({what, foods::Place::freezer, making.date,
                          making.date + std::chrono::days(recipe.keeps_freezer.value_or(0)),
                          frozen});
    }
  }
}

// What dishes left over since the count: what later ones take of it, and what nothing does while it
// is good. What somebody must not have is not kept: nobody would know later what was in it.
void add_by_products(const Kitchen& kitchen, const Resolved& resolved, Date from, Date until,
                     Past& out) {
  // What a later count found is among what was counted.
  for (const kitchen::OnHand& count : kitchen.counts) {
    from = *count.date <= until ? std::max(from, *count.date) : from;
  }
  for (const resolve::ByProduct& one : resolved.by_products) {
    if (one.date < from || one.date >= until || !resolve::is_for_all(kitchen, resolved, one)) {
      continue;
    }
    const kitchen::GivesLine& given = resolve::given_as(kitchen, resolved, one);
    Rational cool = one.left();
    Rational frozen = 0;
    for (const resolve::ByProduct::Part& part : one.parts) {
      if (part.date >= until) {
        (part.from_freezer ? frozen : cool) += part.amount;
      }
    }
    const auto keep = [&](const Rational& amount, foods::Place place, std::optional<Date> good) {
      if (amount <= 0 || !good || *good < until) {
        return;
      }
      if (given.what.recipe() != nullptr) {
        out.made.push_back({given.what, place, one.date, good, amount});
        return;
      }
      Holding kept;
      kept.food = *given.what.food();
      kept.amount = amount;
      kept.place = place;
      kept.use_by = good;
      kept.given = true;
      kept.since = one.date;
      kept.what = given.what;
      out.there.push_back(std::move(kept));
    };
    keep(cool, given.cool_place, one.good_until);
    keep(frozen, foods::Place::freezer, one.frozen_until);
  }
}

// What was made before the count, less what was eaten of it since.
void add_made_before(const Kitchen& kitchen, const Resolved& resolved, Date until, Past& out) {
  text::Diagnostics said; // by `resolve`
  for (std::size_t l = 0; l < kitchen.on_hand.made.size(); ++l) {
    kitchen::MadeLot lot = kitchen.on_hand.made[l];
    lot.times = lot.times ? lot.times : resolve::times_of(kitchen, lot.what, said);
    for (const Making& making : resolved.makings) {
      for (const resolve::Consumer& consumer : making.consumers) {
        if (making.on_hand == l && consumer.date < until && lot.times) {
          *lot.times -= consumer.times;
        }
      }
    }
    if (lot.times && *lot.times > 0) {
      out.made.push_back(std::move(lot));
    }
  }
}

// Vegetables that a session has cut for a dish to come.
void add_cut(const Kitchen& kitchen, const Resolved& resolved, Date from, Date until, Past& out) {
  for (const resolve::Use& use : resolved.uses) {
    const auto* of = std::get_if<resolve::OfMaking>(&use.reason);
    if (of == nullptr || !use.cut_in || use.date < from || use.date >= until) {
      continue;
    }
    const Making& making = resolved.making(of->making);
    if (making.date >= until) {
      Holding cut;
      cut.food = use.food;
      cut.amount = use.amount;
      cut.place = foods::Place::fridge;
      cut.use_by = making.date;
      cut.cut = true;
      cut.since = use.date;
      cut.what = kitchen.recipe(making.recipe).ingredients[of->ingredient];
      cut.what.note = std::string(foods::name(use.form));
      out.there.push_back(std::move(cut));
    }
  }
}

void tell_not_there(const Kitchen& kitchen, const Resolved& resolved, const Past& past,
                    text::Diagnostics& diagnostics) {
  std::vector<std::string> names;
  for (const NotThere& one : past.not_there) {
    const foods::Food& food = kitchen.food(resolved.uses[one.use].food);
    if (foods::is_more_than_scraps(food, one.amount) &&
        std::find(names.begin(), names.end(), food.name) == names.end()) {
      names.push_back(food.name);
    }
  }
  if (!names.empty()) {
    diagnostics.remark(
        errors::not_there, kitchen.plan->at,
        fmt::format("before {}, more was eaten than there was according to the files: {}",
                    text::print_day(past.until), text::the_first_few(names)),
        "add what is missing to a receipt, or say under 'changes' what was eaten instead");
  }
}

} // namespace

bool is_of_plan(const kitchen::Receipt& receipt, const kitchen::Plan& plan, Date until) {
  return receipt.date >= plan.first_day() && receipt.date <= until;
}

Past past(const Kitchen& kitchen, const Resolved& resolved, Date until,
          text::Diagnostics& diagnostics) {
  const Date from = kitchen.on_hand.date.value_or(kitchen.plan->begins);
  Past out;
  out.until = until;
  for (const kitchen::Receipt& receipt : kitchen.receipts) {
    if (is_of_plan(receipt, *kitchen.plan, until)) {
      out.paid += receipt.paid();
      out.cash_back += kitchen.shop(receipt.shop).comes_back(receipt.goods(), receipt.credit);
    }
  }
  House house(kitchen, resolved, until, out);
  house.count(from);
  for (const Event& event : events(kitchen, resolved, from, until)) {
    house.morning(event.date);
    switch (event.kind) {
    case Event::Kind::count:
      house.correct(kitchen.counts[event.index]);
      break;
    case Event::Kind::receipt:
      house.bring_home(kitchen.receipts[event.index], event.clock);
      break;
    case Event::Kind::use:
      house.use(event.index);
      break;
    case Event::Kind::change:
      house.change(kitchen.plan->changes[event.index]);
      break;
    }
  }
  house.morning(until);
  out.there = house.there();
  add_cut(kitchen, resolved, from, until, out);
  add_made_before(kitchen, resolved, until, out);
  add_made(kitchen, resolved, from, until, out);
  add_by_products(kitchen, resolved, from, until, out);
  tell_not_there(kitchen, resolved, out, diagnostics);
  return out;
}

} // namespace manciple::history
