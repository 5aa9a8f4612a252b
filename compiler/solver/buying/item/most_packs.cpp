#include "buying/item/most_packs.hpp"

#include <algorithm>
#include <limits>
#include <optional>

namespace manciple::buying {
namespace {

/// What is there serves a demand rather than that something lent is taken back for it. So it may
/// be better to have it later: the demand does with what was lent, which is eaten otherwise.
bool may_stint(const Prepared& item) {
  return std::any_of(item.demands.begin(), item.demands.end(),
                     [](const Demand& demand) { return demand.give > 0; }) &&
         std::any_of(item.sources.begin(), item.sources.end(),
                     [](const Source& source) { return source.comes_in_packs || source.stock; });
}

bool is_free(const Terms& terms, std::size_t v) {
  return terms.charge[v] == Cost{};
}

/// Where visit u sells the offer under the terms of visit v and is free to use: its source there.
std::optional<std::size_t> twin_at(const Prepared& item, const Terms& terms, std::size_t u,
                                   std::size_t v, OfferId offer) {
  const Visit& other = item.visits[u];
  const auto same = std::find(other.offers.begin(), other.offers.end(), offer);
  if (same == other.offers.end() || !is_free(terms, u) ||
      terms.discount_at(u) != terms.discount_at(v)) {
    return std::nullopt;
  }
  return other.sources[static_cast<std::size_t>(same - other.offers.begin())];
}

bool has_earlier_twin(const Prepared& item, const Terms& terms, std::size_t v, std::size_t o) {
  const Visit& visit = item.visits[v];
  for (std::size_t u = 0; u < v; ++u) {
    const auto twin = twin_at(item, terms, u, v, visit.offers[o]);
    if (twin && item.same_as(v, *twin) == item.same_as(v, visit.sources[o])) {
      return true;
    }
  }
  return false;
}

void cap_by_later_twin(const Prepared& item, const Terms& terms, std::size_t v, std::size_t o,
                       std::vector<int>& most) {
  const Visit& visit = item.visits[v];
  const std::size_t source = visit.sources[o];
  for (std::size_t u = v + 1; u < item.visits.size(); ++u) {
    const auto twin = twin_at(item, terms, u, v, visit.offers[o]);
    if (twin &&
        (terms.priced_room() == nullptr || item.same_as(u, *twin) == item.same_as(u, source))) {
      most[source] = std::min(most[source],
                              item.packs_for(source, item.first_served[v], item.first_served[u]));
      return;
    }
  }
}

} // namespace

std::vector<int> most_packs(const Prepared& item, const Terms& terms) {
  std::vector<int> most = item.useful_packs;
  if (item.required) {
    const Visit& visit = item.visits[item.required->visit];
    for (std::size_t o = 0; o < visit.offers.size(); ++o) {
      if (visit.offers[o] == item.required->offer) {
        most[visit.sources[o]] = std::max(most[visit.sources[o]], 1);
      }
    }
    return most;
  }
  // How much is weighed out depends on what has been bought before (see Weighing).
  if (std::any_of(item.item->offers.begin(), item.item->offers.end(),
                  [](const Offer& offer) { return offer.by_weight; })) {
    return most;
  }
  const bool earlier = terms.priced_room() == nullptr && !item.item->buy_late;
  if (earlier && may_stint(item)) {
    return most; // early if it is all the same, late if not
  }
  for (std::size_t v = 0; v < item.visits.size(); ++v) {
    const Visit& visit = item.visits[v];
    for (std::size_t o = 0; o < visit.offers.size(); ++o) {
      const Offer& offer = item.item->offers[visit.offers[o]];
      if (offer.limit < std::numeric_limits<int>::max() || !is_free(terms, v)) {
        continue;
      }
      // More lines count for less at the till.
      const bool divides = !offer.cost.has_deal() && offer.life.ready == 0 &&
                           (offer.till.less == 0 || terms.discount_at(v) == 0);
      if (earlier && has_earlier_twin(item, terms, v, o)) {
        most[visit.sources[o]] = 0;
      } else if (!earlier && divides) {
        cap_by_later_twin(item, terms, v, o, most);
      }
    }
  }
  return most;
}

} // namespace manciple::buying
