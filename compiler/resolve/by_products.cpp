#include "resolve/by_products.hpp"

#include "resolve/dates.hpp"
#include "resolve/eaters.hpp"
#include "resolve/errors.hpp"
#include "resolve/limits.hpp"
#include "resolve/makings.hpp"
#include "resolve/steps.hpp"
#include "resolve/uses.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace manciple::resolve {
namespace {

using kitchen::Kitchen;
using kitchen::Recipe;
using kitchen::Target;

// Until what is left of a dish has been eaten around and put away. Common practice, no source.
constexpr int clearing = 60; // minutes

// Foods that stand for each other are one; amounts are in terms of the first of them.
Target first_of(const Kitchen& kitchen, const Target& what) {
  const auto* food = std::get_if<foods::FoodId>(&what);
  return food == nullptr ? what : Target(kitchen.household.in_terms_of(*food).food);
}

} // namespace

const kitchen::GivesLine& given_as(const Kitchen& kitchen, const Resolved& resolved,
                                   const ByProduct& one) {
  return kitchen.recipe(resolved.making(one.of).recipe).gives[one.given];
}

std::optional<Rational> amount_given(const Kitchen& kitchen, const kitchen::GivesLine& given) {
  if (const foods::FoodId* food = given.what.food()) {
    const auto bought = foods::as_purchased(kitchen.food(*food), *given.what.amount);
    return bought ? std::optional(bought->amount) : std::nullopt;
  }
  text::Diagnostics said; // `makings` says it of every recipe that is made
  return times_of(kitchen, given.what, said);
}

Supplies::Supplies(const Kitchen& kitchen, const std::vector<RecipeId>& order, const Barred& barred)
    : kitchen_(kitchen), barred_(barred), place_(kitchen.recipes.size(), 0) {
  for (std::size_t i = 0; i < order.size(); ++i) {
    place_[static_cast<std::size_t>(order[i])] = i;
  }
  for (const Recipe& recipe : kitchen.recipes) {
    for (const kitchen::GivesLine& given : recipe.gives) {
      given_.insert(first_of(kitchen, given.what.target));
    }
  }
}

Rational Supplies::worth(const Target& what) const {
  const auto* food = std::get_if<foods::FoodId>(&what);
  return food == nullptr ? Rational(1) : kitchen_.household.in_terms_of(*food).worth;
}

bool Supplies::may_give(const Target& what) const {
  return given_.contains(first_of(kitchen_, what));
}

void Supplies::add(const Making& making) {
  const Recipe& recipe = kitchen_.recipe(making.recipe);
  const bool eaten =
      std::any_of(making.consumers.begin(), making.consumers.end(), [&](const Consumer& consumer) {
        return std::holds_alternative<DishRef>(consumer.who) && consumer.date == making.date;
      });
  for (std::size_t g = 0; g < recipe.gives.size(); ++g) {
    const auto amount = amount_given(kitchen_, recipe.gives[g]);
    if (!amount) {
      continue;
    }
    ByProduct one;
    one.of = making.id;
    one.given = g;
    one.amount = *amount * times_given(kitchen_, recipe, recipe.gives[g].what, making.times);
    one.date = making.date;
    if (const auto& keeps = recipe.gives[g].keeps_freezer) {
      one.frozen_until = making.date + std::chrono::days(*keeps);
    }
    all_.push_back(std::move(one));
    givers_.push_back({making.recipe, making.session, making.ready_by, eaten});
  }
}

bool Supplies::is_barred(const ByProduct& one, const Giver& giver, const Ask& ask) const {
  return barred_.all ||
         barred_.ones.contains({giver.recipe, one.date, one.given, ask.recipe, ask.date});
}

// Whether it is made before it is asked for. On one day, in which work can be put in any order,
// only what stands later in the order of need gives to what stands before, so that nothing waits
// for itself.
bool Supplies::is_there(const ByProduct& one, const Giver& giver, const Ask& ask) const {
  if (one.of == ask.by || one.date > ask.date) {
    return false;
  }
  if (one.date < ask.date) {
    return true;
  }
  if (place_[static_cast<std::size_t>(giver.recipe)] <=
      place_[static_cast<std::size_t>(ask.recipe)]) {
    return false;
  }
  const auto& sessions = kitchen_.plan->sessions;
  if (giver.session) {
    return ask.session ? *giver.session <= *ask.session
                       : sessions[*giver.session].until <= ask.begun;
  }
  if (ask.session) {
    return giver.ready_by + (giver.eaten ? clearing : 0) <= sessions[*ask.session].from;
  }
  return giver.eaten ? giver.ready_by + clearing <= ask.begun : giver.ready_by <= ask.clock;
}

Rational Supplies::take(const Target& what, const Rational& amount, const Ask& ask) {
  const Target first = first_of(kitchen_, what);
  const Rational each = worth(what);
  Rational taken = 0;
  std::vector<std::size_t> order;
  for (std::size_t i = 0; i < all_.size(); ++i) {
    order.push_back(i);
  }
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return all_[a].date < all_[b].date; });
  for (const std::size_t i : order) {
    ByProduct& one = all_[i];
    const kitchen::GivesLine& given = kitchen_.recipe(givers_[i].recipe).gives[one.given];
    if (taken >= amount || one.left() <= 0 || first_of(kitchen_, given.what.target) != first ||
        !is_there(one, givers_[i], ask) || is_barred(one, givers_[i], ask)) {
      continue;
    }
    const int keeps = given.keeps_unfrozen.value_or(0);
    const bool cool = gap_in_days(one.date, ask.date) <= keeps &&
                      gap_in_days(one.date, ask.last) <= std::min(keeps, ask.within);
    const bool frozen = !cool && ask.from_freezer && one.frozen_until && ask.date > one.date &&
                        ask.date <= *one.frozen_until;
    if (!cool && !frozen) {
      continue;
    }
    const Rational rate = worth(given.what.target) / each; // of what is asked for, by one of this
    const Rational part = std::min(one.left(), Rational((amount - taken) / rate));
    one.parts.push_back({ask.by, ask.ingredient, part, part * rate, ask.date, frozen});
    taken += part * rate;
  }
  return taken;
}

namespace {

// What may be in a by-product.
class Contents {
public:
  Contents(const Kitchen& kitchen, const Resolved& resolved)
      : kitchen_(kitchen), resolved_(resolved) {}

  Inside of(const ByProduct& one) {
    Inside out;
    std::set<const ByProduct*> seen;
    add(one, out, seen);
    return out;
  }

private:
  void add(const ByProduct& one, Inside& out, std::set<const ByProduct*>& seen) {
    if (!seen.insert(&one).second) {
      return;
    }
    const Making& making = resolved_.making(one.of);
    const kitchen::GivesLine& given = given_as(kitchen_, resolved_, one);
    for (const Target& line : given.of) {
      out.add(kitchen_, line);
    }
    if (!given.of.empty()) {
      return;
    }
    out.add(kitchen_, Target(making.recipe));
    // And in what other makings left over and went into it or into its parts.
    const std::set<MakingId> into = with_parts(one.of);
    for (const ByProduct& other : resolved_.by_products) {
      for (const ByProduct::Part& part : other.parts) {
        if (into.contains(part.into)) {
          add(other, out, seen);
        }
      }
    }
  }

  // What is made stands before its parts.
  std::set<MakingId> with_parts(MakingId id) const {
    std::set<MakingId> out{id};
    for (const Making& making : resolved_.makings) {
      for (const Consumer& consumer : making.consumers) {
        const auto* into = std::get_if<MakingId>(&consumer.who);
        if (into != nullptr && out.contains(*into)) {
          out.insert(making.id);
        }
      }
    }
    return out;
  }

  const Kitchen& kitchen_;
  const Resolved& resolved_;
};

std::set<const kitchen::Person*> eaters_of(const Kitchen& kitchen, const Resolved& resolved,
                                           MakingId id) {
  std::set<const kitchen::Person*> out;
  for (const DishShare& share : resolved.shares_of(id)) {
    for (const kitchen::Person* person : eaters(kitchen, share.dish)) {
      if (!person->limits.empty()) {
        out.insert(person);
      }
    }
  }
  return out;
}

} // namespace

Inside inside(const Kitchen& kitchen, const Resolved& resolved, const ByProduct& one) {
  return Contents(kitchen, resolved).of(one);
}

std::set<Barred::One> not_fit(const Kitchen& kitchen, const Resolved& resolved,
                              text::Diagnostics& why) {
  std::set<Barred::One> out;
  Contents contents(kitchen, resolved);
  const std::vector<Date> eaten = last_eaten(resolved.makings);
  for (const ByProduct& one : resolved.by_products) {
    const Making& of = resolved.making(one.of);
    const Recipe& giver = kitchen.recipe(of.recipe);
    const kitchen::GivesLine& given = given_as(kitchen, resolved, one);
    for (const ByProduct::Part& part : one.parts) {
      const Making& into = resolved.making(part.into);
      const Barred::One key{of.recipe, one.date, one.given, into.recipe, into.date};
      const bool keeps_dry = given.cool_place == foods::Place::pantry;
      const Date last = keeps_dry ? part.date : eaten[static_cast<std::size_t>(part.into)];
      if (!part.from_freezer && one.good_until && last > *one.good_until) {
        out.insert(key);
      }
      const Inside inside = contents.of(one);
      for (const kitchen::Person* person : eaters_of(kitchen, resolved, part.into)) {
        const auto harm = fit_for(kitchen, inside, *person).forbidden;
        if (harm && out.insert(key).second) {
          why.remark(errors::not_for_all, given.at,
                     fmt::format("what {} on {} leaves over does not go into {} on {}: {}",
                                 giver.name, text::print_day(one.date),
                                 kitchen.recipe(into.recipe).name, text::print_day(into.date),
                                 *harm),
                     "if only some of the ingredients are in what is left over, name them in 'of'");
        }
      }
    }
  }
  return out;
}

bool is_for_all(const Kitchen& kitchen, const Resolved& resolved, const ByProduct& one) {
  const Inside within = inside(kitchen, resolved, one);
  const auto may = [&](const kitchen::Person& person) {
    return !fit_for(kitchen, within, person).forbidden;
  };
  return std::all_of(kitchen.household.people.begin(), kitchen.household.people.end(), may) &&
         std::all_of(kitchen.plan->guests.begin(), kitchen.plan->guests.end(),
                     [&](const kitchen::Guest& guest) { return may(guest.person); });
}

void add_labels(const Kitchen& kitchen, Resolved& resolved) {
  Contents contents(kitchen, resolved);
  std::set<foods::FoodId> taken;
  for (const ByProduct& one : resolved.by_products) {
    for (const ByProduct::Part& part : one.parts) {
      const Recipe& into = kitchen.recipe(resolved.making(part.into).recipe);
      if (const foods::FoodId* food = into.ingredients[part.ingredient].food()) {
        taken.insert(*food);
      }
      const Inside inside = contents.of(one);
      for (const kitchen::Person* person : eaters_of(kitchen, resolved, part.into)) {
        for (LabelCheck& label : fit_for(kitchen, inside, *person).labels) {
          const bool known = std::any_of(
              resolved.labels.begin(), resolved.labels.end(), [&](const LabelCheck& other) {
                return other.food == label.food && other.what == label.what &&
                       other.person == label.person;
              });
          if (!known) {
            resolved.labels.push_back(std::move(label));
          }
        }
      }
    }
  }
  for (const Use& use : resolved.uses) {
    taken.erase(use.food); // some of it comes from elsewhere
  }
  std::erase_if(resolved.labels, [&](const LabelCheck& label) {
    return kitchen.food(label.food).given && taken.contains(label.food);
  });
  sort_labels(kitchen, resolved.labels);
}

} // namespace manciple::resolve
