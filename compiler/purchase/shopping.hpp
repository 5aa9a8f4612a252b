#pragma once

#include "kitchen/kitchen.hpp"
#include "purchase/model.hpp"
#include "resolve/resolve.hpp"

#include <optional>
#include <vector>

/// From what is missing to what is bought: the list, and what each line of it is for.
namespace manciple::purchase {

using kitchen::Cents;
using measure::Rational;

/// The model's units (model.hpp) in those of a kitchen.
constexpr Money money_per_cent = 100;
constexpr std::int64_t micro = 1'000'000; ///< Amount per gram, millilitre or piece

/// One line of the list: so many packs of an offer on one visit.
struct Line {
  std::size_t visit = 0;
  foods::FoodId food{};
  std::size_t offer = 0; ///< of the visit's shop
  int packs = 0;         ///< or steps of the scale
  Cents cost = 0;        ///< as the till shows it, before tax
  Rational amount;       ///< as purchased, in the food's basis
  Rational to_freeze;    ///< of it, on the day it is bought
  Rational kept;         ///< left at the plan's end and still good
  Rational wasted;       ///< past its keeping time before it is used
};

/// A stop that is made.
struct StopMade {
  std::size_t trip = 0;
  kitchen::ShopId shop{};
  text::Date date;
  Cents goods = 0; ///< the sum of its lines
  Cents tax = 0;
  Cents off = 0;       ///< reduction for what is spent
  Cents credit = 0;    ///< store credit used
  Cents cash_back = 0; ///< comes back later
  Cents stop_cost = 0; ///< what making the stop is worth; not paid at the till
  [[nodiscard]] Cents paid() const { return goods + tax - off - credit; }
};

/// So much of a line is for a use.
struct Supply {
  std::size_t line = 0;
  std::size_t use = 0;
  Rational amount; ///< of the line's food
  Rational covers; ///< of the use's food: another one where a substitute was bought
  bool frozen = false;
};

/// What a model's good stands for: the food, and which uses its demands are.
struct Lowered {
  Model model;
  /// By good. Of foods that stand for each other the first, in terms of which amounts are.
  std::vector<foods::FoodId> foods;
  std::vector<std::vector<std::size_t>> offers; ///< by good and offer: place in the shop's offers
  std::vector<std::vector<std::vector<std::size_t>>>
      uses; ///< by good and demand: the uses, in order
  std::vector<std::pair<std::size_t, std::size_t>>
      stops; ///< by stop: trip and place among its candidates
};

struct Shopping {
  Lowered lowered;
  Solution solution;
  std::vector<StopMade> visits;
  std::vector<Line> lines;      ///< by visit, then in the shop's walking order, then by name
  std::vector<Supply> supplies; ///< by use
  Cents paid = 0;
  Cents cash_back = 0;
  Cents stop_costs = 0;
};

/// The plan's purchases as a model for the solver.
Lowered lower(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
              text::Diagnostics& diagnostics);

/// Seconds that the search for the cheapest list may take, unless said otherwise.
constexpr double usual_search = 2;

/// What to buy. A demand that cannot be met is an error at the line that asks for it; a list that
/// is not proven to be the cheapest in the time given is a warning that says by how much at most.
Shopping buy(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
             text::Diagnostics& diagnostics, double seconds = usual_search);

/// The place of what a use is for, for messages.
text::Span place_of(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                    const resolve::Use& use);

} // namespace manciple::purchase
