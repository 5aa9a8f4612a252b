#pragma once

#include "buying/solve.hpp"
#include "purchase/lower.hpp"

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace manciple::purchase {

/// One line of the list: so many packs of an offer on one visit.
struct Line {
  std::size_t visit = 0;
  foods::FoodId food{};
  std::size_t offer = 0;     ///< of the visit's shop
  int packs = 0;             ///< or steps of the scale
  std::optional<Cents> cost; ///< as the till shows it, before tax; absent where it is not known
  Cents tax = 0;
  Rational amount;    ///< as purchased, in the food's basis
  Rational to_freeze; ///< of it, on the day on which it comes home
  Rational kept;      ///< left at the plan's end and still good
  Rational wasted;    ///< past its keeping time before it is used
};

/// A stop that is made.
struct StopMade {
  std::size_t trip = 0;
  kitchen::ShopId shop{};
  text::Date date;
  int home = 0;    ///< minutes from midnight when what is bought can be used
  Cents goods = 0; ///< the sum of its lines
  Cents tax = 0;
  Cents off = 0;       ///< reduction for what is spent
  Cents credit = 0;    ///< store credit used
  Cents cash_back = 0; ///< comes back later
  Cents stop_cost = 0; ///< what making the stop is worth; not paid at the till
  [[nodiscard]] Cents paid() const { return goods + tax - off - credit; }
};

/// How a part of what is held is used.
struct Served {
  std::size_t use = 0;
  Rational amount; ///< of the food that serves it
  Rational covers; ///< of the use's food: another one where a substitute serves
  bool frozen = false;
  text::Date frozen_on;                ///< if it is
  std::optional<text::Date> opened_on; ///< of food in packs whose opening starts a clock

protected:
  [[nodiscard]] bool is_alike(const Served& other) const {
    return use == other.use && frozen == other.frozen && frozen_on == other.frozen_on &&
           opened_on == other.opened_on;
  }
};

/// So much of a line is for a use.
struct Supply : Served {
  std::size_t line = 0;
  [[nodiscard]] bool is_more_of(const Supply& other) const {
    return is_alike(other) && line == other.line;
  }
};

/// So much of a lot on hand is for a use. What stands in the fridge or pantry may be `frozen`
/// first, on the plan's first day.
struct StockUse : Served {
  std::size_t lot = 0;
  [[nodiscard]] bool is_more_of(const StockUse& other) const {
    return is_alike(other) && lot == other.lot;
  }
};

/// What becomes of the rest of a lot on hand; nothing is said of one that is past its last day or
/// of a food that the plan does not use.
struct StockRest {
  std::size_t lot = 0;
  Rational kept;
  Rational wasted;
};

/// What no use takes of a line or of a lot on hand: a part of it in one state.
struct Rest {
  bool stock = false;
  std::size_t of = 0;              ///< a lot on hand, else a line
  Rational amount;                 ///< of its food
  std::optional<text::Date> until; ///< of what is thrown away: the last day on which it is good
  bool frozen = false;             ///< and kept so
  std::optional<text::Date> opened_on;
};

/// What a use goes without.
struct Shortfall {
  std::size_t use = 0;
  Rational lacking; ///< within what the dish can do without
  Rational missing; ///< beyond that: still to be found

  /// Who has to go and find it takes what the dish asks for.
  [[nodiscard]] Rational to_find() const {
    return missing > 0 ? Rational(missing + lacking) : Rational(0);
  }
};

/// The terms of what the list minimises, in cents (exact but for the model's rounding): see
/// DEVELOPERS.md.
struct Account {
  Rational prices;
  Rational tax;
  Rational cash_back;
  Rational preference;
  Rational unpriced; ///< what packs without a known price count as
  Rational reductions;
  Rational credit;
  Rational stops;
  Rational wasted;
  Rational kept;
  Rational lacking;
  Rational missing;
  Rational handling;
  Rational total;
};

struct Shopping {
  /// The model and its solution: for purchase alone, which says below what they mean.
  Lowered lowered;
  buying::Solution solution;
  /// The first day that counts: the plan's, or that of a trip before it.
  text::Date first;
  /// What is bought or held, once each; of foods that stand for each other, the first.
  std::vector<foods::FoodId> foods;
  std::vector<StopMade> visits;
  std::vector<Line> lines;           ///< by visit, then in the shop's walking order, then by name
  std::vector<Supply> supplies;      ///< by use
  std::vector<StockUse> from_stock;  ///< by use
  std::vector<StockRest> stock_left; ///< by lot
  std::vector<Rest> rests;           ///< by food
  std::vector<Shortfall> shortfalls; ///< by use
  /// Litres taken on each night of the plan, by place; empty for places without limit.
  std::map<foods::Place, std::vector<Rational>> litres;
  Account account;
  Cents paid = 0;
  Cents cash_back = 0;
  Cents stop_costs = 0;

  /// How much of a lot on hand the plan's uses take.
  [[nodiscard]] Rational taken_of_lot(std::size_t lot) const {
    Rational taken;
    for (const StockUse& used : from_stock) {
      taken += used.lot == lot ? used.amount : Rational(0);
    }
    return taken;
  }
  [[nodiscard]] bool proven() const { return solution.status == buying::Status::optimal; }
  /// Whether someone ended the search before it had proven anything better.
  [[nodiscard]] bool stopped_by_hand() const { return solution.interrupted && !proven(); }
};

/// What a lot on hand is: another food than the use's, where it stands for it.
foods::FoodId food_of(const kitchen::Kitchen& kitchen, const StockUse& used);

/// How long to look for the cheapest list.
struct Search {
  double effort = 1; ///< of the usual work
  std::function<bool()> stop;
  std::function<void(Cents best, Cents bound, const kitchen::Currency& currency)> progress;
};

/// What to buy. What cannot be had, or not in time, is a shortfall and a warning at the line that
/// asks for it; a list that is not proven to be the cheapest is a warning that says by how much at
/// most.
Shopping buy(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
             text::Diagnostics& diagnostics, const Search& search = {});

} // namespace manciple::purchase
