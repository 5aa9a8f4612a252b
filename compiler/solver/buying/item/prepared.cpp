#include "buying/item/prepared.hpp"

#include <limits>
#include <numeric>
#include <set>
#include <tuple>

namespace manciple::buying {
namespace {

constexpr Day far = std::numeric_limits<Day>::max();

/// Of what is used more often, nothing is frozen that would keep unfrozen.
constexpr std::size_t uses_to_freeze_for = 8;

bool on_sale(const Offer& offer, const Stop& stop) {
  return offer.shop == stop.shop && offer.first_day <= stop.day() && stop.day() <= offer.last_day;
}

Amount up(Wide value, Wide by) {
  return static_cast<Amount>((value + by - 1) / by);
}

} // namespace

Amount Source::spent_on(const Demand& demand, Amount amount) const {
  if (!by_container(demand)) {
    return amount;
  }
  // amount of the demand is so much of its containers, each of which is a pack's share here.
  return static_cast<Amount>(Wide{amount} * demand.containers * pack /
                             (Wide{demand.amount} * containers));
}

Amount Source::served_by(const Demand& demand, Amount amount, Amount open) const {
  if (!by_container(demand)) {
    return std::min(amount, open);
  }
  if (amount >= spent_on(demand, open)) {
    return open;
  }
  return static_cast<Amount>(Wide{amount} * demand.amount * containers /
                             (Wide{demand.containers} * pack));
}

/// The rest of a pack is lost only when it goes off, and the next one is opened after that: so many
/// times as there are uses further apart than an opened pack lasts. Or when a use must be fresh and
/// the pack was frozen.
int Prepared::packs_for(std::size_t s, std::size_t begin, std::size_t end) const {
  const Source& source = sources[s];
  Wide needed = 0;
  Wide lost = 0;
  Day opened = never;
  for (std::size_t d = begin; d < end; ++d) {
    if (!cool(s, d) && !frozen(s, d)) {
      continue;
    }
    needed += source.spent_on(demands[d], demands[d].amount);
    const Day day = demands[d].day - demands[d].slack;
    if (opened == never || day > opened + source.opened || source.frozen_until != never ||
        demands[d].slack > 0) {
      ++lost;
      opened = demands[d].day;
    }
  }
  const bool weighed = !source.stock && item->offers[source.offer].by_weight;
  const Wide packs =
      Wide{up(needed, source.pack)} + (source.comes_in_packs && !weighed ? lost : Wide{0});
  const Wide bought = (packs + source.inside - 1) / source.inside;
  return static_cast<int>(std::min<Wide>(bought, std::numeric_limits<int>::max() / 2));
}

std::optional<std::size_t> Prepared::visit_at(StopId stop) const {
  for (std::size_t v = 0; v < visits.size(); ++v) {
    if (visits[v].stop == stop) {
      return v;
    }
  }
  return std::nullopt;
}

/// Fills in a Prepared, part by part.
class Preparation {
public:
  Preparation(const Model& model, const Item& item, const Restriction& restriction)
      : model_(model), item_(item), restriction_(restriction) {
    out_.item = &item;
    out_.last_day = model.last_day;
  }

  Prepared run() {
    add_demands();
    add_stock();
    add_visits();
    number_kinds();
    add_reach();
    add_who_serves_whom();
    add_room();
    add_choices();
    add_equals();
    out_.standing = standing(false);
    out_.standing_apart = standing(true);
    add_useful_packs();
    if (restriction_.required) {
      add_required(*restriction_.required);
    }
    return std::move(out_);
  }

private:
  void add_demands() {
    for (const DemandId id : ids(item_.demands)) {
      out_.ids.push_back(id);
    }
    std::sort(out_.ids.begin(), out_.ids.end(), [&](DemandId a, DemandId b) {
      const auto key = [&](DemandId id) {
        const Demand& demand = item_.demands[id];
        return std::tuple(demand.at, demand.takes_frozen, id);
      };
      return key(a) < key(b);
    });
    out_.wanted = item_.salvage > 0 ? item_.salvage_cap : 0;
    for (const DemandId id : out_.ids) {
      out_.demands.push_back(item_.demands[id]);
      out_.wanted += item_.demands[id].amount;
    }
    const std::size_t count = out_.demands.size();
    out_.earliest_.assign(count + 1, far);
    out_.earliest_frozen_.assign(count + 1, far);
    for (std::size_t d = count; d-- > 0;) {
      const Demand& demand = out_.demands[d];
      const Day day = demand.day - demand.slack;
      out_.earliest_[d] = std::min(out_.earliest_[d + 1], day);
      out_.earliest_frozen_[d] =
          std::min(out_.earliest_frozen_[d + 1], demand.takes_frozen ? day : far);
    }
  }

  void add_life(Source& source, const Life& life) const {
    // Beyond this, a day more makes no difference.
    const Day far_enough =
        std::max(item_.kept_day, out_.demands.empty() ? 0 : out_.demands.back().day) +
        life.opened.value_or(0);
    source.ready = source.home + life.ready;
    source.cool_until = std::min(source.home + life.cool, far_enough);
    source.frozen_until = life.frozen ? std::min(source.home + *life.frozen, far_enough) : never;
    source.comes_in_packs = life.opened.has_value();
    source.opened = life.opened.value_or(0);
    source.refrozen = life.refrozen;
  }

  void add_stock() {
    for (const LotId id : ids(item_.stock)) {
      const Lot& lot = item_.stock[id];
      Source source;
      source.stock = true;
      source.lot = id;
      source.place = lot.place;
      source.thawed_in = lot.is_thawed() ? lot.thawed_in : lot.place;
      source.pack = lot.amount / lot.packs;
      source.containers = lot.containers;
      add_life(source, lot.life);
      if (lot.is_thawed()) {
        source.in_freezer = true;
        source.cool_until = never;
      }
      out_.sources.push_back(source);
    }
  }

  void add_visits() {
    for (const StopId id : ids(model_.stops)) {
      Visit visit{id, model_.stops[id].at, model_.stops[id].day(), {}, {}};
      for (const OfferId offer : ids(item_.offers)) {
        const bool barred = (restriction_.only && *restriction_.only != offer) ||
                            (restriction_.without && *restriction_.without == std::pair(id, offer));
        if (!barred && on_sale(item_.offers[offer], model_.stops[id])) {
          visit.offers.push_back(offer);
        }
      }
      // Packs come first, then what is weighed out beside them (see Weighing).
      std::stable_partition(visit.offers.begin(), visit.offers.end(),
                            [&](OfferId offer) { return !item_.offers[offer].by_weight; });
      if (!visit.offers.empty()) {
        out_.visits.push_back(std::move(visit));
      }
    }
    std::stable_sort(out_.visits.begin(), out_.visits.end(),
                     [](const Visit& a, const Visit& b) { return a.at < b.at; });
    std::size_t next = 0;
    for (std::size_t v = 0; v < out_.visits.size(); ++v) {
      Visit& visit = out_.visits[v];
      while (next < out_.demands.size() && out_.demands[next].at < visit.at) {
        ++next;
      }
      out_.first_served.push_back(next);
      for (const OfferId id : visit.offers) {
        const Offer& offer = item_.offers[id];
        Source source;
        source.visit = v;
        source.offer = id;
        source.home = visit.day;
        source.place = offer.place;
        source.thawed_in = offer.place;
        source.inside = offer.life.opened ? offer.inside : 1;
        source.pack = offer.pack / source.inside;
        source.containers = offer.containers / source.inside;
        add_life(source, offer.life);
        visit.sources.push_back(out_.sources.size());
        out_.sources.push_back(source);
      }
    }
    out_.first_served.push_back(out_.demands.size());
  }

  // Steps of a scale are handed over as one pack, whose size is not known beforehand: each such
  // source is a kind of its own.
  void number_kinds() {
    std::vector<std::tuple<bool, Amount, Amount, Amount>> kinds;
    for (std::size_t s = 0; s < out_.sources.size(); ++s) {
      Source& source = out_.sources[s];
      const bool weighed = !source.stock && item_.offers[source.offer].by_weight;
      const Amount common = std::max<Amount>(1, std::gcd(source.pack, source.containers));
      // Loose things are of one kind if a container is as much of each.
      const std::tuple kind(
          source.comes_in_packs,
          source.comes_in_packs || source.containers > 0 ? source.pack / common : 0,
          source.containers / common,
          source.comes_in_packs ? (weighed ? -1 - static_cast<Amount>(s) : common) : 0);
      const auto found = std::find(kinds.begin(), kinds.end(), kind);
      source.kind = static_cast<std::size_t>(found - kinds.begin());
      if (found == kinds.end()) {
        kinds.push_back(kind);
      }
    }
    out_.kinds = kinds.size();
  }

  void add_reach() {
    for (Source& source : out_.sources) {
      for (const Demand& demand : out_.demands) {
        if (source.containers > 0 && demand.containers > 0) {
          const double usual =
              static_cast<double>(demand.amount) / static_cast<double>(demand.containers);
          const double here =
              static_cast<double>(source.pack) / static_cast<double>(source.containers);
          // What is rounded down serves a trifle more.
          source.reach = std::max(source.reach, usual / here + 1e-9);
        }
      }
    }
  }

  void add_who_serves_whom() {
    const std::size_t count = out_.demands.size();
    out_.can_.assign(out_.sources.size() * count, 0);
    out_.end_of_use.assign(out_.sources.size(), 0);
    out_.end_of_cool_use.assign(out_.sources.size(), 0);
    out_.end_of_fresh_use.assign(out_.sources.size(), 0);
    for (const Demand& demand : out_.demands) {
      if (demand.takes_frozen) {
        out_.last_frozen_use = std::max(out_.last_frozen_use, demand.day);
      }
    }
    for (std::size_t s = 0; s < out_.sources.size(); ++s) {
      const Source& source = out_.sources[s];
      for (std::size_t d = source.stock ? 0 : out_.first_served[source.visit]; d < count; ++d) {
        const Demand& demand = out_.demands[d];
        if (demand.day < source.ready) {
          continue;
        }
        const Day by = std::max(demand.day - demand.slack, source.ready);
        std::uint8_t can = 0;
        if (source.cool_until >= by) {
          can |= Prepared::serves_cool;
          out_.end_of_cool_use[s] = d + 1;
        }
        if (demand.takes_frozen && source.frozen_until >= by && source.frozen_until != never) {
          can |= Prepared::serves_frozen;
        }
        out_.can_[s * count + d] = can;
        if (can != 0) {
          out_.end_of_use[s] = d + 1;
          out_.end_of_fresh_use[s] = demand.takes_frozen ? out_.end_of_fresh_use[s] : d + 1;
        }
      }
    }
  }

  void add_room() {
    const auto limited = [&](Place place) { return !model_.room[index(place)].empty(); };
    for (const Source& source : out_.sources) {
      const bool freezes = source.frozen_until != never;
      const bool cool = limited(source.place) && item_.room_cool > 0 && !source.in_freezer;
      const bool frozen = limited(Place::freezer) && item_.room_frozen > 0 && freezes;
      out_.takes_room = out_.takes_room || cool || frozen;
      out_.freezes_for_room =
          out_.freezes_for_room || (cool && freezes && out_.demands.size() <= uses_to_freeze_for);
    }
  }

  // Whether a demand may be served by holdings of more than one kind, or in more than one way.
  void add_choices() {
    for (std::size_t d = 0; d < out_.demands.size(); ++d) {
      std::set<std::pair<std::size_t, bool>> ways;
      for (std::size_t s = 0; s < out_.sources.size(); ++s) {
        if (out_.cool(s, d)) {
          ways.emplace(out_.sources[s].kind, false);
        }
        if (out_.frozen(s, d) && (!out_.cool(s, d) || out_.freezes_for_room)) {
          ways.emplace(out_.sources[s].kind, true);
        }
      }
      chooses_.push_back(ways.size() > 1);
    }
  }

  // What is loose is used up before something else serves. Of two holdings that were one, the
  // second would have to follow the first, where something else may follow it now.
  bool may_part(std::size_t a, std::size_t first) const {
    for (std::size_t d = first; d < out_.demands.size() && !out_.sources[a].comes_in_packs; ++d) {
      if (chooses_[d] && (out_.cool(a, d) || out_.frozen(a, d))) {
        return true;
      }
    }
    return false;
  }

  // From a visit on, only the demands that it may serve count, and what is kept.
  bool same(std::size_t a, std::size_t b, std::size_t first) const {
    const Source& x = out_.sources[a];
    const Source& y = out_.sources[b];
    const bool lives =
        !x.comes_in_packs ||
        ((x.home == y.home || x.frozen_until == never) && x.cool_until == y.cool_until &&
         x.frozen_until == y.frozen_until && x.opened == y.opened && x.refrozen == y.refrozen);
    const bool keeps =
        out_.keeps_cool(a) == out_.keeps_cool(b) && out_.keeps_frozen(a) == out_.keeps_frozen(b);
    return x.kind == y.kind && x.in_freezer == y.in_freezer && lives && keeps &&
           serve_the_same(a, b, first);
  }

  // Of the demands from `first` on.
  bool serve_the_same(std::size_t a, std::size_t b, std::size_t first) const {
    const std::size_t count = out_.demands.size();
    return std::equal(out_.can_.begin() + static_cast<std::ptrdiff_t>(a * count + first),
                      out_.can_.begin() + static_cast<std::ptrdiff_t>((a + 1) * count),
                      out_.can_.begin() + static_cast<std::ptrdiff_t>(b * count + first));
  }

  // The order in which what is held serves, unfrozen or from the freezer.
  static std::tuple<Day, Day, std::size_t> goes_off(const Source& source, std::size_t s,
                                                    bool frozen) {
    return frozen ? std::tuple(source.frozen_until, source.cool_until, s)
                  : std::tuple(source.cool_until, source.frozen_until, s);
  }

  // What goes off between the two serves after one of them and before the other: then they cannot
  // be held as one.
  bool something_comes_between(std::size_t a, std::size_t b, std::size_t first) const {
    for (const bool frozen : {false, true}) {
      auto low = goes_off(out_.sources[a], a, frozen);
      auto high = goes_off(out_.sources[b], b, frozen);
      if (high < low) {
        std::swap(low, high);
      }
      for (std::size_t c = 0; c < out_.sources.size(); ++c) {
        const auto key = goes_off(out_.sources[c], c, frozen);
        if (low < key && key < high && out_.sources[c].kind == out_.sources[a].kind &&
            both_serve(a, c, first, frozen) && !same(a, c, first)) {
          return true;
        }
      }
    }
    return false;
  }
  bool both_serve(std::size_t a, std::size_t c, std::size_t first, bool frozen) const {
    for (std::size_t d = first; d < out_.demands.size(); ++d) {
      if (frozen ? out_.frozen(a, d) && out_.frozen(c, d) : out_.cool(a, d) && out_.cool(c, d)) {
        return true;
      }
    }
    return false;
  }

  void add_equals() {
    const std::size_t count = out_.sources.size();
    out_.same_as_.resize(out_.visits.size() * count);
    for (std::size_t v = 0; v < out_.visits.size(); ++v) {
      for (std::size_t s = 0; s < count; ++s) {
        std::size_t& same_as = out_.same_as_[v * count + s];
        same_as = s;
        const bool later = !out_.sources[s].stock && out_.sources[s].visit > v;
        for (std::size_t other = 0; other < s && !later; ++other) {
          const std::size_t first = out_.first_served[v];
          if (out_.same_as_[v * count + other] == other && same(other, s, first) &&
              !may_part(s, first) && !something_comes_between(other, s, first)) {
            same_as = other;
            break;
          }
        }
      }
    }
  }

  // b does whatever a does. It came home later, so that it has taken less room.
  bool is_no_worse(std::size_t b, std::size_t a) const {
    const Source& x = out_.sources[a];
    const Source& y = out_.sources[b];
    return x.home <= y.home && x.cool_until <= y.cool_until && x.frozen_until <= y.frozen_until &&
           y.ready <= std::max(x.ready, y.home) && x.place == y.place &&
           x.thawed_in == y.thawed_in && x.in_freezer == y.in_freezer &&
           out_.keeps_cool(a) == out_.keeps_cool(b) && out_.keeps_frozen(a) == out_.keeps_frozen(b);
  }

  std::vector<Prepared::Standing> standing(bool apart) const {
    std::vector<Prepared::Standing> result;
    std::vector<std::vector<std::size_t>> classes;
    for (std::size_t s = 0; s < out_.sources.size(); ++s) {
      const Source& source = out_.sources[s];
      const std::size_t first = source.stock ? 0 : out_.first_served[source.visit];
      const auto chain =
          std::find_if(classes.begin(), classes.end(), [&](const std::vector<std::size_t>& one) {
            const Source& last = out_.sources[one.back()];
            return !source.comes_in_packs && !last.comes_in_packs && source.kind == last.kind &&
                   is_no_worse(s, one.back()) && (!apart || serve_the_same(s, one.back(), first));
          });
      if (chain == classes.end()) {
        classes.push_back({s});
        result.push_back({classes.size() - 1, 0});
      } else {
        chain->push_back(s);
        result.push_back({static_cast<std::size_t>(chain - classes.begin()), chain->size() - 1});
      }
    }
    return result;
  }

  void add_useful_packs() {
    out_.useful_packs.assign(out_.sources.size(), 0);
    for (std::size_t s = 0; s < out_.sources.size(); ++s) {
      const Source& source = out_.sources[s];
      if (source.stock) {
        continue;
      }
      const Wide kept = item_.salvage > 0 && out_.keeps(s) ? item_.salvage_cap : 0;
      const Wide packs =
          Wide{up(kept, source.bought())} + out_.packs_for(s, 0, out_.demands.size());
      const Offer& offer = item_.offers[source.offer];
      const PackPrice& cost = offer.cost;
      // A deal may be cheaper than fewer packs.
      const Wide rounded =
          cost.has_deal() ? up(packs, cost.deal_packs) * Wide{cost.deal_packs} : packs;
      out_.useful_packs[s] = static_cast<int>(std::min<Wide>(rounded, offer.limit));
    }
  }

  void add_required(std::pair<StopId, OfferId> required) {
    out_.barred = true;
    for (std::size_t v = 0; v < out_.visits.size(); ++v) {
      const Visit& visit = out_.visits[v];
      const bool offered = std::find(visit.offers.begin(), visit.offers.end(), required.second) !=
                           visit.offers.end();
      if (visit.stop == required.first && offered) {
        out_.required = Prepared::Required{v, required.second};
        out_.barred = false;
      }
    }
  }

  const Model& model_;
  const Item& item_;
  const Restriction& restriction_;
  Prepared out_;
  std::vector<bool> chooses_; ///< by demand
};

Prepared prepare(const Model& model, const Item& item, const Restriction& restriction) {
  return Preparation(model, item, restriction).run();
}

} // namespace manciple::buying
