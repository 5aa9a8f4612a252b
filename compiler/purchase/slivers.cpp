#include "purchase/slivers.hpp"

#include "purchase/lower.hpp"
#include "resolve/steps.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <tuple>

namespace manciple::purchase {
namespace {

using measure::Rational;

constexpr int pieces_differ = 5;

// What is from stock, which lot or purchase it is of, and what of it is frozen.
using Lot = std::tuple<bool, std::size_t, bool>;
Lot lot_of(const Portion& one) {
  return {one.of.stock, one.of.of, one.of.frozen};
}

// By use and lot.
using Sums = std::map<std::pair<std::size_t, Lot>, Portion>;
Sums sums_of(const std::vector<Portion>& portions) {
  Sums sums;
  for (const Portion& one : portions) {
    Portion& sum =
        sums.try_emplace({one.use, lot_of(one)}, Portion{one.of, one.use, 0, 0}).first->second;
    sum.taken += one.taken;
    sum.covers += one.covers;
  }
  return sums;
}

// The first portion of the lot of which a use has most.
Portion* most_of(std::vector<Portion>& portions, const Sums& sums, std::size_t use) {
  Portion* most = nullptr;
  for (Portion& one : portions) {
    if (one.use == use && (most == nullptr || sums.at({use, lot_of(one)}).taken >
                                                  sums.at({use, lot_of(*most)}).taken)) {
      most = &one;
    }
  }
  return most;
}

// What is less than that of a piece of what a use takes is a sliver; in terms of the item.
std::optional<Rational> sliver_of(const kitchen::Kitchen& kitchen,
                                  const resolve::Resolved& resolved, std::size_t use) {
  const auto* of = std::get_if<resolve::OfMaking>(&resolved.uses[use].reason);
  if (of == nullptr) {
    return std::nullopt;
  }
  const kitchen::Recipe& recipe = kitchen.recipe(resolved.making(of->making).recipe);
  const auto piece = resolve::piece_of_produce(kitchen, recipe.ingredients[of->ingredient]);
  return piece
             ? std::optional(Rational(*piece / pieces_differ *
                                      kitchen.household.in_terms_of(resolved.uses[use].food).worth))
             : std::nullopt;
}

// Something has more than a sliver of the same purchase.
bool serves_more(const buying::ItemSolution& item, const Sums& sums, const Portion& sum,
                 const Rational& sliver) {
  return std::any_of(sums.begin(), sums.end(),
                     [&](const auto& other) {
                       return !other.second.of.stock && other.second.of.of == sum.of.of &&
                              other.second.taken >= sliver;
                     }) ||
         std::any_of(item.servings.begin(), item.servings.end(), [&](const auto& other) {
           return !other.stock && other.of == sum.of.of && other.demand != sum.of.demand &&
                  from_model(other.amount) >= sliver;
         });
}

} // namespace

void leave_slivers(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                   const buying::ItemSolution& item, std::vector<Portion>& portions) {
  if (portions.size() < 2) {
    return;
  }
  const Sums sums = sums_of(portions);
  for (const auto& [key, sum] : sums) {
    Portion* const most = most_of(portions, sums, sum.use);
    if (most == nullptr || lot_of(*most) == key.second || sum.of.stock) {
      continue;
    }
    const auto sliver = sliver_of(kitchen, resolved, sum.use);
    if (!sliver || sum.taken >= *sliver || !serves_more(item, sums, sum, *sliver)) {
      continue;
    }
    most->covers += sum.covers;
    std::erase_if(portions, [&, of = key](const Portion& one) {
      return std::pair(one.use, lot_of(one)) == of;
    });
  }
}

} // namespace manciple::purchase
