#pragma once

#include "kitchen/offer.hpp"

#include <vector>

namespace manciple::purchase {

/// An offer's terms on days on which they do not change.
struct OfferTerms {
  measure::Rational each; ///< cents for a pack or a step
  bool known = true;      ///< else a guess, of which nothing is paid
  std::optional<kitchen::Deal> deal;
  text::Date from;
  text::Date until;
};

/// Before, during and after its sale, as far as that is within the days `first` to `last`.
std::vector<OfferTerms> terms_of(const kitchen::Offer& offer, text::Date first, text::Date last);

} // namespace manciple::purchase
