#pragma once

#include "buying/model/model.hpp"
#include "kitchen/kitchen.hpp"
#include "resolve/resolve.hpp"

#include <optional>
#include <utility>
#include <vector>

/// From what a plan uses to what is bought: the list, and what each line of it is for.
namespace manciple::purchase {

using kitchen::Cents;
using measure::Rational;

/// A plan's purchases as a model for the solver, and what the model's numbers stand for.
struct Lowered {
  buying::Model model;
  /// The model's day 0: the plan's first day, or that of a trip before it.
  text::Date first;
  /// Money for one cent: 100, or 1 where sums would otherwise be beyond what is solved exactly.
  buying::Money per_cent = 100;
  /// The nearest cent.
  [[nodiscard]] Cents cents(buying::Money money) const {
    return measure::to_int64(measure::round(Rational(money) / per_cent));
  }
  /// By item. Of foods that stand for each other the first, in terms of which amounts are.
  buying::Table<buying::ItemId, foods::FoodId> foods;
  /// By item and offer: place in the shop's offers.
  buying::Table<buying::ItemId, buying::Table<buying::OfferId, std::size_t>> offers;
  /// By item and lot: place among what is on hand.
  buying::Table<buying::ItemId, buying::Table<buying::LotId, std::size_t>> lots;
  /// By item and demand: the uses, in order.
  buying::Table<buying::ItemId, buying::Table<buying::DemandId, std::vector<std::size_t>>> uses;
  /// By stop: trip and place among its candidates.
  buying::Table<buying::StopId, std::pair<std::size_t, std::size_t>> stops;
  /// By place and night: litres, in microlitres, taken by what is on hand and no item of the model.
  std::array<std::vector<buying::Volume>, buying::place_count> other_room;
};

/// Reports foods of which it is not known how long they keep, and sums beyond what is solved.
Lowered lower(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
              text::Diagnostics& diagnostics);

/// What the model says in amounts of a kitchen, and the other way: down for what is needed, up for
/// what a pack holds, so that rounding never asks for a pack more than exact arithmetic would.
Rational from_model(buying::Amount amount);
buying::Amount to_model_down(const Rational& amount);
buying::Amount to_model_up(const Rational& amount);

/// The place of what a use is for, for messages.
text::Span place_of(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                    const resolve::Use& use);

} // namespace manciple::purchase
