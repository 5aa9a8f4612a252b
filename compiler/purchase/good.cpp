#include "purchase/good.hpp"

#include <algorithm>
#include <tuple>

namespace manciple::purchase {
namespace {

constexpr Day never = std::numeric_limits<Day>::max();

std::vector<Use> uses_of(const Good& good) {
  std::vector<Use> uses;
  uses.reserve(good.demands.size());
  for (DemandId id = 0; id < good.demands.size(); ++id) {
    const Demand& demand = good.demands[id];
    Use use;
    use.demand = id;
    use.day = demand.day;
    use.amount = demand.amount;
    use.cool_from =
        demand.day - std::min(good.keeps_cool, demand.longest_age.value_or(good.keeps_cool));
    use.from = use.cool_from;
    if (demand.takes_frozen && good.keeps_frozen)
      use.from = std::min(use.from, demand.day - *good.keeps_frozen);
    uses.push_back(use);
  }
  std::sort(uses.begin(), uses.end(), [](const Use& a, const Use& b) {
    return std::tuple(a.day, a.limit(), a.demand) < std::tuple(b.day, b.limit(), b.demand);
  });
  return uses;
}

bool on_sale(const Offer& offer, const Stop& stop) {
  return offer.shop == stop.shop && offer.first_day <= stop.day && stop.day <= offer.last_day &&
         offer.cost.most() >= 1;
}

std::vector<Visit> visits_of(const Model& model, const Good& good, const Restriction& restriction) {
  std::vector<Visit> visits;
  for (StopId id = 0; id < model.stops.size(); ++id) {
    Visit visit;
    visit.stop = id;
    visit.day = model.stops[id].day;
    for (OfferId offer = 0; offer < good.offers.size(); ++offer) {
      const bool barred = (restriction.only && *restriction.only != offer) ||
                          (restriction.without && *restriction.without == std::pair(id, offer));
      if (!barred && on_sale(good.offers[offer], model.stops[id]))
        visit.offers.push_back(offer);
    }
    if (!visit.offers.empty())
      visits.push_back(std::move(visit));
  }
  std::stable_sort(visits.begin(), visits.end(),
                   [](const Visit& a, const Visit& b) { return a.day < b.day; });
  return visits;
}

double least_unit_cost(const Offer& offer) {
  const auto pack = static_cast<double>(offer.pack);
  if (offer.cost.table.empty())
    return static_cast<double>(offer.cost.unit) / pack;
  double least = std::numeric_limits<double>::max();
  for (std::size_t n = 0; n < offer.cost.table.size(); ++n)
    least = std::min(least, static_cast<double>(offer.cost.table[n]) /
                                (pack * static_cast<double>(n + 1)));
  return least;
}

/// Fills in what each visit needs and reaches.
void add_prefixes(Prepared& result) {
  for (Visit& visit : result.visits) {
    visit.need.assign(result.groups.size(), 0);
    visit.reach.assign(result.groups.size(), 0);
    for (const Use& use : result.uses) {
      if (use.day < visit.day)
        visit.need[use.group] += use.amount;
      if (use.from <= visit.day)
        visit.reach[use.group] += use.amount;
    }
    if (result.kept_cap > 0 && result.kept(visit.day))
      visit.reach[result.kept_group] += result.kept_cap;
  }
}

void add_required(Prepared& result, std::pair<StopId, OfferId> required) {
  result.barred = true;
  for (std::size_t v = 0; v < result.visits.size(); ++v) {
    const Visit& visit = result.visits[v];
    if (visit.stop == required.first && std::find(visit.offers.begin(), visit.offers.end(),
                                                  required.second) != visit.offers.end()) {
      result.required = Prepared::Required{v, required.second};
      result.barred = false;
    }
  }
}

} // namespace

Day Prepared::stop_day(StopId stop) const {
  const auto visit = std::find_if(visits.begin(), visits.end(),
                                  [&](const Visit& other) { return other.stop == stop; });
  return visit->day;
}

Prepared prepare(const Model& model, const Good& good, const Restriction& restriction) {
  Prepared result;
  result.good = &good;
  result.last_day = model.last_day;
  result.uses = uses_of(good);
  result.visits = visits_of(model, good, restriction);

  result.kept_day = model.last_day + good.salvage_days;
  result.kept_cool_from = result.kept_day - good.keeps_cool;
  result.kept_from = std::min(result.kept_cool_from,
                              good.keeps_frozen ? result.kept_day - *good.keeps_frozen : never);
  if (good.salvage > 0)
    result.kept_cap = good.salvage_cap;

  std::vector<Day> limits;
  for (const Use& use : result.uses)
    limits.push_back(use.limit());
  if (result.kept_cap > 0)
    limits.push_back(result.kept_day - result.kept_from);
  std::sort(limits.begin(), limits.end());
  limits.erase(std::unique(limits.begin(), limits.end()), limits.end());
  const auto group_of = [&](Day limit) {
    return static_cast<std::size_t>(std::lower_bound(limits.begin(), limits.end(), limit) -
                                    limits.begin());
  };
  result.groups.resize(limits.size());
  result.group_total.assign(limits.size(), 0);
  result.group_ends.resize(limits.size());
  for (std::size_t i = 0; i < result.uses.size(); ++i) {
    Use& use = result.uses[i];
    use.group = group_of(use.limit());
    use.before = result.group_total[use.group];
    result.groups[use.group].push_back(i);
    result.group_total[use.group] += use.amount;
    result.group_ends[use.group].push_back(result.group_total[use.group]);
    result.total += use.amount;
  }
  if (result.kept_cap > 0)
    result.kept_group = group_of(result.kept_day - result.kept_from);
  for (const Offer& offer : good.offers)
    result.least_unit_cost.push_back(least_unit_cost(offer));
  add_prefixes(result);
  if (restriction.required)
    add_required(result, *restriction.required);
  return result;
}

} // namespace manciple::purchase
