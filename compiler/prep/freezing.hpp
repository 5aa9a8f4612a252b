#pragma once

#include "prep/prep.hpp"

namespace manciple::prep {

/// A bag of what is frozen.
struct Bag {
  Rational amount;                ///< as purchased, in the food's basis
  std::optional<std::size_t> use; ///< the first that it comes out for; none for what is left over
  Date frozen_on;                 ///< it goes into the freezer then
};

/// What goes into the freezer at home of a line or of a lot on hand, in meal-size bags: one for
/// each use, a week's for a staple, one for what is left over.
struct Freezing {
  foods::FoodId food{};
  std::optional<Date> bought; ///< none: it was on hand
  std::vector<Bag> bags;

  [[nodiscard]] std::vector<Bag> on(Date day) const;
};

/// The lines in their order, then the lots.
std::vector<Freezing> freezing(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                               const purchase::Shopping& shopping);

/// What is in all of the bags together, in the food's basis.
Rational amount_of(const std::vector<Bag>& bags);

/// What is done with what goes into the freezer in these bags: meat is portioned, citrus juiced.
std::string into_freezer(const kitchen::Kitchen& kitchen, const foods::Food& food,
                         const std::vector<Bag>& bags);

} // namespace manciple::prep
