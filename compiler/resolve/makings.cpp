#include "resolve/makings.hpp"

#include "kitchen/hours.hpp"
#include "resolve/dates.hpp"
#include "resolve/errors.hpp"
#include "resolve/made_before.hpp"
#include "resolve/steps.hpp"
#include "resolve/uses.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace manciple::resolve {
namespace {

using kitchen::Dish;
using kitchen::Ingredient;
using kitchen::Kitchen;
using kitchen::Meal;
using kitchen::Plan;
using kitchen::Recipe;
using kitchen::Session;

constexpr int never_old = 100'000; // days

// A recipe wanted somewhere at a time.
struct Need {
  Consumer consumer;
  int clock = 0;                           ///< minutes from midnight of the consumer's date
  std::optional<std::size_t> session = {}; ///< wanted inside this session
  std::vector<Consumer> later = {};        ///< leftovers that are cooked along
  /// The last day on which it is eaten unfrozen, in whatever it went into, and how many days after
  /// it was made that may be at most. Food that is combined is as old as its oldest part: FDA Food
  /// Code 2022, 3-501.17.
  Date last = consumer.date;
  int within = never_old;
  int begun = clock; ///< when it must be there: a part, when what it goes into is begun
  /// On which it is made at home: the day before, for what is packed.
  Date made = consumer.date;
  std::size_t ingredient = 0; ///< of a part: of what it goes into
};

class Maker {
public:
  Maker(const Kitchen& kitchen, const std::vector<std::vector<Rational>>& servings,
        const std::vector<RecipeId>& order, const Barred& barred, text::Diagnostics& diagnostics)
      : kitchen_(kitchen),
        plan_(*kitchen.plan),
        servings_(servings),
        diagnostics_(diagnostics),
        dishes_(kitchen.recipes.size()),
        parts_(kitchen.recipes.size()),
        on_hand_(made_before(kitchen, diagnostics)),
        supplies_(kitchen, order, barred) {}

  Made run(const std::vector<RecipeId>& order);

private:
  void collect_dishes();
  void add_leftovers(const DishRef& ref, const Dish& dish, const Meal& meal);
  void make(const Recipe& recipe);
  void make_on_the_day(const Recipe& recipe, std::vector<Need> needs);
  void make_in_sessions(const Recipe& recipe, std::vector<Need> needs);
  void finish(const Recipe& recipe, Making making, Date last, int within);
  [[nodiscard]] std::optional<std::size_t> last_session_before(const Need& need) const;
  [[nodiscard]] bool in_time(std::size_t session, const Need& need) const;
  void take_on_hand(const Recipe& recipe, std::vector<Need>& needs);
  Rational take_on_hand(RecipeId recipe, const Consumer& consumer);
  void add_on_hand();
  [[nodiscard]] Ask ask_of(const Need& need) const;
  void take_by_products(const Recipe& recipe, std::vector<Need>& needs);
  void take_foods();

  const Kitchen& kitchen_;
  const Plan& plan_;
  const std::vector<std::vector<Rational>>& servings_;
  text::Diagnostics& diagnostics_;
  std::vector<std::vector<Need>> dishes_; // by recipe: as a meal
  std::vector<std::vector<Need>> parts_;  // by recipe: as an ingredient
  std::vector<MadeBefore> on_hand_;       // in the order in which it is taken
  Supplies supplies_;
  std::vector<Need> food_needs_; // of what others may leave over; their times are amounts
  std::vector<Making> makings_;
};

// Whether what is made on a day is good unfrozen until it has been eaten. What is used on the day
// on which it is made is as fresh as what it goes into, which says how long it keeps itself.
bool keeps_unfrozen(const Recipe& recipe, Date made, const Need& need) {
  if (made == need.consumer.date) {
    return true;
  }
  const int keeps = recipe.keeps_unfrozen().value_or(0);
  return gap_in_days(made, need.consumer.date) <= keeps &&
         gap_in_days(made, need.last) <= std::min(keeps, need.within);
}

// The day on which the last of it is eaten, as leftovers.
Date last_eaten(const Need& need) {
  Date last = need.consumer.date;
  for (const Consumer& later : need.later) {
    last = std::max(last, later.date);
  }
  return last;
}

void Maker::collect_dishes() {
  for (std::size_t m = 0; m < plan_.meals.size(); ++m) {
    const Meal& meal = plan_.meals[m];
    for (std::size_t d = 0; d < meal.dishes.size(); ++d) {
      const Dish& dish = meal.dishes[d];
      const RecipeId* id = dish.what.recipe();
      if (dish.kind == Dish::Kind::plain || id == nullptr) {
        continue;
      }
      if (dish.kind == Dish::Kind::leftovers) {
        add_leftovers({m, d}, dish, meal);
        continue;
      }
      const Rational times = servings_[m][d] / kitchen_.recipe(*id).serves;
      if (times > 0) {
        const kitchen::Slot& slot = *kitchen_.household.slot(meal.slot);
        Need need{.consumer = {DishRef{m, d}, times, meal.date, false, false},
                  .clock = slot.hour(meal.date)};
        if (is_packed(kitchen_, meal)) {
          // For a session it is there in time in the morning; at home it is made in the evening.
          need.made = meal.date - std::chrono::days(1);
          need.clock = kitchen::evening;
          need.last = meal.date;
        }
        dishes_[static_cast<std::size_t>(*id)].push_back(std::move(need));
      }
    }
  }
}

// Leftovers are of the last cooking before the meal.
void Maker::add_leftovers(const DishRef& ref, const Dish& dish, const Meal& meal) {
  const Recipe& recipe = kitchen_.recipe(*dish.what.recipe());
  std::vector<Need>& cooked = dishes_[static_cast<std::size_t>(recipe.id)];
  const Rational times = servings_[ref.meal][ref.dish] / recipe.serves;
  if (cooked.empty()) {
    const Rational taken = take_on_hand(recipe.id, {ref, times, meal.date, true, false});
    if (taken == times) {
      return;
    }
    if (taken > 0) {
      diagnostics_.warning(errors::no_leftovers, dish.at,
                           fmt::format("less {} is left than is eaten on {}", recipe.name,
                                       text::print_day(meal.date)),
                           "add a dish, or cook it again");
      return;
    }
    diagnostics_.error(errors::no_leftovers, dish.at,
                       fmt::format("{} is not cooked before {}, so there are no leftovers",
                                   recipe.name, text::print_day(meal.date)));
    return;
  }
  Need& of = cooked.back();
  const int days = gap_in_days(of.made, meal.date);
  const bool fridge = recipe.keeps_unfrozen() && days <= *recipe.keeps_unfrozen();
  const bool freezer = recipe.keeps_freezer && days <= *recipe.keeps_freezer;
  if (!fridge && !freezer) {
    const std::string keeps =
        recipe.keeps_unfrozen()
            ? fmt::format("it keeps {}", text::print_days(*recipe.keeps_unfrozen()))
            : "the recipe does not say how long it keeps";
    diagnostics_.error(errors::leftovers_too_old, dish.at,
                       fmt::format("{} was cooked on {}, {} before; {}", recipe.name,
                                   text::print_day(of.consumer.date), text::print_days(days),
                                   keeps),
                       "eat the leftovers earlier, or give the recipe 'keeps: {freezer: 3 months}' "
                       "if it freezes well");
    return;
  }
  of.later.push_back({ref, times, meal.date, true, !fridge});
  if (fridge) {
    of.last = meal.date;
  }
}

bool Maker::in_time(std::size_t index, const Need& need) const {
  const Session& session = plan_.sessions[index];
  if (need.session) {
    return index <= *need.session; // earlier, or before it in the same session
  }
  return session.date < need.consumer.date ||
         (session.date == need.consumer.date && session.until <= need.begun);
}

std::optional<std::size_t> Maker::last_session_before(const Need& need) const {
  std::optional<std::size_t> last;
  for (std::size_t i = 0; i < plan_.sessions.size(); ++i) {
    if (in_time(i, need)) {
      last = i;
    }
  }
  return last;
}

void Maker::make(const Recipe& recipe) {
  std::vector<Need>& dishes = dishes_[static_cast<std::size_t>(recipe.id)];
  std::vector<Need>& parts = parts_[static_cast<std::size_t>(recipe.id)];
  if (recipe.make_ahead) {
    std::move(dishes.begin(), dishes.end(), std::back_inserter(parts));
    take_on_hand(recipe, parts);
    take_by_products(recipe, parts);
  } else {
    take_on_hand(recipe, parts);
    take_by_products(recipe, parts);
    std::vector<Need> packed; // for the first day, on the evening before
    const auto later = std::stable_partition(dishes.begin(), dishes.end(), [&](const Need& need) {
      const auto& meal = plan_.meals[std::get<DishRef>(need.consumer.who).meal];
      return meal.date == plan_.from && kitchen_.household.slot(meal.slot)->is_packed(meal.date);
    });
    packed.assign(std::make_move_iterator(dishes.begin()), std::make_move_iterator(later));
    dishes.erase(dishes.begin(), later);
    take_on_hand(recipe, packed);
    dishes.insert(dishes.begin(), std::make_move_iterator(packed.begin()),
                  std::make_move_iterator(packed.end()));
    for (Need& need : dishes) {
      make_on_the_day(recipe, {std::move(need)});
    }
  }
  make_in_sessions(recipe, std::move(parts));
}

// Takes what it can of what is left of a recipe; gives how much of the consumer's share that meets.
// What is a little less than asked for is enough. What is eaten before the count is not of it.
Rational Maker::take_on_hand(RecipeId recipe, const Consumer& consumer) {
  const Rational enough = consumer.times * (1 - give_of(kitchen_, kitchen_.recipe(recipe)));
  Rational taken;
  if (kitchen_.on_hand.date && consumer.date < *kitchen_.on_hand.date) {
    return taken;
  }
  for (MadeBefore& lot : on_hand_) {
    const Rational part = std::min(lot.left, Rational(consumer.times - taken));
    if (lot.recipe == recipe && part > 0 && consumer.date <= lot.good_until) {
      lot.left -= part;
      taken += part;
      lot.consumers.push_back({consumer.who, part, consumer.date, consumer.leftovers, lot.frozen});
    }
  }
  return taken > 0 && taken >= enough ? consumer.times : taken;
}

// The earliest needs first; those that are met go.
void Maker::take_on_hand(const Recipe& recipe, std::vector<Need>& needs) {
  const bool any = std::any_of(on_hand_.begin(), on_hand_.end(), [&](const MadeBefore& lot) {
    return lot.recipe == recipe.id && lot.left > 0;
  });
  if (!any) {
    return;
  }
  std::stable_sort(needs.begin(), needs.end(), [](const Need& a, const Need& b) {
    return std::pair(a.consumer.date, a.clock) < std::pair(b.consumer.date, b.clock);
  });
  for (Need& need : needs) {
    need.consumer.times -= take_on_hand(recipe.id, need.consumer);
    for (Consumer& later : need.later) {
      later.times -= take_on_hand(recipe.id, later);
    }
    std::erase_if(need.later, [](const Consumer& later) { return later.times == 0; });
  }
  std::erase_if(needs,
                [](const Need& need) { return need.consumer.times == 0 && need.later.empty(); });
}

Ask Maker::ask_of(const Need& need) const {
  const auto into = std::get<MakingId>(need.consumer.who);
  return {into,
          makings_[static_cast<std::size_t>(into)].recipe,
          need.ingredient,
          need.consumer.date,
          need.clock,
          need.begun,
          need.session,
          need.last,
          need.within};
}

// What others leave over of a recipe is not made. A dish of its own is: it is cooked fresh.
void Maker::take_by_products(const Recipe& recipe, std::vector<Need>& needs) {
  if (!supplies_.may_give(recipe.id)) {
    return;
  }
  std::stable_sort(needs.begin(), needs.end(), [](const Need& a, const Need& b) {
    return std::pair(a.consumer.date, a.clock) < std::pair(b.consumer.date, b.clock);
  });
  for (Need& need : needs) {
    if (std::holds_alternative<MakingId>(need.consumer.who)) {
      const Rational asked = need.consumer.times;
      const Rational enough = asked * (1 - give_of(kitchen_, recipe));
      const Rational taken = supplies_.take(recipe.id, asked, ask_of(need));
      need.consumer.times -= taken > 0 && taken >= enough ? asked : taken;
    }
  }
  std::erase_if(needs,
                [](const Need& need) { return need.consumer.times == 0 && need.later.empty(); });
}

// Of foods when all is made: who needs it first takes it first.
void Maker::take_foods() {
  std::stable_sort(food_needs_.begin(), food_needs_.end(), [](const Need& a, const Need& b) {
    return std::pair(a.consumer.date, a.clock) < std::pair(b.consumer.date, b.clock);
  });
  for (const Need& need : food_needs_) {
    const Ask ask = ask_of(need);
    const Ingredient& line = kitchen_.recipe(ask.recipe).ingredients[need.ingredient];
    Ask fresh = ask;
    fresh.from_freezer = !line.fresh;
    (void)supplies_.take(line.target, need.consumer.times, fresh);
  }
}

// What was made before stands behind what it goes into.
void Maker::add_on_hand() {
  for (MadeBefore& lot : on_hand_) {
    if (lot.consumers.empty()) {
      continue;
    }
    Making making;
    making.id = MakingId{static_cast<std::uint32_t>(makings_.size())};
    making.recipe = lot.recipe;
    making.date = lot.made;
    making.consumers = std::move(lot.consumers);
    making.good_until = lot.good_until;
    making.on_hand = lot.lot;
    for (const Consumer& consumer : making.consumers) {
      making.needed += consumer.times;
    }
    making.times = making.needed;
    makings_.push_back(std::move(making));
  }
}

// Fewest batches: the use that comes first is served by the last session before it, and that batch
// serves every later use that it keeps for. Each use is an interval of days [use - keeping, use],
// each session a point; taking the rightmost point for the interval that ends first pierces all
// intervals with the fewest points (the classic interval-stabbing argument: some point must lie in
// that interval, and the rightmost one lies in every other interval that any of them lies in).
void Maker::make_in_sessions(const Recipe& recipe, std::vector<Need> needs) {
  const auto when = [](const Need& n) {
    return std::tuple(n.consumer.date, n.session ? 0 : 1, n.clock);
  };
  std::stable_sort(needs.begin(), needs.end(),
                   [&](const Need& a, const Need& b) { return when(a) < when(b); });
  std::vector<Need> on_the_day;
  std::vector<bool> served(needs.size(), false);
  for (std::size_t i = 0; i < needs.size(); ++i) {
    if (served[i]) {
      continue;
    }
    const auto session = last_session_before(needs[i]);
    const auto serves = [&](const Need& need) {
      const Date made = plan_.sessions[*session].date;
      return in_time(*session, need) &&
             (keeps_unfrozen(recipe, made, need) ||
              gap_in_days(made, last_eaten(need)) <= recipe.keeps_freezer.value_or(0));
    };
    if (!session || !serves(needs[i])) {
      on_the_day.push_back(std::move(needs[i]));
      served[i] = true;
      continue;
    }
    Making making;
    making.date = plan_.sessions[*session].date;
    making.session = session;
    Date last = making.date;
    int within = never_old;
    for (std::size_t j = i; j < needs.size(); ++j) {
      if (served[j] || !serves(needs[j])) {
        continue;
      }
      served[j] = true;
      needs[j].consumer.from_freezer = !keeps_unfrozen(recipe, making.date, needs[j]);
      if (!needs[j].consumer.from_freezer) {
        last = std::max(last, needs[j].last);
        within = std::min(within, needs[j].within);
      }
      making.consumers.push_back(needs[j].consumer);
      // Leftovers are as old as the dish that they are of, and are frozen where it is.
      for (Consumer& later : needs[j].later) {
        later.from_freezer = later.from_freezer || needs[j].consumer.from_freezer;
        making.consumers.push_back(std::move(later));
      }
    }
    finish(recipe, std::move(making), last, within);
  }
  // What no session serves is made when it is used, once a day.
  std::map<Date, std::vector<Need>> by_day;
  for (Need& need : on_the_day) {
    by_day[need.made].push_back(std::move(need));
  }
  for (auto& [day, list] : by_day) {
    make_on_the_day(recipe, std::move(list));
  }
}

void Maker::make_on_the_day(const Recipe& recipe, std::vector<Need> needs) {
  Making making;
  making.date = needs.front().made;
  making.ready_by = needs.front().clock;
  Date last = making.date;
  int within = never_old;
  for (Need& need : needs) {
    making.ready_by = std::min(making.ready_by, need.clock);
    last = std::max(last, need.last);
    within = std::min(within, need.within);
    making.consumers.push_back(need.consumer);
    for (Consumer& later : need.later) {
      making.consumers.push_back(std::move(later));
    }
  }
  finish(recipe, std::move(making), last, within);
}

void Maker::finish(const Recipe& recipe, Making making, Date last, int within) {
  making.id = MakingId{static_cast<std::uint32_t>(makings_.size())};
  making.recipe = recipe.id;
  for (const Consumer& consumer : making.consumers) {
    making.needed += consumer.times;
  }
  making.times = times_to_make(kitchen_, recipe, making.needed);
  // A little less than their share, for all alike.
  if (making.times < making.needed) {
    for (Consumer& consumer : making.consumers) {
      consumer.times *= making.times / making.needed;
    }
  }
  for (std::size_t i = 0; i < recipe.ingredients.size(); ++i) {
    const Ingredient& ingredient = recipe.ingredients[i];
    const RecipeId* part = ingredient.recipe();
    if (!ingredient.amount || (part == nullptr && !supplies_.may_give(ingredient.target))) {
      continue;
    }
    const auto times =
        part != nullptr
            ? times_of(kitchen_, ingredient, diagnostics_)
            : std::optional(purchased_per_making(kitchen_, recipe)[i] *
                            times_of_ingredient(kitchen_, recipe, ingredient, making.times) /
                            making.times);
    if (!times) {
      continue;
    }
    Need need{.consumer = {making.id, *times * making.times, making.date, false, false},
              .clock = making.ready_by,
              .session = making.session};
    need.begun = making.ready_by - minutes_to_cook(recipe);
    need.ingredient = i;
    // What stands in the pantry does not spoil in what it goes into.
    if (last > making.date && (part == nullptr || !kitchen_.recipe(*part).keeps_pantry)) {
      need.last = last;
      need.within = std::min(within, recipe.keeps_unfrozen().value_or(never_old));
    }
    (part != nullptr ? parts_[static_cast<std::size_t>(*part)] : food_needs_)
        .push_back(std::move(need));
  }
  makings_.push_back(std::move(making));
  supplies_.add(makings_.back());
}

Made Maker::run(const std::vector<RecipeId>& order) {
  collect_dishes();
  for (const RecipeId id : order) {
    make(kitchen_.recipe(id));
  }
  take_foods();
  add_on_hand();
  return {std::move(makings_), std::move(supplies_).all()};
}

} // namespace

Made makings(const Kitchen& kitchen, const std::vector<std::vector<Rational>>& servings,
             const std::vector<RecipeId>& order, const Barred& barred,
             text::Diagnostics& diagnostics) {
  return Maker(kitchen, servings, order, barred, diagnostics).run(order);
}

} // namespace manciple::resolve
