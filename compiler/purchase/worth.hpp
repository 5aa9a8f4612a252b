#pragma once

#include "purchase/shopping.hpp"

#include <vector>

namespace manciple::purchase {

/// Where the money goes, in cents, exact. What is paid for goods at all stops is the sum of all
/// parts: each line is shared out by amount to its uses, and what no use takes is left or wasted.
/// What comes from the house has been paid before and counts nothing.
struct Worth {
  std::vector<std::vector<Rational>> dishes; ///< by meal and dish, leftovers at their own meal
  std::vector<Rational> staples;             ///< by staple of the plan
  std::vector<Rational> extras;              ///< by extra of the plan
  Rational left_over;                        ///< cooked, and for no dish of the plan
  Rational kept;                             ///< left at the end and good
  Rational wasted;

  [[nodiscard]] Rational total() const;
};

Worth worth(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
            const Shopping& shopping);

} // namespace manciple::purchase
