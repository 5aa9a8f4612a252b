#pragma once

#include "kitchen/kitchen.hpp"
#include "resolve/resolve.hpp"

#include <cstdint>
#include <optional>
#include <vector>

/// What has been done of a plan, and what is left to do: what was bought is in receipts, what was
/// eaten follows from the plan and its `changes`.
namespace manciple::history {

using kitchen::Cents;
using measure::Rational;
using text::Date;

/// Something in the house.
struct Holding {
  foods::FoodId food{};
  Rational amount; ///< as purchased, in the food's basis
  foods::Place place{};
  std::optional<Date> use_by;
  std::optional<Date> opened;
  bool thawed = false;
  bool hard = false;             ///< fruit that has still to ripen
  bool cut = false;              ///< for a dish to come, in a session; it counts as eaten
  bool given = false;            ///< left over from a dish: of what that was made of
  Rational pack;                 ///< of one that is closed; 0: loose, or open
  Date since;                    ///< the day on which it came home, or was counted
  std::optional<Rational> price; ///< what was paid for a unit, in cents
  kitchen::Ingredient what;      ///< as the count or the receipt writes it
};

/// An amount that came into the house or went out of it. What a later count has less or more than
/// there should be, and nobody says why, is `missing` or `found`.
struct Move {
  enum class Kind : std::uint8_t { counted, bought, found, eaten, thrown_away, missing };
  Kind kind{};
  Date date;
  foods::FoodId food{};
  Rational amount;
  /// What was paid for it, in cents; absent where no receipt says.
  std::optional<Rational> cost = {};
  std::optional<std::size_t> use = {}; ///< of the plan as a whole, for which it was eaten
};

/// What a later count has of a food, against what should be there. What is less and neither eaten
/// nor thrown away is missing.
struct Difference {
  Date date;
  foods::FoodId food{};
  Rational expected;
  Rational counted;
  Rational eaten; ///< as the count says
  Rational thrown_away;
  std::optional<Rational> price; ///< what was paid for a unit, in cents, as far as that is known

  /// More than nothing: missing; less: found.
  [[nodiscard]] Rational missing() const { return expected - eaten - thrown_away - counted; }
};

/// What was used although nothing of it was there.
struct NotThere {
  std::size_t use = 0; ///< of those that the plan as a whole has
  Rational amount;     ///< of its food
};

/// What has been, up to the morning of a day.
struct Past {
  Date until;
  /// In the house on that morning, and what was bought on that day.
  std::vector<Holding> there;
  std::vector<kitchen::MadeLot> made;
  /// Per food, what was counted, bought and found is what was eaten, thrown away, is missing and is
  /// there, but for what dishes left over.
  std::vector<Move> moves;
  std::vector<Difference> differences; ///< by count, then by the food's name
  std::vector<NotThere> not_there;
  std::vector<std::size_t> still_to_buy; ///< of the plan's `extra`: due, and never bought
  Cents cash_back = 0;                   ///< earned with them
  Cents paid = 0;                        ///< by the receipts of the plan's days
};

/// Whether a receipt is of a plan's own days, up to one of them: its budget has paid it. Of a plan
/// as a whole.
bool is_of_plan(const kitchen::Receipt& receipt, const kitchen::Plan& plan, Date until);

/// Goes through the days from the count that is on hand on, and corrects what is there by later
/// ones among `counts`. What a plan uses is taken as the list has it: what
/// is open first, then what goes off first, then from the freezer. What was bought and will be
/// eaten too late otherwise was frozen on its day, unless the receipt says; what is past its last
/// day was thrown away.
Past past(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved, Date until,
          text::Diagnostics& diagnostics);

/// A kitchen of which only what is to come is planned: meals, trips and sessions from that day on,
/// what is there as what is on hand.
kitchen::Kitchen ahead(kitchen::Kitchen kitchen, const Past& past);

} // namespace manciple::history
