#pragma once

#include "buying/item/branch.hpp"
#include "buying/item/holding.hpp"
#include "buying/item/service_choices.hpp"

#include <deque>
#include <optional>
#include <span>
#include <vector>

namespace manciple::buying {

/// Goes through an item's demands by the rules of use (model.hpp), and parts where they leave a
/// choice. What is held is counted as waste until it is used.
template <typename Track>
class Service {
public:
  Service(const Prepared& item, Lots lots)
      : item_(item), facts_(*item.item), choices_(item), apart_(lots == Lots::apart) {}

  /// The stock.
  Branch<Track> start() const {
    Branch<Track> branch;
    for (std::size_t s = 0; s < item_.sources.size() && item_.sources[s].stock; ++s) {
      const Lot& lot = facts_.stock[item_.sources[s].lot];
      branch.cost += value_of(lot.amount, facts_.waste);
      Amount unopened = lot.amount;
      if (lot.opened_until) {
        const Source& source = item_.sources[s];
        unopened -= source.pack;
        const Holding sealed = unopened_of(s, source.pack);
        Holding opened = sealed;
        opened.open = true;
        opened.until = *lot.opened_until;
        put(branch.held, opened);
        branch.track.open(sealed, opened, never);
      }
      if (unopened > 0) {
        put(branch.held, unopened_of(s, unopened));
      }
    }
    return branch;
  }

  /// Before anything is bought at a visit: what has become the same is put together.
  void enter(Branch<Track>& branch, std::size_t visit) const {
    if (!changes(branch.held.data(), branch.held.data() + branch.held.size(), visit)) {
      return;
    }
    const Holdings before = branch.held;
    branch.held.clear();
    for (const Holding& one : before) {
      Holding same = one;
      if (!one.open) {
        same.source = static_cast<std::uint32_t>(item_.same_as(visit, one.source));
      }
      if (same.source != one.source) {
        branch.track.rename(one, same);
      }
      put(branch.held, same);
    }
  }
  /// Something is put together there.
  bool changes(const Holding* begin, const Holding* end, std::size_t visit) const {
    return !apart_ && std::any_of(begin, end, [&](const Holding& one) {
      return !one.open && item_.same_as(visit, one.source) != one.source;
    });
  }

  /// What so much that is bought at a visit is held as.
  Holding bought(std::size_t visit, std::size_t source, Amount amount) const {
    return unopened_of(apart_ ? source : item_.same_as(visit, source), amount);
  }
  Fine wasted(const Holding& held) const { return value_of(held.left, facts_.waste); }

  /// How many blocks of demands there are: those before the first visit, then those from each visit
  /// to the next one or to the end.
  std::size_t blocks() const { return item_.visits.size() + 1; }

  /// Demands that are served one after the other, with nothing bought between them.
  struct DemandRange {
    std::size_t begin = 0, end = 0;
    /// Nothing comes after it.
    bool last = false;
  };
  [[nodiscard]] DemandRange block(std::size_t number) const {
    return {number == 0 ? 0 : item_.first_served[number - 1], item_.first_served[number],
            number + 1 == blocks()};
  }

  /// Serves the demands of a range and hands every way in which that can go to `sink`.
  template <typename Sink>
  void run(Branch<Track>& branch, const DemandRange& demands, Sink&& sink) {
    script_.reset();
    go(branch, demands, demands.begin, DemandAtHand{}, 0, sink);
  }
  /// Likewise, but makes the choices of a script; returns what is left of that.
  std::span<const std::uint32_t> play(Branch<Track>& branch, const DemandRange& demands,
                                      std::span<const std::uint32_t> script) {
    script_ = script;
    const auto sink = [](const Branch<Track>&) {};
    go(branch, demands, demands.begin, DemandAtHand{}, 0, sink);
    return *script_;
  }

  /// What follows if nothing else is bought after a visit and, where there is a choice, what is
  /// good unfrozen is taken first, in the order of the sources; with `last`, that source only where
  /// nothing else serves.
  void look_ahead(Branch<Track>& branch, std::size_t visit, std::optional<std::size_t> last) {
    script_.reset();
    chooses_first_ = true;
    choices_.choose_last(last);
    const auto sink = [](const Branch<Track>&) {};
    for (std::size_t number = visit + 1; number < blocks(); ++number) {
      go(branch, block(number), block(number).begin, DemandAtHand{}, 0, sink);
    }
    chooses_first_ = false;
    choices_.choose_last(std::nullopt);
  }

private:
  const Source& source(const Holding& held) const { return item_.sources[held.source]; }

  template <typename Sink>
  void go(Branch<Track>& branch, const DemandRange& demands, std::size_t demand,
          DemandAtHand at_hand, std::size_t depth, Sink& sink) {
    for (;;) {
      if (demand == demands.end) {
        settle(branch, demands.end, demands.last);
        sink(branch);
        return;
      }
      if (!at_hand.begun) {
        at_hand.begun = true;
        at_hand.amount = item_.demands[demand].amount - item_.demands[demand].give;
      }
      if (at_hand.amount == 0) {
        finish(branch, demand, at_hand);
        ++demand;
        at_hand = DemandAtHand{};
        continue;
      }
      if (const auto opened = choices_.opened_cool(branch.held, demand);
          opened && !choices_.takes_too_little(demand, at_hand)) {
        take(branch, demand, {{*opened, Way::open, 0, false, false}}, at_hand);
        continue;
      }
      std::vector<ServiceChoice>& ways = scratch(depth).alternatives;
      if (!choices_.find_alternatives(branch.held, demand, at_hand, ways,
                                      scratch(depth).candidates)) {
        return; // kinds were passed over that are needed after all
      }
      if (ways.empty()) {
        miss(branch, demand, at_hand);
        continue;
      }
      if (ways.size() == 1) {
        take(branch, demand, ways.front(), at_hand);
        continue;
      }
      if (chooses_first_) {
        take(branch, demand, ServiceChoice(ways[choices_.first_way(branch.held, ways)]), at_hand);
        continue;
      }
      if (script_) {
        const std::uint32_t choice = script_->front();
        script_ = script_->subspan(1);
        branch.choices.push_back(choice);
        take(branch, demand, ServiceChoice(ways[choice]), at_hand);
        continue;
      }
      for (std::size_t w = 0; w + 1 < ways.size(); ++w) {
        Branch<Track>& other = scratch(depth).branch;
        other = branch;
        DemandAtHand then = at_hand;
        other.choices.push_back(static_cast<std::uint32_t>(w));
        take(other, demand, ServiceChoice(scratch(depth).alternatives[w]), then);
        go(other, demands, demand, then, depth + 1, sink);
      }
      const std::size_t last = scratch(depth).alternatives.size() - 1;
      branch.choices.push_back(static_cast<std::uint32_t>(last));
      take(branch, demand, ServiceChoice(scratch(depth).alternatives[last]), at_hand);
    }
  }

  void take(Branch<Track>& branch, std::size_t d, const ServiceChoice& way, DemandAtHand& at_hand) {
    if (way.none) {
      miss(branch, d, at_hand);
      return;
    }
    const Demand& demand = item_.demands[d];
    const Candidate& candidate = way.candidate;
    at_hand.frozen = at_hand.frozen || from_freezer(candidate.way);
    if (!candidate.packs) {
      Holding& held = branch.held[candidate.at];
      const Amount needed = source(held).spent_on(demand, at_hand.amount);
      const Amount part = std::min(candidate.back ? held.lent : held.free(), needed);
      cover(source(held), demand, part, candidate.way, at_hand);
      if (candidate.back) {
        branch.track.take_back(held, part);
        held.lent -= part;
      }
      serve(branch, held, d, part, candidate.way);
      held.left -= part;
      if (held.left == 0) {
        branch.held.erase(branch.held.begin() + static_cast<std::ptrdiff_t>(candidate.at));
      }
      return;
    }
    // Packs are opened one after the other; all but the last are used up.
    const Holding unopened = branch.held[candidate.at];
    const Source& from = source(unopened);
    const Amount pack = choices_.pack_of(unopened);
    Amount left = unopened.left;
    Holding opened = open_pack(unopened, demand, candidate.way);
    for (Amount n = 0; left > 0 && at_hand.amount > 0 && (way.packs == 0 || n < way.packs); ++n) {
      opened.left = pack;
      branch.track.open(unopened, opened, opening_day(unopened, demand, candidate.way));
      const Amount part = std::min(pack, from.spent_on(demand, at_hand.amount));
      cover(from, demand, part, candidate.way, at_hand);
      serve(branch, opened, d, part, candidate.way);
      opened.left -= part;
      left -= pack;
    }
    Holding& rest = branch.held[candidate.at];
    rest.left = left;
    if (left == 0) {
      branch.held.erase(branch.held.begin() + static_cast<std::ptrdiff_t>(candidate.at));
    }
    if (way.packs > 0 && way.packs <= packs_to_choose) {
      // Another holding of the kind may follow one that is used up.
      at_hand.after = std::max(at_hand.after, candidate.order + (left > 0 ? 1U : 0U));
    }
    if (opened.left > 0) {
      put(branch.held, opened);
    }
  }

  /// So much of a source leaves that much less open.
  static void cover(const Source& from, const Demand& demand, Amount part, Way way,
                    DemandAtHand& at_hand) {
    const Amount served = from.served_by(demand, part, at_hand.amount);
    at_hand.amount -= served;
    if (from_freezer(way)) {
      at_hand.thawed += served;
      at_hand.from_bag = at_hand.from_bag || !from.in_freezer;
    }
  }

  Day opening_day(const Holding& unopened, const Demand& demand, Way way) const {
    const Source& from = source(unopened);
    return way == Way::portioned ? from.home
                                 : std::max({demand.day - demand.slack, from.home, from.ready});
  }

  Holding open_pack(const Holding& unopened, const Demand& demand, Way way) const {
    const Source& from = source(unopened);
    Holding opened = unopened;
    opened.open = true;
    opened.lent = 0;
    const Day day = opening_day(unopened, demand, way);
    switch (way) {
    case Way::whole:
      opened.thawed = true;
      opened.until = day + from.opened;
      break;
    case Way::portioned:
      opened.until = std::min(day + from.opened, from.cool_until);
      opened.frozen_until = from.frozen_until;
      opened.frozen_on = day;
      break;
    default:
      opened.until = std::min(day + from.opened, from.cool_until);
      if (from.refrozen) {
        opened.frozen_until = day + *from.refrozen;
        opened.frozen_on = day;
      }
    }
    return opened;
  }

  /// Counts a part as used, and the room that it took until then.
  void serve(Branch<Track>& branch, const Holding& held, std::size_t d, Amount part, Way way) {
    branch.cost -= value_of(part, facts_.waste);
    branch.track.take(held, d, part, way);
    add_stays(branch, held, part, from_freezer(way) && way != Way::whole, item_.demands[d].day);
  }

  void add_stays(Branch<Track>& branch, const Holding& held, Amount part, bool portion,
                 Day until) const {
    for (const Stay& stay : stays_of(source(held), held, part, portion, until)) {
      branch.track.stay(stay);
    }
  }

  void miss(Branch<Track>& branch, std::size_t d, DemandAtHand& at_hand) const {
    branch.cost += value_of(at_hand.amount, facts_.missing) + fine(facts_.missing_once);
    branch.track.miss(d, at_hand.amount);
    at_hand.amount = 0;
    at_hand.missed = true;
  }

  /// What the demand may lack is taken from what is open or loose, unless it is needed otherwise,
  /// or something of the demand is missing anyway.
  void finish(Branch<Track>& branch, std::size_t d, const DemandAtHand& at_hand) const {
    const Demand& demand = item_.demands[d];
    if (at_hand.frozen) {
      branch.cost += fine(facts_.from_freezer);
      branch.track.thaw(d);
    }
    Amount give = demand.give;
    while (give > 0) {
      const auto at =
          at_hand.missed ? std::nullopt : choices_.lender(branch.held, d, at_hand.frozen);
      if (!at) {
        branch.cost += value_of(give, facts_.lacking);
        branch.track.lack(d, give);
        return;
      }
      Holding& held = branch.held[*at];
      const Source& from = source(held);
      const Amount part = std::min(held.free(), from.spent_on(demand, give));
      if (part == 0) {
        return; // less than can be told apart
      }
      give -= from.served_by(demand, part, give);
      branch.track.lend(held, d, part, *choices_.way_at_hand(held, d, at_hand.frozen));
      held.lent += part;
      branch.cost += value_of(part, facts_.lacking);
    }
  }

  /// What was lent is eaten.
  void eat_lent(Branch<Track>& branch, Holding& held) const {
    branch.cost -= value_of(held.lent, facts_.lacking) + value_of(held.lent, facts_.waste);
    held.left -= held.lent;
  }

  /// Takes out what is of no more use, before demand `next`; at the end, everything.
  void settle(Branch<Track>& branch, std::size_t next, bool at_end) const {
    Amount kept = 0;
    std::size_t stay = 0;
    const bool freezes = !at_end || choices_.freezes_rest(branch.held);
    for (std::size_t i = 0; i < branch.held.size(); ++i) {
      Holding held = branch.held[i];
      const bool keep = choices_.is_kept(held) && (freezes || !is_frozen_to_keep(item_, held));
      if (!at_end && (keep || !choices_.is_done(held, next))) {
        branch.held[stay++] = held;
        continue;
      }
      branch.track.settle(held, keep);
      eat_lent(branch, held);
      if (keep) {
        kept += held.left;
        branch.cost -= value_of(held.left, facts_.waste);
        const bool frozen = !held.open && !item_.keeps_cool(held.source);
        add_stays(branch, held, held.left, frozen, item_.last_day + 1);
      }
    }
    branch.held.resize(stay);
    if (at_end) {
      branch.cost -= value_of(std::min(kept, facts_.salvage_cap), facts_.salvage);
    }
  }

  struct Scratch {
    std::vector<Candidate> candidates;
    std::vector<ServiceChoice> alternatives;
    Branch<Track> branch;
  };
  Scratch& scratch(std::size_t depth) {
    while (scratch_.size() <= depth) {
      scratch_.emplace_back();
    }
    return scratch_[depth];
  }

  const Prepared& item_;
  const Item& facts_;
  ServiceChoices choices_;
  bool apart_;
  std::deque<Scratch> scratch_;
  std::optional<std::span<const std::uint32_t>> script_;
  bool chooses_first_ = false;
};

} // namespace manciple::buying
