#include "buying/item/completion_bound.hpp"

#include <algorithm>
#include <limits>

namespace manciple::buying {
namespace {

constexpr double infinite = std::numeric_limits<double>::infinity();
/// Keeps the sums below the exact value in spite of rounding.
constexpr double rounding = 1 - 1e-12;

/// Least Fine for a pack of the offer.
double least_of_pack(const Offer& offer, Fine discount) {
  const auto net = [&](Money cost, Money till) {
    return static_cast<double>(fine(cost)) -
           static_cast<double>(discount) * static_cast<double>(till);
  };
  double least = net(offer.cost.each, offer.till.packs.each);
  if (offer.cost.has_deal() && offer.limit >= offer.cost.deal_packs) {
    least = std::min(least, net(offer.cost.deal, offer.till.packs.deal) /
                                static_cast<double>(offer.cost.deal_packs));
  }
  return least * rounding;
}

} // namespace

void CompletionBound::prepare(const Prepared& item, const Terms& terms) {
  item_ = &item;
  const Item& facts = *item.item;
  const std::size_t demands = item.demands.size();
  const std::size_t visits = item.visits.size();
  needed_.assign(demands + 1, 0);
  for (std::size_t d = 0; d < demands; ++d) {
    needed_[d + 1] =
        needed_[d] + static_cast<double>(item.demands[d].amount - item.demands[d].give);
  }
  salvage_ = static_cast<double>(facts.salvage);
  cap_ = static_cast<double>(facts.salvage > 0 ? facts.salvage_cap : 0);

  const auto lacking = static_cast<double>(facts.lacking);
  std::vector<double> least;
  for (const Demand& demand : item.demands) {
    // What is missing of it costs this much a unit at least, all of it being missing.
    const auto must = static_cast<double>(std::max<Amount>(1, demand.amount - demand.give));
    least.push_back(static_cast<double>(facts.missing) +
                    static_cast<double>(fine(facts.missing_once)) / must * rounding);
  }
  double gain = 0;
  sums_.resize(visits + 1);
  for (std::size_t v = visits + 1; v-- > 0;) {
    if (v < visits && terms.is_open(v)) {
      const Visit& visit = item.visits[v];
      for (std::size_t o = 0; o < visit.offers.size(); ++o) {
        const Offer& offer = facts.offers[visit.offers[o]];
        const std::size_t s = visit.sources[o];
        const Source& source = item.sources[s];
        const double pack = least_of_pack(offer, terms.discount_at(v));
        const double unit = pack / static_cast<double>(source.pack);
        for (std::size_t d = item.first_served[v]; d < item.end_of_use[s]; ++d) {
          if (item.cool(s, d) || item.frozen(s, d)) {
            const Demand& demand = item.demands[d];
            const bool by_container = source.containers > 0 && demand.containers > 0;
            least[d] = std::min(
                least[d], by_container ? pack * static_cast<double>(demand.containers) /
                                             (static_cast<double>(source.containers) *
                                              static_cast<double>(demand.amount)) *
                                             rounding
                                       : unit);
          }
        }
        if (cap_ > 0 && item.keeps(s)) {
          gain = std::max(gain, salvage_ - unit);
        }
      }
    }
    Sums& sums = sums_[v];
    sums.cost.assign(demands + 1, 0);
    sums.worth.assign(demands + 1, 0);
    sums.unit.assign(demands, 0);
    sums.gain = gain * cap_;
    // Later demands are taken to cost no more than earlier ones: then what is held is worth most
    // for the earliest.
    double price = infinite;
    for (std::size_t d = 0; d < demands; ++d) {
      price = std::min(price, least[d]);
      const auto give = static_cast<double>(item.demands[d].give);
      const double hard = static_cast<double>(item.demands[d].amount) - give;
      sums.unit[d] = std::max(price, cap_ > 0 ? salvage_ : 0.0);
      sums.cost[d + 1] = sums.cost[d] + hard * price + give * std::min({price, lacking, 0.0});
      sums.worth[d + 1] = sums.worth[d] + hard * sums.unit[d];
    }
  }
}

double CompletionBound::rest(std::size_t visit, std::size_t demand, double reach) const {
  const Sums& sums = sums_[visit];
  const std::size_t demands = sums.unit.size();
  double bound = sums.cost[demands] - sums.cost[demand] - sums.gain;
  if (reach <= 0) {
    return bound;
  }
  const double until = needed_[demand] + reach;
  // The first demand that is not served in full.
  const auto first = static_cast<std::size_t>(
      std::upper_bound(needed_.begin() + static_cast<std::ptrdiff_t>(demand) + 1, needed_.end(),
                       until) -
      needed_.begin() - 1);
  bound -= sums.worth[first] - sums.worth[demand];
  if (first < demands) {
    return bound - (until - needed_[first]) * sums.unit[first];
  }
  return bound - std::min(until - needed_[demands], cap_) * salvage_;
}

double CompletionBound::reach(const Holding* begin, const Holding* end) const {
  double sum = 0;
  for (const Holding* held = begin; held != end; ++held) {
    sum += static_cast<double>(held->left) * item_->sources[held->source].reach;
  }
  return sum;
}

Fine CompletionBound::refund(const Holding* begin, const Holding* end) const {
  const Item& facts = *item_->item;
  Fine sum = 0;
  for (const Holding* held = begin; held != end; ++held) {
    sum += value_of(held->left, facts.waste) +
           value_of(std::min(held->left, held->lent), facts.lacking);
  }
  return sum;
}

} // namespace manciple::buying
