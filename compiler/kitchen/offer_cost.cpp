#include "kitchen/offer.hpp"

#include <algorithm>

namespace manciple::kitchen {

std::optional<Cents> Offer::cost(int packs, text::Date day) const {
  const std::optional<Rational> exact = exact_cost(packs, day);
  return exact ? std::optional<Cents>(measure::to_int64(measure::round(*exact))) : std::nullopt;
}

std::optional<Rational> Offer::each(text::Date day) const {
  const std::optional<Cents> now =
      on_sale(day) ? std::min(price.value_or(sale->price), sale->price) : price;
  return now ? std::optional<Rational>(Rational(*now) / steps_per_price) : std::nullopt;
}

std::optional<Deal> Offer::deal_on(text::Date day) const {
  const std::optional<Rational> single = each(day);
  return deal && (!single || Rational(deal->price) < *single * deal->packs) ? deal : std::nullopt;
}

std::optional<Rational> Offer::exact_cost(int packs, text::Date day) const {
  const std::optional<Rational> single = each(day);
  if (!single) {
    return std::nullopt;
  }
  const std::optional<Deal> better = deal_on(day);
  const int deals = better ? packs / better->packs : 0;
  const Rational by_deal = better ? Rational(better->price) * deals : Rational(0);
  return by_deal + *single * (packs - (better ? deals * better->packs : 0));
}

bool Offer::on_sale(text::Date day) const {
  return sale && (!sale->from || *sale->from <= day) && (!sale->until || day <= *sale->until);
}

} // namespace manciple::kitchen
