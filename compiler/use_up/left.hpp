#pragma once

#include "purchase/shopping.hpp"

#include <optional>
#include <vector>

/// What a plan leaves over, and which recipes of the library use it.
namespace manciple::use_up {

using measure::Rational;
using text::Date;

/// Something in the house that no meal of the plan takes.
struct Left {
  foods::FoodId food{};
  Rational amount;               ///< as purchased, in the food's basis
  std::optional<Rational> worth; ///< what it would cost to buy again, in cents, where that is known
  Date since;                    ///< the day on which it comes home; of what is on hand, the first
  std::optional<Date> until;     ///< the last day on which it is good, where that is known
  bool opened = false;
  bool frozen = false;
};

/// All that is left, whatever it is: by the day until which it is good, then by name.
std::vector<Left> what_is_left(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                               const purchase::Shopping& shopping);

/// Whether it is worth a word: what one can see and eats, but no seasoning.
bool is_worth_a_word(const foods::Food& food, const Rational& amount);

/// Whether it should be used soon after a day: what is open or frozen, or does not keep for a month
/// from then. A tin on the shelf can wait.
bool is_urgent(const Left& left, Date after);

} // namespace manciple::use_up
