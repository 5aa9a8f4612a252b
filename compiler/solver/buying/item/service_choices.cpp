#include "buying/item/service_choices.hpp"

#include <algorithm>
#include <limits>
#include <span>
#include <tuple>
#include <utility>

namespace manciple::buying {
bool ServiceChoices::find_alternatives(const Holdings& held, std::size_t d,
                                       const DemandAtHand& at_hand,
                                       std::vector<ServiceChoice>& ways,
                                       std::vector<Candidate>& candidates) const {
  find_candidates(held, d, at_hand, candidates);
  ways.clear();
  // It need not have been frozen: there may be no room for it, or a better use.
  if (!candidates.empty() && !takes_too_little(d, at_hand) &&
      std::all_of(candidates.begin(), candidates.end(), [&](const Candidate& one) {
        return from_freezer(one.way) && !one.back && !source(held[one.at]).in_freezer;
      })) {
    ways.push_back({{}, 0, true});
  }
  if (candidates.size() == 1 && candidates.front().order >= at_hand.after) {
    ways.push_back({candidates.front()});
    return true;
  }
  for (const Candidate& one : candidates) {
    if (!one.packs) {
      ways.push_back({one});
      continue;
    }
    const Holding& holding = held[one.at];
    const Amount pack = pack_of(holding);
    const Amount needed = source(holding).spent_on(item_.demands[d], at_hand.amount);
    if (pack > needed) {
      ways.push_back({one, 1, false}); // the last pack: whichever
      continue;
    }
    // Full packs, kind by kind in one order, so that no two ways open the same packs.
    if (one.order < at_hand.after) {
      continue;
    }
    const Amount most = std::min(needed / pack, holding.left / pack);
    if (most > packs_to_choose) {
      ways.assign(1, {one, most, false}); // with so many, it makes no odds
      return true;
    }
    for (Amount n = most; n > 0; --n) {
      ways.push_back({one, n, false});
    }
  }
  return candidates.empty() || !ways.empty();
}

std::size_t ServiceChoices::first_way(const Holdings& held,
                                      const std::vector<ServiceChoice>& ways) const {
  const std::size_t first = ways.front().none ? 1 : 0;
  for (std::size_t w = first; chosen_last_ && w < ways.size(); ++w) {
    if (!is_chosen_last(held[ways[w].candidate.at])) {
      return w;
    }
  }
  return first;
}

std::optional<std::size_t> ServiceChoices::opened_cool(const Holdings& held, std::size_t d) const {
  const Demand& demand = item_.demands[d];
  std::optional<std::size_t> best;
  for (std::size_t i = 0; i < held.size(); ++i) {
    const Holding& one = held[i];
    if (one.free() > 0 && is_opened_cool(one, demand) && (!best || one.until < held[*best].until)) {
      best = i;
    }
  }
  return best;
}

std::optional<Way> ServiceChoices::way_at_hand(const Holding& held, std::size_t d,
                                               bool frozen) const {
  if (held.open) {
    const bool portion = frozen && item_.demands[d].takes_frozen && serves_frozen(held, d);
    return is_opened_cool(held, item_.demands[d]) ? std::optional(Way::open)
           : portion                              ? std::optional(Way::of_portion)
                                                  : std::nullopt;
  }
  if (source(held).comes_in_packs) {
    return std::nullopt;
  }
  if (item_.cool(held.source, d)) {
    return Way::cool;
  }
  return frozen && item_.frozen(held.source, d) ? std::optional(Way::loose) : std::nullopt;
}

std::optional<std::size_t> ServiceChoices::lender(const Holdings& held, std::size_t d,
                                                  bool frozen) const {
  std::optional<std::size_t> best;
  const auto rank = [&](const Holding& one) {
    return std::tuple(!one.open, one.open ? one.until : source(one).cool_until,
                      one.open ? never : source(one).frozen_until);
  };
  for (std::size_t i = 0; i < held.size(); ++i) {
    if (held[i].free() > 0 && way_at_hand(held[i], d, frozen) &&
        (!best || rank(held[i]) < rank(held[*best]))) {
      best = i;
    }
  }
  return best;
}

bool ServiceChoices::is_done(const Holding& held, std::size_t next) const {
  if (!held.open) {
    return item_.end_of_use[held.source] <= next;
  }
  return held.until < item_.earliest(next, held.thawed) &&
         (held.frozen_until == never || held.frozen_until < item_.earliest(next, true));
}

bool ServiceChoices::freezes_rest(const Holdings& rest) const {
  Amount sum = 0;
  for (const Holding& held : rest) {
    sum += is_frozen_to_keep(item_, held) ? held.free() : 0;
  }
  return sum >= facts_.least_frozen;
}

void ServiceChoices::offer(std::vector<Candidate>& candidates, const Holdings& held,
                           const Candidate& one) const {
  const auto goes_off = [&](const Candidate& candidate) {
    const Holding& holding = held[candidate.at];
    const Source& from = source(holding);
    switch (candidate.way) {
    case Way::open:
    case Way::cool:
      return std::pair(from.cool_until, from.frozen_until);
    case Way::of_portion:
      return std::pair(holding.frozen_until, holding.until);
    case Way::loose:
    case Way::whole:
    case Way::portioned:
      break;
    }
    return std::pair(from.frozen_until, from.cool_until);
  };
  for (Candidate& other : candidates) {
    if (other.order == one.order) {
      if (is_chosen_last(held[one.at])) {
        return;
      }
      if (is_chosen_last(held[other.at]) || goes_off(one) < goes_off(other)) {
        other = one;
      }
      return;
    }
  }
  candidates.push_back(one);
}

void ServiceChoices::find_candidates(const Holdings& held, std::size_t d,
                                     const DemandAtHand& at_hand,
                                     std::vector<Candidate>& candidates) const {
  candidates.clear();
  if (takes_too_little(d, at_hand)) {
    add_frozen(held, d, at_hand, candidates);
    return;
  }
  add_cool(held, d, candidates);
  if (item_.demands[d].takes_frozen) {
    // What is added now may go again; these stay where they are.
    const std::size_t cool_count = candidates.size();
    add_frozen(held, d, at_hand, candidates);
    const std::span<const Candidate> cool(candidates.data(), cool_count);
    // What can be frozen, too, need not be chosen before what is good unfrozen now, unless that
    // is of use to others: or spares them the freezer, where taking things from there costs
    // something, or leaves too little to take from there.
    const bool spares = facts_.least_frozen > 0 ||
                        (facts_.from_freezer > 0 &&
                         std::any_of(cool.begin(), cool.end(), [&](const Candidate& one) {
                           return item_.end_of_cool_use[held[one.at].source] > d + 1;
                         }));
    std::erase_if(candidates, [&](const Candidate& one) {
      return from_freezer(one.way) && !cool.empty() && !freezes_for_room() && !chosen_last_ &&
             !spares && std::all_of(held.begin(), held.end(), [&](const Holding& like) {
               return !is_behind(like, held[one.at], d) ||
                      std::all_of(cool.begin(), cool.end(), [&](const Candidate& other) {
                        return can_wait(like, held[other.at], d);
                      });
             });
    });
  }
  // What is lent is taken back only where nothing else is left: nobody stints a dish while there
  // is another pack.
  if (candidates.empty()) {
    add_lent(held, d, at_hand, candidates);
  }
}

bool ServiceChoices::can_wait(const Holding& frozen, const Holding& cool, std::size_t d) const {
  if (item_.end_of_use[cool.source] <= d + 1 && !item_.keeps(cool.source)) {
    return true;
  }
  const Day until = frozen.open ? frozen.frozen_until : source(frozen).frozen_until;
  const bool keeps = is_kept(frozen) || !item_.keeps(cool.source);
  return item_.end_of_fresh_use[cool.source] <= d + 1 && keeps && !source(cool).comes_in_packs &&
         (until >= item_.last_frozen_use || until >= source(cool).frozen_until);
}

void ServiceChoices::add_cool(const Holdings& held, std::size_t d,
                              std::vector<Candidate>& candidates) const {
  for (std::size_t i = 0; i < held.size(); ++i) {
    const Holding& one = held[i];
    const Source& from = source(one);
    if (!one.open && one.free() > 0 && item_.cool(one.source, d)) {
      offer(candidates, held,
            {i, Way::cool, order_of(from, Way::cool), from.comes_in_packs, false});
    }
  }
}

void ServiceChoices::add_frozen(const Holdings& held, std::size_t d, const DemandAtHand& at_hand,
                                std::vector<Candidate>& candidates) const {
  const Demand& demand = item_.demands[d];
  for (std::size_t i = 0; i < held.size(); ++i) {
    const Holding& one = held[i];
    const Source& from = source(one);
    if (one.free() == 0 ||
        !(from.in_freezer || is_enough(free_frozen(held, d, at_hand), d, at_hand))) {
      continue;
    }
    const auto add = [&](Way way, bool packs) {
      const bool for_room = !one.open && item_.cool(one.source, d);
      offer(candidates, held, {i, way, order_of(from, way, for_room), packs, false});
    };
    if (one.open) {
      if (one.frozen_until != never && one.frozen_until >= demand.day - demand.slack) {
        add(Way::of_portion, false);
      }
    } else if (item_.frozen(one.source, d) && (!item_.cool(one.source, d) || freezes_for_room())) {
      if (!from.comes_in_packs) {
        add(Way::loose, false);
      } else {
        add(Way::whole, true);
        if (!from.in_freezer) {
          add(Way::portioned, true);
        }
      }
    }
  }
}

Amount ServiceChoices::free_frozen(const Holdings& held, std::size_t d,
                                   const DemandAtHand& at_hand) const {
  Amount sum = 0;
  for (const Holding& one : held) {
    const bool from_there = one.open || !item_.cool(one.source, d) || freezes_for_room();
    if (from_there && serves_frozen(one, d)) {
      sum += source(one).served_by(item_.demands[d], one.free(), at_hand.amount);
    }
  }
  return std::min(sum, at_hand.amount);
}

void ServiceChoices::add_lent(const Holdings& held, std::size_t d, const DemandAtHand& at_hand,
                              std::vector<Candidate>& candidates) const {
  for (std::size_t i = 0; i < held.size(); ++i) {
    const auto way = held[i].lent > 0 ? way_at_hand(held[i], d, true) : std::nullopt;
    if (!way) {
      continue;
    }
    const Source& from = source(held[i]);
    const Amount served = from.served_by(item_.demands[d], held[i].lent, at_hand.amount);
    if (!from_freezer(*way) || from.in_freezer || is_enough(served, d, at_hand)) {
      candidates.push_back({i, *way, std::numeric_limits<std::size_t>::max(), false, true});
      return; // one after the other
    }
  }
}

} // namespace manciple::buying
