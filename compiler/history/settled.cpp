#include "history/settled.hpp"

#include <algorithm>
#include <map>
#include <tuple>

namespace manciple::history {
namespace {

using kitchen::Bought;
using kitchen::Kitchen;
using kitchen::Offer;
using kitchen::Receipt;

// A price that is so much lower than the regular one is more likely a sale. Our own choice.
const Rational likely_sale{85, 100};

void add(std::optional<Cents>& sum, const std::optional<Cents>& part) {
  if (part) {
    sum = sum.value_or(0) + *part;
  }
}

std::map<foods::FoodId, SettledLine> by_food(const Receipt& receipt,
                                             const std::optional<Receipt>& planned) {
  std::map<foods::FoodId, SettledLine> out;
  if (planned) {
    for (const Bought& line : planned->bought) {
      SettledLine& of = out[*line.what.food()];
      of.planned += line.amount;
      add(of.list, line.paid);
    }
  }
  for (const Bought& line : receipt.bought) {
    SettledLine& of = out[*line.what.food()];
    of.bought += line.amount;
    add(of.till, line.paid);
    of.instead_of = line.instead_of.empty() ? of.instead_of : line.instead_of;
  }
  return out;
}

SettledLine::Fate fate_of(const SettledLine& line) {
  using Fate = SettledLine::Fate;
  if (line.planned == 0) {
    return Fate::not_planned;
  }
  if (line.bought == 0) {
    return Fate::missing;
  }
  if (line.bought != line.planned) {
    return Fate::other_amount;
  }
  return line.list && line.till && *line.list != *line.till ? Fate::other_price : Fate::as_planned;
}

// How many packs, or units of weight, a line is of an offer; nothing if it is of no whole number.
std::optional<Rational> number_of(const Bought& line, const Offer& offer) {
  const Rational number = line.amount / (offer.size * offer.steps_per_price);
  const bool whole = denominator(number) == 1;
  return number > 0 && (offer.by_weight || whole) ? std::optional(number) : std::nullopt;
}

// Of several packs the one that was counted, else the largest.
std::optional<std::size_t> offer_of(const kitchen::Shop& shop, const Bought& line) {
  std::optional<std::size_t> best;
  for (std::size_t i = 0; i < shop.offers.size(); ++i) {
    const Offer& offer = shop.offers[i];
    const auto number = number_of(line, offer);
    if (offer.food != *line.what.food() || offer.likely || !number) {
      continue;
    }
    const auto rank = [&](const Offer& one) {
      const bool counted = line.what.containers &&
                           Rational(line.amount / *line.what.containers) * one.inside == one.size;
      return std::tuple(counted, !one.by_weight, one.size);
    };
    if (!best || rank(offer) > rank(shop.offers[*best])) {
      best = i;
    }
  }
  return best;
}

std::optional<NewPrice> price_of(const kitchen::Shop& shop, const Bought& line, text::Date day) {
  using Why = NewPrice::Why;
  if (!line.paid) {
    return std::nullopt;
  }
  const auto at = offer_of(shop, line);
  if (!at) {
    return NewPrice{Why::not_known, *line.what.food(), {}, line.what.text, {}, *line.paid};
  }
  const Offer& offer = shop.offers[*at];
  const Rational number = *number_of(line, offer);
  const auto steps =
      static_cast<int>(measure::to_int64(measure::round(Rational(number * offer.steps_per_price))));
  if (offer.cost(steps, day) == line.paid) {
    return std::nullopt;
  }
  const Rational each = Rational(*line.paid) / number;
  const Cents now = measure::to_int64(measure::round(each));
  NewPrice out{Why::changed, offer.food, at, offer.pack, offer.price, now};
  // What a scale rounds is a cent or two of the sum.
  const Cents again = measure::to_int64(measure::round(Rational(now * number)));
  if (line.sale) {
    out.why = Why::sale;
  } else if (!offer.by_weight && again != *line.paid) {
    out.why = Why::uneven;
  } else if (offer.price && Rational(now) < *offer.price * likely_sale) {
    out.why = Why::much_less;
  }
  return offer.price == now ? std::nullopt : std::optional(out);
}

} // namespace

Settled settle(const Kitchen& kitchen, const Receipt& receipt,
               const std::optional<Receipt>& planned) {
  Settled out;
  for (auto& [food, line] : by_food(receipt, planned)) {
    line.food = food;
    line.fate = fate_of(line);
    out.lines.push_back(std::move(line));
  }
  std::stable_sort(out.lines.begin(), out.lines.end(),
                   [&](const SettledLine& a, const SettledLine& b) {
                     const auto key = [&](const SettledLine& line) {
                       return std::tuple(line.fate == SettledLine::Fate::as_planned,
                                         std::string_view(kitchen.food(line.food).name));
                     };
                     return key(a) < key(b);
                   });
  const kitchen::Shop& shop = kitchen.shop(receipt.shop);
  for (const Bought& line : receipt.bought) {
    if (const auto price = price_of(shop, line, receipt.date)) {
      out.prices.push_back(*price);
    }
  }
  out.planned = planned ? planned->total : std::nullopt;
  out.paid = receipt.paid();
  if (receipt.total && *receipt.total != receipt.sum()) {
    out.unaccounted = *receipt.total - receipt.sum();
  }
  return out;
}

} // namespace manciple::history
