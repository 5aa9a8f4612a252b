#include "buying/item/completion_bound.hpp"

#include "buying/item/least_of_pack.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace manciple::buying {
namespace {

constexpr double infinite = std::numeric_limits<double>::infinity();

} // namespace

void CompletionBound::prepare(const Prepared& item, const Terms& terms,
                              const std::vector<int>& most) {
  item_ = &item;
  terms_ = &terms;
  most_ = &most;
  strong_ = false;
  const Item& facts = *item.item;
  const std::size_t demands = item.demands.size();
  const std::size_t visits = item.visits.size();
  salvage_ = static_cast<double>(facts.salvage);
  cap_ = static_cast<double>(facts.salvage > 0 ? facts.salvage_cap : 0);
  all_.cap = cap_;
  prepare(all_);
  const auto fresh = std::count_if(item.demands.begin(), item.demands.end(),
                                   [](const Demand& demand) { return !demand.takes_frozen; });
  splits_ = fresh > 0 && static_cast<std::size_t>(fresh) < demands;
  if (splits_) {
    fresh_.others = false;
    prepare(fresh_);
    others_.fresh = false;
    others_.cap = cap_;
    prepare(others_);
  }

  // What is missing of a demand costs this much a unit at least, all of it being missing.
  Prices prices;
  for (const Demand& demand : item.demands) {
    const auto must = static_cast<double>(std::max<Amount>(1, demand.amount - demand.give));
    prices.without.push_back(static_cast<double>(facts.missing) +
                             static_cast<double>(fine(facts.missing_once)) / must * rounded_down);
  }
  prices.handling = least_handling();
  prices.served.assign(demands, infinite);
  Salvaged salvaged;
  sums_.resize(visits + 1);
  runs_ = std::all_of(item.sources.begin(), item.sources.end(), [&](const Source& source) {
    const bool freezes = source.frozen_until != never || source.refrozen;
    return (source.comes_in_packs || source.in_freezer) && (!freezes || facts.from_freezer > 0);
  });
  // By visit: what it and those after it sell.
  std::vector<std::vector<Pack>> on_offer(visits + 1);
  for (std::size_t v = visits + 1; v-- > 0;) {
    if (v < visits) {
      on_offer[v] = on_offer[v + 1];
    }
    if (v < visits && terms.is_open(v)) {
      add_offers(v, on_offer[v], prices.served, salvaged);
    }
    sums_[v].of_kept = salvaged.kept * cap_;
    add_amounts(all_, v, prices, salvaged.gain * cap_);
    if (splits_) {
      add_amounts(fresh_, v, prices, 0);
      add_amounts(others_, v, prices, salvaged.gain * cap_);
    }
  }
  if (runs_) {
    add_runs(std::move(on_offer));
  }
}

// What the offers of a visit, and of those after it, serve demands at and are worth at the end.
void CompletionBound::add_offers(std::size_t v, std::vector<Pack>& packs,
                                 std::vector<double>& served, Salvaged& salvaged) const {
  const Visit& visit = item_->visits[v];
  for (std::size_t o = 0; o < visit.offers.size(); ++o) {
    const Offer& offer = item_->item->offers[visit.offers[o]];
    const std::size_t s = visit.sources[o];
    if ((*most_)[s] == 0) {
      continue;
    }
    const Source& source = item_->sources[s];
    const double pack = least_of_pack(offer, terms_->discount_at(v)) / source.inside;
    const double unit = pack / static_cast<double>(source.pack);
    packs.push_back({static_cast<double>(source.pack) * source.reach, pack, offer.by_weight});
    for (std::size_t d = item_->first_served[v]; d < item_->end_of_use[s]; ++d) {
      if (item_->cool(s, d) || item_->frozen(s, d)) {
        const Demand& demand = item_->demands[d];
        const bool by_container = source.containers > 0 && demand.containers > 0;
        const double least = by_container ? pack * static_cast<double>(demand.containers) /
                                                (static_cast<double>(source.containers) *
                                                 static_cast<double>(demand.amount)) *
                                                rounded_down
                                          : unit;
        served[d] = std::min(served[d], least);
      }
    }
    if (cap_ > 0 && item_->keeps(s)) {
      salvaged.gain = std::max(salvaged.gain, salvage_ - unit);
      salvaged.kept = std::max(salvaged.gain, salvage_);
    }
  }
}

void CompletionBound::prepare(Part& part) const {
  const std::size_t demands = item_->demands.size();
  part.needed.assign(demands + 1, 0);
  part.gives.assign(demands + 1, 0);
  for (std::size_t d = 0; d < demands; ++d) {
    const Demand& demand = item_->demands[d];
    const bool counts = demand.takes_frozen ? part.others : part.fresh;
    // Of containers, what cannot be told apart is not charged for.
    const bool gives = counts && demand.containers == 0;
    part.needed[d + 1] =
        part.needed[d] + (counts ? static_cast<double>(demand.amount - demand.give) : 0.0);
    part.gives[d + 1] = part.gives[d] + (gives ? static_cast<double>(demand.give) : 0.0);
  }
  part.by_visit.resize(item_->visits.size() + 1);
}

void CompletionBound::add_amounts(Part& part, std::size_t visit, const Prices& prices,
                                  double gain) const {
  const std::size_t demands = item_->demands.size();
  const auto lacking = static_cast<double>(item_->item->lacking);
  Amounts& sums = part.by_visit[visit];
  sums.cost.assign(demands + 1, 0);
  sums.worth.assign(demands + 1, 0);
  sums.unit.assign(demands, 0);
  sums.gain = gain;
  // Later demands are taken to cost no more than earlier ones: then what is held is worth most for
  // the earliest.
  double price = infinite;
  for (std::size_t d = 0; d < demands; ++d) {
    const Demand& demand = item_->demands[d];
    const bool counts = demand.takes_frozen ? part.others : part.fresh;
    const auto give = counts ? static_cast<double>(demand.give) : 0.0;
    const auto hard = counts ? static_cast<double>(demand.amount - demand.give) : 0.0;
    const double least = std::min(prices.served[d], prices.without[d]);
    price = counts ? std::min(price, least) : price;
    const double unit = price < infinite ? price : 0.0;
    // Handling, if it is served; else no more than what missing it costs beyond that.
    const double besides =
        hard > 0 ? std::min(prices.handling[d], std::max(0.0, (prices.without[d] - least) * hard))
                 : 0;
    sums.unit[d] = std::max(unit, part.cap > 0 ? salvage_ : 0.0);
    sums.cost[d + 1] = sums.cost[d] + hard * unit + give * std::min({unit, lacking, 0.0}) + besides;
    sums.worth[d + 1] = sums.worth[d] + hard * sums.unit[d];
  }
  // No more than the least price of any demand, so that what is held does not save more by what
  // gives than by what must be.
  sums.give = std::max(0.0, std::min(price, lacking)) * rounded_down;
}

// What serving a demand costs besides if nothing can serve it but from the freezer. (What has been
// thawed as a whole pack serves others, too.)
std::vector<double> CompletionBound::least_handling() const {
  const Item& facts = *item_->item;
  std::vector<double> out(item_->demands.size(), 0);
  const auto thaws_packs = [](const Source& source) {
    return source.comes_in_packs && source.frozen_until != never;
  };
  if (facts.from_freezer == 0 ||
      std::any_of(item_->sources.begin(), item_->sources.end(), thaws_packs)) {
    return out;
  }
  for (std::size_t d = 0; d < out.size(); ++d) {
    const Demand& demand = item_->demands[d];
    bool cool = demand.amount == demand.give;
    for (std::size_t s = 0; s < item_->sources.size() && !cool; ++s) {
      const Source& source = item_->sources[s];
      cool =
          item_->cool(s, d) && (source.stock || (terms_->is_open(source.visit) && (*most_)[s] > 0));
    }
    out[d] = cool ? 0 : static_cast<double>(fine(facts.from_freezer)) * rounded_down;
  }
  return out;
}

void CompletionBound::add_runs(std::vector<std::vector<Pack>> on_offer) {
  const Item& facts = *item_->item;
  const std::size_t demands = item_->demands.size();
  int lasts = 0;
  bool freezes = false;
  for (const Source& source : item_->sources) {
    lasts = std::max(lasts, source.opened);
    freezes = freezes || source.frozen_until != never || source.refrozen;
  }
  for (std::size_t v = 0; v < sums_.size(); ++v) {
    Sums& sums = sums_[v];
    double largest = 0;
    double cheapest = infinite;
    double unit = infinite;
    for (const Pack& pack : on_offer[v]) {
      largest = std::max(largest, pack.by_weight ? infinite : pack.amount);
      cheapest = std::min(cheapest, pack.cost);
      unit = std::min(unit, pack.cost / pack.amount);
    }
    // What so much costs at least, in packs or by going without.
    const auto least = [&](double amount, double without) {
      if (amount <= 0) {
        return 0.0;
      }
      double packs = amount * without;
      if (largest > 0) {
        const double most = std::max(1.0, std::ceil(amount / largest * rounded_down));
        packs = std::min(packs, most * cheapest);
        if (most > 1) {
          packs = std::min(packs, (most - 1) * cheapest +
                                      std::max(0.0, amount - (most - 1) * largest) * without);
        }
      }
      return std::max(packs, amount * std::min(unit, without)) * rounded_down;
    };
    sums.of_runs.assign(demands + 1, 0);
    double amount = 0;
    double without = infinite;
    double after = 0; // the runs after this one
    for (std::size_t d = demands; d-- > 0;) {
      const Demand& demand = item_->demands[d];
      const bool last =
          d + 1 == demands ||
          item_->demands[d + 1].day - item_->demands[d + 1].slack > demand.day + lasts;
      if (last) {
        after = sums.of_runs[d + 1];
        amount = 0;
        without = infinite;
      }
      const auto must = static_cast<double>(demand.amount - demand.give);
      amount += must;
      if (must > 0) {
        without = std::min(without,
                           static_cast<double>(facts.missing) +
                               static_cast<double>(fine(facts.missing_once)) / must * rounded_down);
        if (freezes && demand.takes_frozen) { // a portion, of whatever pack
          without = std::min(without,
                             static_cast<double>(fine(facts.from_freezer)) / must * rounded_down);
        }
      }
      sums.of_runs[d] = after + least(amount, without);
    }
    for (double& bound : sums.of_runs) {
      bound -= sums.of_kept;
    }
    sums.saves.assign(item_->sources.size(), 0);
    for (std::size_t s = 0; s < item_->sources.size(); ++s) {
      const Source& source = item_->sources[s];
      const double pack = static_cast<double>(source.pack) * source.reach;
      double saves = infinite;
      for (const Pack& other : on_offer[v]) {
        saves = std::min(saves, std::ceil(pack / other.amount) * other.cost);
      }
      sums.saves[s] = std::max(saves, salvage_ * static_cast<double>(source.pack)) / rounded_down;
    }
  }
}

void CompletionBound::strengthen() {
  if (!strong_) {
    pile_.prepare(*item_, *terms_, *most_);
    strong_ = true;
  }
}

double CompletionBound::rest(std::size_t visit, std::size_t demand, const Held& held) const {
  double bound = rest_of(all_, visit, demand, held.reach);
  if (splits_) {
    bound = std::max(bound, rest_of(fresh_, visit, demand, held.fresh) +
                                rest_of(others_, visit, demand, held.reach));
  }
  if (runs_) {
    bound = std::max(bound, sums_[visit].of_runs[demand] - held.saves);
  }
  if (strong_) {
    // What is held serves the demands before the visit first, or they are missing.
    const double rest =
        held.reach - (all_.needed[item_->first_served[visit]] - all_.needed[demand]);
    const double missing = std::max(0.0, -rest) * static_cast<double>(item_->item->missing);
    bound = std::max(bound, pile_.rest(visit, rest) + missing * rounded_down);
  }
  return bound;
}

double CompletionBound::rest_of(const Part& part, std::size_t visit, std::size_t demand,
                                double reach) const {
  const Amounts& sums = part.by_visit[visit];
  const std::size_t demands = sums.unit.size();
  const double gives = part.gives[demands] - part.gives[demand];
  double bound = sums.cost[demands] - sums.cost[demand] - sums.gain + gives * sums.give;
  if (reach <= 0) {
    return bound;
  }
  const std::vector<double>& needed = part.needed;
  const double until = needed[demand] + reach;
  // The first demand that is not served in full.
  const auto first = static_cast<std::size_t>(
      std::upper_bound(needed.begin() + static_cast<std::ptrdiff_t>(demand) + 1, needed.end(),
                       until) -
      needed.begin() - 1);
  bound -= sums.worth[first] - sums.worth[demand];
  if (first < demands) {
    return bound - (until - needed[first]) * sums.unit[first];
  }
  // Then what gives and what is kept, whichever is worth more first.
  const double more = until - needed[demands];
  const bool gives_first = sums.give >= salvage_;
  const double first_of = std::min(more, gives_first ? gives : part.cap);
  const double then = std::min(more - first_of, gives_first ? part.cap : gives);
  return bound - first_of * std::max(sums.give, salvage_) - then * std::min(sums.give, salvage_);
}

/// From the visit before on.
bool CompletionBound::serves_fresh(std::size_t visit, std::size_t source) const {
  return item_->end_of_fresh_use[source] > (visit == 0 ? 0 : item_->first_served[visit - 1]);
}

CompletionBound::Held CompletionBound::pack(std::size_t visit, std::size_t source) const {
  const Source& from = item_->sources[source];
  const double reach = static_cast<double>(from.bought()) * from.reach;
  return {reach, serves_fresh(visit, source) ? reach : 0,
          runs_ ? sums_[visit].saves[source] * from.inside : 0};
}

CompletionBound::Held CompletionBound::held(std::size_t visit, const Holding* begin,
                                            const Holding* end) const {
  Held sum;
  for (const Holding* held = begin; held != end; ++held) {
    const Source& from = item_->sources[held->source];
    const double reach = static_cast<double>(held->left) * from.reach;
    sum.reach += reach;
    sum.fresh += !held->thawed && serves_fresh(visit, held->source) ? reach : 0;
    if (runs_ && from.comes_in_packs) {
      const Amount packs = (held->left + from.pack - 1) / from.pack;
      sum.saves += static_cast<double>(packs) * sums_[visit].saves[held->source];
    }
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
