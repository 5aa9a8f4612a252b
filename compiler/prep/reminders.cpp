#include "prep/reminders.hpp"

#include "foods/counted.hpp"
#include "foods/spoken.hpp"
#include "kitchen/food_code.hpp"
#include "prep/begun.hpp"
#include "prep/by_products.hpp"
#include "prep/cooling.hpp"
#include "prep/eaten_hot.hpp"
#include "prep/purpose.hpp"
#include "prep/reheat.hpp"
#include "prep/ripening.hpp"
#include "prep/work.hpp"
#include "purchase/rules.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

namespace manciple::prep {
namespace {

using foods::Food;
using foods::FoodId;
using kitchen::Kitchen;
using purchase::Shopping;
using resolve::Making;
using resolve::Resolved;
using resolve::Use;
using Kind = Reminder::Kind;

class Reminding {
public:
  Reminding(const Kitchen& kitchen, const Resolved& resolved, const Shopping& shopping,
            const std::vector<Cooking>& cooking, const std::vector<Freezing>& freezing)
      : kitchen_(kitchen),
        plan_(*kitchen.plan),
        resolved_(resolved),
        shopping_(shopping),
        cooking_(cooking),
        freezing_(freezing) {}

  std::vector<Reminder> run();

private:
  void thaw_food();
  void thaw_dishes();
  void by_products();
  void pack();
  void wait_times();
  [[nodiscard]] std::map<FoodId, Rational> foods_of_use(std::size_t use) const;
  void ripening();
  void freeze();
  void use_up();
  void add(Kind kind, Date date, std::string what, std::optional<int> clock = {},
           std::optional<MakingId> making = {}, std::optional<int> lasts = {}) {
    out_.push_back({kind, date, clock, std::move(what), making, lasts});
  }
  // The day on which something is taken out of the freezer: the day before a plan begins is one, as
  // what thaws in the fridge takes a night, but none that has been where a plan goes on.
  [[nodiscard]] Date still_to_come(Date date) const {
    return plan_.from > plan_.begins ? std::max(plan_.from, date) : date;
  }
  [[nodiscard]] std::string amount(FoodId food, const Rational& of) const {
    return foods::as_seen(kitchen_.food(food), of, kitchen_.household.system);
  }

  const Kitchen& kitchen_;
  const kitchen::Plan& plan_;
  const Resolved& resolved_;
  const Shopping& shopping_;
  const std::vector<Cooking>& cooking_;
  const std::vector<Freezing>& freezing_;
  std::vector<Reminder> out_;
};

// Food that comes out of the freezer, from stock or from a purchase: by weight, at least the
// evening before. What is kept in the freezer by nature (peas) is cooked from frozen.
void Reminding::thaw_food() {
  std::map<std::tuple<Date, FoodId, std::string>, Rational> frozen;
  std::map<std::tuple<Date, FoodId, std::string>, Rational> straight;
  const auto take = [&](const Use& use, FoodId id, const Rational& of) {
    const Food& food = kitchen_.food(id);
    // Bread thaws on the counter in some hours: for the morning, overnight. Herbs go into the pot
    // as they are. Common practice. What is bought frozen is taken out as it is used.
    constexpr int morning = 10 * 60;
    const bool bread = food.department == foods::Department::bakery;
    const std::optional<std::string> why = purpose(kitchen_, resolved_, use);
    if (food.stored == foods::Place::freezer || !why) {
      return; // a staple is taken out as it is eaten
    }
    if (bread || food.freezes_for_cooking) {
      const bool evening_before = bread && use.clock < morning;
      straight[{use.date - std::chrono::days(evening_before ? 1 : 0), id, *why}] += of;
    } else {
      frozen[{use.date, id, *why}] += of;
    }
  };
  for (const purchase::StockUse& used : shopping_.from_stock) {
    if (used.frozen || kitchen_.on_hand.lots[used.lot].place == foods::Place::freezer) {
      take(resolved_.uses[used.use], purchase::food_of(kitchen_, used), used.amount);
    }
  }
  for (const purchase::Supply& supply : shopping_.supplies) {
    if (supply.frozen) {
      take(resolved_.uses[supply.use], shopping_.lines[supply.line].food, supply.amount);
    }
  }
  for (const auto& [key, of] : straight) {
    const auto& [date, food, why] = key;
    add(Kind::thaw, still_to_come(date),
        fmt::format("Take {} out of the freezer, for {}", amount(food, of), why));
  }
  for (const auto& [key, of] : frozen) {
    const auto& [date, food, why] = key;
    const int days = thawing_days(of);
    add(Kind::thaw, still_to_come(date - std::chrono::days(days)),
        fmt::format("Move {}{} from the freezer to the fridge, for {} on {}",
                    kitchen_.food(food).keeps.frozen_juice ? "juice or zest of " : "",
                    amount(food, of), why, text::print_day(date)));
  }
}

// What is left of a dish goes into the fridge that soon, on the same day.
int put_away_by(const Making& making) {
  return std::min(making.ready_by + kitchen::first_stage, text::minutes_a_day - 1);
}

// Batches and leftovers that were frozen, and leftovers that are put away.
void Reminding::thaw_dishes() {
  for (const Making& making : resolved_.makings) {
    const kitchen::Recipe& recipe = kitchen_.recipe(making.recipe);
    for (const resolve::Consumer& consumer : making.consumers) {
      if (consumer.from_freezer && !is_reheated_frozen(recipe)) {
        add(Kind::thaw, still_to_come(consumer.date - std::chrono::days(1)),
            fmt::format("Move {} (made {}) from the freezer to the fridge, for {}", recipe.name,
                        text::print_day(making.date), text::print_day(consumer.date)));
      }
      if (consumer.leftovers && !making.on_hand) {
        const bool hot = is_eaten_hot(kitchen_, recipe);
        add(Kind::leftovers, making.date,
            fmt::format("Put {} for {} into the {}{}", recipe.name, text::print_day(consumer.date),
                        consumer.from_freezer ? "freezer" : "fridge",
                        hot ? fmt::format(", in shallow boxes, at most {} deep",
                                          depth_of_pans(kitchen_.household.system))
                            : ""),
            making.session ? std::nullopt : std::optional(put_away_by(making)));
      }
    }
  }
}

// What is kept of a dish for others, and what of it comes out of the freezer for them.
void Reminding::by_products() {
  for (const Making& making : resolved_.makings) {
    if (making.session) {
      continue; // one of its tasks
    }
    for (const PutAway& put : put_away(kitchen_, resolved_, making.id)) {
      add(Kind::leftovers, making.date, in_words(kitchen_, resolved_, put), put_away_by(making));
    }
  }
  for (const resolve::ByProduct& one : resolved_.by_products) {
    for (const resolve::ByProduct::Part& part : one.parts) {
      if (part.from_freezer) {
        add(Kind::thaw, still_to_come(part.date - std::chrono::days(1)),
            fmt::format("Move {} (made {}) from the freezer to the fridge, for {} on {}",
                        amount_given(kitchen_, resolved_, one, part.amount),
                        text::print_day(one.date),
                        kitchen_.recipe(resolved_.making(part.into).recipe).name,
                        text::print_day(part.date)));
      }
    }
  }
}

// What is packed stays cold until it is eaten. USDA FSIS, "Keeping Bag Lunches Safe": two cold
// sources with perishable food.
void Reminding::pack() {
  for (const kitchen::Meal& meal : plan_.meals) {
    if (!resolve::is_packed(kitchen_, meal)) {
      continue;
    }
    std::vector<std::string> names;
    for (const kitchen::Dish& dish : meal.dishes) {
      const kitchen::RecipeId* id = dish.what.recipe();
      names.push_back(id != nullptr ? kitchen_.recipe(*id).name : dish.what.text);
    }
    if (!names.empty()) {
      add(Kind::pack, meal.date,
          fmt::format("Pack {} for {} straight from the fridge, with two cold packs",
                      text::join(names, ", "), meal.slot));
    }
  }
}

// How much of which food a use takes: of its own what no other stands for.
std::map<FoodId, Rational> Reminding::foods_of_use(std::size_t u) const {
  const Use& use = resolved_.uses[u];
  std::map<FoodId, Rational> out{{use.food, use.amount}};
  const auto serves = [&](FoodId food, const purchase::Served& part) {
    if (part.use == u && food != use.food) {
      out[food] += part.amount;
      out[use.food] -= part.covers;
    }
  };
  for (const purchase::StockUse& used : shopping_.from_stock) {
    serves(purchase::food_of(kitchen_, used), used);
  }
  for (const purchase::Supply& supply : shopping_.supplies) {
    serves(shopping_.lines[supply.line].food, supply);
  }
  return out;
}

void Reminding::wait_times() {
  std::map<MakingId, int> cooked_from;
  std::map<MakingId, std::pair<Date, int>> stands_from;
  for (const Cooking& cook : cooking_) {
    if (!cook.ahead) {
      cooked_from[cook.making] = cook.start;
    }
    if (cook.stands_from) {
      stands_from[cook.making] = {cook.date, *cook.stands_from};
    }
  }
  // It must be over when cooking starts.
  const auto begin = [&](const Making& making, int minutes) {
    const int cooking =
        making.session ? plan_.sessions[*making.session].from : cooked_from.at(making.id);
    const Begun begun = begun_by_day(cooking - minutes);
    return std::pair(making.date - std::chrono::days(begun.days_before),
                     std::optional(begun.clock));
  };
  for (const Making& making : resolved_.makings) {
    if (making.on_hand) {
      continue;
    }
    const kitchen::Recipe& recipe = kitchen_.recipe(making.recipe);
    if (recipe.marinate) {
      const auto known = stands_from.find(making.id);
      const bool here = known != stands_from.end();
      const auto [date, clock] =
          here ? std::pair(known->second.first, std::optional(known->second.second))
               : begin(making, *recipe.marinate);
      const std::string what = here ? fmt::format("Put {} into the fridge for {}", recipe.name,
                                                  text::print_day(making.date))
                                    : fmt::format("Start {} for {}, in the fridge", recipe.name,
                                                  text::print_day(making.date));
      add(Kind::marinate, date,
          fmt::format("{}: it needs at least {}", what, text::print_minutes(*recipe.marinate)),
          clock, making.id, recipe.marinate);
    }
  }
  for (std::size_t u = 0; u < resolved_.uses.size(); ++u) {
    const auto* of = std::get_if<resolve::OfMaking>(&resolved_.uses[u].reason);
    if (of == nullptr) {
      continue;
    }
    for (const auto& [food, taken] : foods_of_use(u)) {
      if (const auto& soak = kitchen_.food(food).soak; soak && taken > 0) {
        const Making& making = resolved_.making(of->making);
        const auto [date, clock] = begin(making, soak->value);
        add(Kind::soak, date,
            fmt::format("Soak {} for {} ({})", amount(food, taken),
                        kitchen_.recipe(making.recipe).name, text::print_day(making.date)),
            clock, making.id, soak->value);
      }
    }
  }
}

void Reminding::ripening() {
  for (Reminder& one : prep::ripening(kitchen_, resolved_, shopping_)) {
    out_.push_back(std::move(one));
  }
}

// What goes into the freezer on a day without a session to do it.
void Reminding::freeze() {
  for (const Freezing& freezing : freezing_) {
    std::set<Date> days;
    for (const Bag& bag : freezing.bags) {
      days.insert(bag.frozen_on);
    }
    for (const Date day : days) {
      const bool session = std::any_of(plan_.sessions.begin(), plan_.sessions.end(),
                                       [day](const auto& s) { return s.date == day; });
      if (!session) {
        add(Kind::freeze, day,
            into_freezer(kitchen_, kitchen_.food(freezing.food), freezing.on(day)));
      }
    }
  }
}

// Stock and purchases that will not be used in time: a warning before the last good day.
void Reminding::use_up() {
  for (std::size_t l = 0; l < kitchen_.on_hand.lots.size(); ++l) {
    const kitchen::StockLot& lot = kitchen_.on_hand.lots[l];
    const Rational left = lot.amount - shopping_.taken_of_lot(l);
    if (purchase::is_worth_using_up(kitchen_.food(lot.food()), left, lot.amount) && lot.use_by &&
        *lot.use_by <= plan_.until) {
      add(Kind::use_up, std::max(plan_.from, *lot.use_by - std::chrono::days(1)),
          fmt::format("{}, good until {}", amount(lot.food(), left), text::print_day(*lot.use_by)));
    }
  }
}

std::vector<Reminder> Reminding::run() {
  thaw_food();
  thaw_dishes();
  by_products();
  pack();
  wait_times();
  ripening();
  freeze();
  use_up();
  std::stable_sort(out_.begin(), out_.end(), [](const Reminder& a, const Reminder& b) {
    return std::tuple(a.date, a.kind, a.clock.value_or(-1), std::string_view(a.what)) <
           std::tuple(b.date, b.kind, b.clock.value_or(-1), std::string_view(b.what));
  });
  const auto same = [](const Reminder& a, const Reminder& b) {
    return a.date == b.date && a.kind == b.kind && a.what == b.what;
  };
  out_.erase(std::unique(out_.begin(), out_.end(), same), out_.end());
  return std::move(out_);
}

} // namespace

std::vector<Reminder> reminders(const Kitchen& kitchen, const Resolved& resolved,
                                const Shopping& shopping, const std::vector<Cooking>& cooking,
                                const std::vector<Freezing>& freezing) {
  return Reminding(kitchen, resolved, shopping, cooking, freezing).run();
}

} // namespace manciple::prep
