// A later count beside what should be there.
#include "history/house.hpp"

#include <algorithm>
#include <set>

namespace manciple::history {

using foods::FoodId;

std::map<FoodId, Difference> House::expected(Date date) const {
  std::map<FoodId, Difference> out;
  for (const Holding& one : there_) {
    out.try_emplace(one.food, Difference{date, one.food, 0, 0, 0, 0, {}}).first->second.expected +=
        one.amount;
  }
  return out;
}

// What a unit of what is there cost on average. Where nobody knows what was paid, it adds nothing,
// so that no money comes from nowhere.
void House::price(std::map<FoodId, Difference>& differences) const {
  std::map<FoodId, std::pair<Rational, Rational>> sums; // cents, and for how much
  std::set<FoodId> known;
  for (const Holding& one : there_) {
    sums[one.food].first += one.price ? Rational(*one.price * one.amount) : Rational(0);
    sums[one.food].second += one.amount;
    if (one.price) {
      known.insert(one.food);
    }
  }
  for (const FoodId food : known) {
    const auto& [paid, amount] = sums.at(food);
    if (amount > 0) {
      differences.at(food).price = paid / amount;
    }
  }
}

// What a session has cut for a dish to come has been eaten; a count has it still.
Rational House::cut_for_later(FoodId food, Date date) const {
  Rational out = 0;
  const auto uses = uses_.find(first_of(food));
  for (const std::size_t u : uses == uses_.end() ? std::vector<std::size_t>() : uses->second) {
    const resolve::Use& use = resolved_.uses[u];
    const auto* of = std::get_if<resolve::OfMaking>(&use.reason);
    const bool later = of != nullptr && resolved_.making(of->making).date >= date;
    out += use.food == food && use.cut_in && use.date < date && later ? use.amount : Rational(0);
  }
  return out;
}

void House::say_gone(const kitchen::Gone& gone, std::map<FoodId, Difference>& differences,
                     Date date) {
  const FoodId id = *gone.what.food();
  std::vector<Move> moves;
  (void)take(there_, {first_of(id), gone.amount * worth(id), 0, date, true, {}}, &moves);
  for (Move& one : moves) {
    one.kind = gone.thrown ? Move::Kind::thrown_away : Move::Kind::eaten;
    Difference& of = differences.at(one.food);
    (gone.thrown ? of.thrown_away : of.eaten) += one.amount;
    move(std::move(one));
  }
}

void House::correct(const kitchen::OnHand& count) {
  const Date date = *count.date;
  std::map<FoodId, Difference> differences = expected(date);
  for (const kitchen::Gone& gone : count.gone) {
    say_gone(gone, differences, date);
  }
  price(differences);
  there_.clear();
  bring(count.lots, date);
  std::map<FoodId, Rational> cut;
  for (Holding& one : there_) {
    const auto [of, fresh] =
        differences.try_emplace(one.food, Difference{date, one.food, 0, 0, 0, 0, {}});
    if (cut.find(one.food) == cut.end()) {
      cut[one.food] = cut_for_later(one.food, date);
    }
    const Rational more = one.amount - std::max(Rational(0), of->second.missing());
    const Rational mine = std::clamp(more, Rational(0), cut[one.food]);
    cut[one.food] -= mine;
    one.amount -= mine;
    one.price = of->second.price;
    of->second.counted += one.amount;
  }
  // What was there before the first count nobody knows: more of it has not been found.
  const bool began_unknown = !kitchen_.on_hand.date;
  std::vector<Difference> sorted;
  for (const auto& [food, of] : differences) {
    const Rational missing = of.missing();
    const auto cost = of.price ? std::optional(Rational(*of.price * abs(missing))) : std::nullopt;
    const Move::Kind more = began_unknown ? Move::Kind::counted : Move::Kind::found;
    move({missing > 0 ? Move::Kind::missing : more, date, food, abs(missing), cost});
    // What only a dish leaves over was not expected by anybody.
    const bool given = kitchen_.food(food).given;
    if (of.expected != of.counted && !given && (missing > 0 || !began_unknown)) {
      sorted.push_back(of);
    }
  }
  std::sort(sorted.begin(), sorted.end(), [&](const Difference& a, const Difference& b) {
    return kitchen_.food(a.food).name < kitchen_.food(b.food).name;
  });
  past_.differences.insert(past_.differences.end(), sorted.begin(), sorted.end());
}

} // namespace manciple::history
