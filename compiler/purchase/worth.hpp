#pragma once

#include "purchase/shopping.hpp"

#include <set>
#include <vector>

namespace manciple::purchase {

/// Money by what it is for, in cents, exact.
struct Parts {
  std::vector<std::vector<Rational>> dishes; ///< by meal and dish, leftovers at their own meal
  std::vector<Rational> staples;             ///< by staple of the plan
  std::vector<Rational> extras;              ///< by extra of the plan
  Rational left_over;                        ///< cooked, and for no dish of the plan
  Rational kept;                             ///< left at the end and good
  Rational wasted;

  [[nodiscard]] Rational total() const;
};

/// Where the money goes. What is paid for goods at all stops is the sum of all parts: each line is
/// shared out by amount to its uses, and what no use takes is left or wasted. What comes from the
/// house has been paid before and counts nothing.
struct Worth : Parts {
  /// The same with what was in the house, at what it would cost to buy again
  /// (`replacement_price`); what is bought counts as it is paid, and where that is not known, as
  /// what was in the house. The parts make up what is paid for goods and what the house held.
  Parts replaced;
  std::vector<std::optional<Rational>> lines; ///< of it, by line of the list; absent: not known
  std::vector<std::optional<Rational>> lots;  ///< and by lot on hand
  /// Foods that are in a dish and of which no price is known: they count nothing in `replaced`.
  std::vector<std::vector<std::set<foods::FoodId>>> unknown_in; ///< by meal and dish
  std::set<foods::FoodId> unknown;                              ///< in any part
};

Worth worth(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
            const Shopping& shopping);

/// Whether what is left of a lot on hand, of which the shopping says nothing, is past its date
/// when the plan ends.
bool is_past(const kitchen::StockLot& lot, const kitchen::Plan& plan);

} // namespace manciple::purchase
