#include "history/as_planned.hpp"

#include <algorithm>

namespace manciple::history {

using measure::Rational;

std::vector<kitchen::Receipt> as_planned(const kitchen::Kitchen& kitchen,
                                         const purchase::Shopping& shopping,
                                         std::optional<text::Date> day) {
  std::vector<kitchen::Receipt> out;
  for (std::size_t v = 0; v < shopping.visits.size(); ++v) {
    const purchase::StopMade& visit = shopping.visits[v];
    if (day && visit.date != *day) {
      continue;
    }
    kitchen::Receipt receipt;
    receipt.shop = visit.shop;
    receipt.date = visit.date;
    for (const purchase::Line& line : shopping.lines) {
      if (line.visit != v) {
        continue;
      }
      const kitchen::Offer& offer = kitchen.shop(visit.shop).offers[line.offer];
      kitchen::Bought bought;
      bought.what.text = kitchen.food(line.food).name;
      bought.what.target = line.food;
      bought.what.at = offer.at;
      if (!offer.by_weight) {
        bought.what.containers = Rational(line.packs) * offer.inside;
      }
      bought.amount = line.amount;
      bought.paid = line.cost;
      bought.frozen = line.to_freeze;
      bought.at = offer.at;
      receipt.bought.push_back(std::move(bought));
    }
    receipt.tax = visit.tax;
    receipt.credit = visit.credit;
    receipt.off = visit.off;
    receipt.total = visit.paid();
    out.push_back(std::move(receipt));
  }
  return out;
}

std::vector<text::Date> days_without_receipt(const kitchen::Kitchen& kitchen, text::Date until,
                                             std::optional<text::Date> planned_from) {
  std::vector<text::Date> out;
  for (const kitchen::Trip& trip : kitchen.plan->trips) {
    const bool counted = kitchen.on_hand.date && trip.date < *kitchen.on_hand.date;
    const bool to_come = planned_from && trip.date >= *planned_from;
    const bool known =
        !to_come && std::any_of(kitchen.receipts.begin(), kitchen.receipts.end(),
                                [&](const auto& one) { return one.date == trip.date; });
    if (trip.date < until && !counted && !known && (out.empty() || out.back() != trip.date)) {
      out.push_back(trip.date);
    }
  }
  return out;
}

} // namespace manciple::history
