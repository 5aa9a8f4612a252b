#include "purchase/offer_terms.hpp"

#include <algorithm>

namespace manciple::purchase {

std::vector<OfferTerms> terms_of(const kitchen::Offer& offer, text::Date first, text::Date last) {
  const auto between = [&](text::Date from, text::Date to) {
    OfferTerms terms{offer.each(from).value_or(offer.guess), offer.each(from).has_value(),
                     offer.deal_on(from), from, to};
    terms.from = std::max(terms.from, offer.from.value_or(first));
    terms.until = std::min(terms.until, offer.until.value_or(last));
    return terms;
  };
  std::vector<OfferTerms> all;
  if (!offer.sale) {
    all.push_back(between(first, last));
  } else {
    const text::Date on_sale = std::max(first, offer.sale->from.value_or(first));
    const text::Date until = std::min(last, offer.sale->until.value_or(last));
    all.push_back(between(first, on_sale - std::chrono::days(1)));
    all.push_back(between(on_sale, until));
    all.push_back(between(until + std::chrono::days(1), last));
  }
  std::erase_if(all, [](const OfferTerms& terms) { return terms.until < terms.from; });
  return all;
}

} // namespace manciple::purchase
