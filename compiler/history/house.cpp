#include "history/house.hpp"

#include "foods/counted.hpp"
#include "foods/ripening.hpp"
#include "purchase/lives.hpp"
#include "purchase/rules.hpp"

#include <algorithm>
#include <tuple>

namespace manciple::history {
namespace {

using foods::Food;
using foods::FoodId;
using foods::Place;

// How long it is good once it is open, for what comes in one pack. No plan that ends before then
// leaves it out.
std::optional<int> once_open(const Food& food) {
  return purchase::keeping_of(food, purchase::longer_than_any_plan).life.opened;
}

Rational pack_of(const kitchen::Ingredient& what, const Rational& amount) {
  return what.containers && *what.containers > 0 ? Rational(amount / *what.containers) : amount;
}

// What was paid for a part of it.
std::optional<Rational> cost_of(const Holding& one, const Rational& amount) {
  return one.price ? std::optional(Rational(*one.price * amount)) : std::nullopt;
}

bool is_bought_frozen(const Food& food) {
  return food.stored == Place::freezer;
}

} // namespace

House::House(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved, Date until,
             Past& past)
    : kitchen_(kitchen), resolved_(resolved), until_(until), past_(past) {
  for (std::size_t u = 0; u < resolved.uses.size(); ++u) {
    uses_[first_of(resolved.uses[u].food)].push_back(u);
  }
}

void House::move(Move move) {
  if (move.amount > 0) {
    past_.moves.push_back(std::move(move));
  }
}

void House::count(Date date) {
  bring(kitchen_.on_hand.lots, date);
  for (const Holding& one : there_) {
    move({Move::Kind::counted, date, one.food, one.amount});
  }
}

void House::bring(const std::vector<kitchen::StockLot>& lots, Date date) {
  for (const kitchen::StockLot& lot : lots) {
    Holding one;
    one.food = lot.food();
    one.amount = lot.amount;
    one.place = lot.place;
    one.use_by = lot.use_by;
    one.opened = lot.opened;
    one.thawed = lot.thawed;
    one.hard = lot.hard;
    one.since = date;
    one.what = lot.what;
    const bool closed = !lot.opened && lot.place != Place::freezer;
    one.pack =
        closed && once_open(kitchen_.food(one.food)) ? pack_of(lot.what, lot.amount) : Rational(0);
    there_.push_back(std::move(one));
  }
}

void House::morning(Date date) {
  for (const Holding& one : there_) {
    if (one.use_by && *one.use_by < date) {
      move({Move::Kind::thrown_away, *one.use_by + std::chrono::days(1), one.food, one.amount,
            cost_of(one, one.amount)});
    }
  }
  std::erase_if(there_, [&](const Holding& one) {
    return (one.use_by && *one.use_by < date) || one.amount == 0;
  });
}

void House::bring_home(const kitchen::Receipt& receipt, int clock) {
  std::vector<std::size_t> came;
  for (const kitchen::Bought& line : receipt.bought) {
    const FoodId id = *line.what.food();
    const Food& food = kitchen_.food(id);
    Holding one;
    one.food = id;
    one.amount = line.amount;
    one.place = food.is_household() ? food.stored : food.keeps.best_place(food.stored);
    one.use_by = line.use_by;
    if (const auto days = foods::keeps_from_shop(food); days && !one.use_by) {
      one.use_by = receipt.date + std::chrono::days(*days);
    }
    one.pack = once_open(food) ? pack_of(line.what, line.amount) : Rational(0);
    one.since = receipt.date;
    one.what = line.what;
    if (line.paid && line.amount > 0) {
      one.price = Rational(*line.paid) / line.amount;
    }
    move({Move::Kind::bought, receipt.date, id, one.amount, cost_of(one, one.amount)});
    if (one.amount > 0) {
      came.push_back(there_.size());
      there_.push_back(std::move(one));
    }
  }
  // What comes home on the day from which is planned is frozen or not as the plan says.
  std::size_t next = 0;
  for (const kitchen::Bought& line : receipt.bought) {
    if (line.amount == 0) {
      continue;
    }
    const std::size_t at = came[next++];
    const Rational frozen = line.frozen             ? *line.frozen
                            : receipt.date < until_ ? eaten_too_late(at, receipt.date, clock)
                                                    : Rational(0);
    freeze(at, frozen, receipt.date);
  }
}

// Days that it keeps frozen from now on, if it may be frozen: what has just been opened may be
// portioned and frozen, whatever it is, if it bears that.
std::optional<int> House::freezes(const Holding& holding) const {
  if (holding.place == Place::freezer || holding.thawed) {
    return std::nullopt;
  }
  const auto life =
      purchase::keeping_of(kitchen_.food(holding.food), purchase::longer_than_any_plan).life;
  return holding.opened ? life.refrozen : life.frozen;
}

void House::freeze(std::size_t index, const Rational& amount, Date date) {
  if (amount <= 0) {
    return;
  }
  const Food& food = kitchen_.food(there_[index].food);
  const auto days = freezes(there_[index]);
  const int keeps = days                 ? *days
                    : food.keeps.freezer ? food.keeps.freezer->value
                                         : purchase::longer_than_any_plan;
  Holding frozen = there_[index];
  frozen.amount = amount;
  frozen.place = Place::freezer;
  frozen.use_by = date + std::chrono::days(keeps);
  frozen.pack = 0;
  there_[index].amount -= amount;
  there_.push_back(std::move(frozen));
}

House::Want House::want_of(const resolve::Use& use) const {
  const Rational each = worth(use.food);
  Want want{first_of(use.food), use.amount * each, use.give * each, use.date, !use.fresh, {}};
  if (use.containers && *use.containers > 0) {
    want.container = want.amount / *use.containers;
  }
  return want;
}

// What may serve, as it is taken: what is open, then what goes off first, then from the freezer.
std::vector<std::size_t> House::in_order(const std::vector<Holding>& from, const Want& want) const {
  std::vector<std::size_t> out;
  const auto rank = [&](const Holding& one) {
    const bool frozen = one.place == Place::freezer && !is_bought_frozen(kitchen_.food(one.food));
    return std::tuple(frozen, !one.opened, !one.use_by, one.use_by.value_or(want.date), one.since);
  };
  for (std::size_t i = 0; i < from.size(); ++i) {
    const Holding& one = from[i];
    const bool frozen = std::get<0>(rank(one));
    const bool good = !one.use_by || *one.use_by >= want.date;
    if (first_of(one.food) == want.first && one.amount > 0 && good &&
        (want.from_freezer || !frozen)) {
      out.push_back(i);
    }
  }
  std::stable_sort(out.begin(), out.end(),
                   [&](std::size_t a, std::size_t b) { return rank(from[a]) < rank(from[b]); });
  return out;
}

// Gives how much of what is wanted there was. A pack whose opening starts a clock is opened.
Rational House::take(std::vector<Holding>& from, const Want& want, std::vector<Move>* moves) const {
  // Crumbs are eaten with the rest.
  const auto eat_crumbs = [&](Holding& rest) {
    const Food& food = kitchen_.food(rest.food);
    if (rest.amount > 0 && food.department != foods::Department::spices &&
        !foods::is_seen(food, rest.amount)) {
      if (moves != nullptr) {
        moves->push_back({Move::Kind::eaten, want.date, rest.food, rest.amount,
                          cost_of(rest, rest.amount), want.use});
      }
      rest.amount = 0;
    }
  };
  Rational left = want.amount;
  for (const std::size_t i : in_order(from, want)) {
    const bool closed = from[i].pack > 0;
    while (left > (closed ? want.give : Rational(0)) && from[i].amount > 0) {
      const Rational each = worth(from[i].food);
      const Rational one = closed ? std::min(from[i].pack, from[i].amount) : from[i].amount;
      // A can is a can, whatever its size within reason.
      const Rational pack = one * each;
      const bool container = closed && want.container && left >= *want.container &&
                             purchase::is_usual_container(pack, *want.container);
      const Rational served = container ? *want.container : std::min(left, pack);
      const Rational taken = container ? one : Rational(served / each);
      left -= served;
      from[i].amount -= taken;
      if (moves != nullptr) {
        moves->push_back(
            {Move::Kind::eaten, want.date, from[i].food, taken, cost_of(from[i], taken), want.use});
      }
      if (closed && taken < one) {
        Holding open = from[i];
        open.amount = one - taken;
        open.pack = 0;
        open.opened = want.date;
        const auto days = once_open(kitchen_.food(open.food));
        const Date good =
            want.date + std::chrono::days(days.value_or(purchase::longer_than_any_plan));
        open.use_by = open.use_by ? std::min(*open.use_by, good) : good;
        open.what.containers.reset();
        from[i].amount -= open.amount;
        eat_crumbs(open);
        from.push_back(std::move(open));
      }
    }
    eat_crumbs(from[i]);
  }
  return want.amount - left;
}

// How much of what has just come home nobody can eat while it is good unfrozen: what uses to come
// would take of it later, and what is left over.
Rational House::eaten_too_late(std::size_t index, Date date, int clock) const {
  const Holding& mine = there_[index];
  const Food& food = kitchen_.food(mine.food);
  const auto frozen_days = freezes(mine);
  if (!frozen_days || !mine.use_by) {
    return 0;
  }
  std::vector<Holding> left = there_;
  Rational late = 0;
  const auto uses = uses_.find(first_of(mine.food));
  for (const std::size_t u : uses == uses_.end() ? std::vector<std::size_t>() : uses->second) {
    const resolve::Use& use = resolved_.uses[u];
    if (std::pair(use.date, use.clock) < std::pair(date, clock)) {
      continue;
    }
    Want want = want_of(use);
    want.amount -= take(left, want, nullptr);
    const bool frozen =
        want.from_freezer && want.amount > 0 && use.date <= date + std::chrono::days(*frozen_days);
    if (frozen) {
      const Rational part = std::min(left[index].amount, Rational(want.amount / worth(mine.food)));
      left[index].amount -= part;
      late += part;
    }
  }
  const bool spoils =
      !mine.opened && *mine.use_by < kitchen_.plan->until + std::chrono::days(purchase::kept_days);
  late += spoils && !food.freezes_for_cooking ? left[index].amount : Rational(0);
  const bool weighed = foods::basis(food) == measure::Dimension::mass;
  return weighed && late < purchase::least_frozen ? Rational(0) : late;
}

// What a use leaves for those after it: where what is there is nearly enough for all of them, each
// takes a little less, as far as it can do without.
Rational House::spared(std::size_t index) const {
  const resolve::Use& use = resolved_.uses[index];
  const FoodId first = first_of(use.food);
  Rational there = 0;
  for (const Holding& one : there_) {
    there += first_of(one.food) == first ? Rational(one.amount * worth(one.food)) : Rational(0);
  }
  Rational needed = 0;
  Rational give = 0;
  for (const std::size_t u : uses_.at(first)) {
    const resolve::Use& other = resolved_.uses[u];
    if (std::tuple(other.date, other.clock, u) >= std::tuple(use.date, use.clock, index)) {
      needed += other.amount * worth(other.food);
      give += other.give * worth(other.food);
    }
  }
  const Rational short_by = needed - there;
  return short_by > 0 && short_by <= give ? Rational(use.give * worth(use.food) * short_by / give)
                                          : Rational(0);
}

void House::use(std::size_t index) {
  const resolve::Use& use = resolved_.uses[index];
  Want want = want_of(use);
  want.use = index;
  const Rational needed = want.amount - want.give;
  const Rational less = want.container ? Rational(0) : spared(index);
  want.amount -= less;
  want.give -= less;
  const std::size_t before = there_.size();
  const Rational taken = take(there_, want, &past_.moves);
  for (std::size_t opened = before, all = there_.size(); opened < all; ++opened) {
    freeze(opened, eaten_too_late(opened, use.date, use.clock + 1), use.date);
  }
  if (taken >= needed) {
    return;
  }
  if (const auto* of = std::get_if<resolve::OfExtra>(&use.reason)) {
    past_.still_to_buy.push_back(of->extra);
  } else {
    past_.not_there.push_back({index, (want.amount - taken) / worth(use.food)});
  }
}

void House::change(const kitchen::Change& change) {
  const FoodId id = *change.what.food();
  const auto amount = foods::as_purchased(kitchen_.food(id), *change.what.amount);
  if (!amount) {
    return; // said when it was read
  }
  const Want want{first_of(id), amount->amount * worth(id), 0, change.date, true, {}};
  std::vector<Move> moves;
  (void)take(there_, want, &moves);
  for (Move& one : moves) {
    one.kind = change.thrown ? Move::Kind::thrown_away : Move::Kind::eaten;
    move(std::move(one));
  }
}

std::vector<Holding> House::there() const {
  std::vector<Holding> out = there_;
  std::erase_if(out, [](const Holding& one) { return one.amount == 0; });
  return out;
}

} // namespace manciple::history
