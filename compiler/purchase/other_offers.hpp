#pragma once

#include "purchase/shopping.hpp"

#include <vector>

namespace manciple::purchase {

/// A food bought by one offer alone, wherever its shop is stopped at, everything else decided anew.
struct OtherWay {
  kitchen::ShopId shop{};
  std::size_t offer = 0;     ///< of the shop
  bool on_the_list = false;  ///< the list has it (perhaps with others)
  std::optional<Cents> more; ///< than the list in all; none if it cannot be had in time so
  Cents spent = 0;           ///< on the food at the tills, tax and cash back counted in
  Cents stops_more = 0;      ///< what stops are worth, against those of the list
  Rational wasted;           ///< of the food, in its basis
  bool proven = true;        ///< `more` is exact
};

/// Every offer of a food that a trip could reach, the best way first, then what cannot be done.
std::vector<OtherWay> other_offers(const kitchen::Kitchen& kitchen, const Shopping& shopping,
                                   foods::FoodId food);

} // namespace manciple::purchase
