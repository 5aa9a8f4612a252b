#pragma once

#include "buying/item/holding.hpp"
#include "buying/item/plan.hpp"
#include "buying/item/room_rates.hpp"

#include <array>
#include <deque>
#include <limits>
#include <optional>
#include <span>
#include <tuple>
#include <utility>
#include <vector>

namespace manciple::buying {

/// Of packs of two kinds a demand takes any number of each; but if it can use up more than this of
/// one kind, those.
constexpr Amount packs_to_choose = 8;

/// In which state a part of a holding serves a demand.
enum class Way : std::uint8_t {
  open,       ///< of an opened pack, unfrozen
  cool,       ///< loose, or by opening a pack, unfrozen
  loose,      ///< loose, frozen on the day on which it came home (or stock from the freezer)
  of_portion, ///< of an opened pack, as a frozen portion
  whole,      ///< by thawing and opening a pack that was frozen whole
  portioned   ///< by opening a pack on the day on which it came home and freezing portions of it
};
constexpr bool from_freezer(Way way) {
  return way >= Way::loose;
}

/// One way in which things may go on.
///
/// A `Track` notes what happens along it; copied where ways part. It has
///
///     void stay(const Stay&)                              something takes room
///     void take(const Holding&, size_t demand, Amount, Way)   an opened pack or a loose holding
///                                                         serves so much of its own
///     void open(const Holding& unopened, const Holding& opened, Day)      one pack is opened
///     void rename(const Holding& from, const Holding& to)
///     void thaw(size_t demand)                            it is served from the freezer
///     void miss(size_t demand, Amount)                    nothing serves so much of it
///     void lend(const Holding&, size_t demand, Amount, Way)   it takes so much for what gives
///     void take_back(const Holding&, Amount)              so much of what was lent last is needed
///     void lack(size_t demand, Amount)                    so much of what gives is lacking anyway
///     void settle(const Holding&, bool kept)              no demand takes more of it: what is lent
///                                                         is eaten, and the rest is left
template <typename Track>
struct Branch {
  Holdings held;
  /// Waste (of all that is not used yet), shortage, handling, salvage; not purchases and room.
  Fine cost = 0;
  /// What was chosen where there was a choice.
  std::vector<std::uint32_t> choices;
  Track track;
};

/// Notes nothing: a track derives from it and hides what it does note.
struct BlankTrack {
  void stay(const Stay&) {}
  void take(const Holding&, std::size_t, Amount, Way) {}
  void open(const Holding&, const Holding&, Day) {}
  void rename(const Holding&, const Holding&) {}
  void thaw(std::size_t) {}
  void miss(std::size_t, Amount) {}
  void lend(const Holding&, std::size_t, Amount, Way) {}
  void take_back(const Holding&, Amount) {}
  void lack(std::size_t, Amount) {}
  void settle(const Holding&, bool) {}
};

/// Where a part of a holding that came from `from` has been until `until`: in its cool place or, as
/// a portion, frozen.
inline std::array<Stay, 3> stays_of(const Source& from, const Holding& held, Amount part,
                                    bool portion, Day until) {
  Day in_freezer = until;
  Day out_of_freezer = until;
  if (from.in_freezer || held.thawed) {
    in_freezer = from.home;
    out_of_freezer = held.thawed ? held.until - from.opened : until;
  } else if (portion) {
    in_freezer = held.open ? held.frozen_on : from.home;
  }
  return {Stay{part, from.place, false, from.home, in_freezer},
          Stay{part, Place::freezer, true, in_freezer, out_of_freezer},
          Stay{part, from.thawed_in, false, out_of_freezer, until}};
}

/// Goes through an item's demands by the rules of use (model.hpp), and parts where they leave a
/// choice. What is held is counted as waste until it is used.
template <typename Track>
class Service {
public:
  Service(const Prepared& item, Lots lots)
      : item_(item), facts_(*item.item), apart_(lots == Lots::apart) {}

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
  struct Stretch {
    std::size_t begin = 0, end = 0;
    /// Nothing comes after it.
    bool last = false;
  };
  [[nodiscard]] Stretch block(std::size_t number) const {
    return {number == 0 ? 0 : item_.first_served[number - 1], item_.first_served[number],
            number + 1 == blocks()};
  }

  /// Serves the demands of a stretch and hands every way in which that can go to `sink`.
  template <typename Sink>
  void run(Branch<Track>& branch, const Stretch& stretch, Sink&& sink) {
    script_.reset();
    go(branch, stretch, stretch.begin, Open{}, 0, sink);
  }
  /// Likewise, but makes the choices of a script; returns what is left of that.
  std::span<const std::uint32_t> play(Branch<Track>& branch, const Stretch& stretch,
                                      std::span<const std::uint32_t> script) {
    script_ = script;
    const auto sink = [](const Branch<Track>&) {};
    go(branch, stretch, stretch.begin, Open{}, 0, sink);
    return *script_;
  }

  /// What follows if nothing else is bought after a visit and, where there is a choice, what is
  /// good unfrozen is taken first, in the order of the sources; with `last`, that source only where
  /// nothing else serves.
  void look_ahead(Branch<Track>& branch, std::size_t visit, std::optional<std::size_t> last) {
    script_.reset();
    chooses_first_ = true;
    chosen_last_ = last;
    const auto sink = [](const Branch<Track>&) {};
    for (std::size_t number = visit + 1; number < blocks(); ++number) {
      go(branch, block(number), block(number).begin, Open{}, 0, sink);
    }
    chooses_first_ = false;
  }

private:
  /// The demand at hand.
  struct Open {
    bool begun = false;
    Amount amount = 0; ///< still to be served, `give` left out
    bool frozen = false;
    Amount thawed = 0;     ///< served from the freezer
    bool from_bag = false; ///< some of that was frozen after the beginning
    bool missed = false;   ///< something of it is missing
    /// Packs of kinds up to this order have been taken as many as was chosen.
    std::size_t after = 0;
  };
  struct Candidate {
    std::size_t at = 0; ///< in what is held
    Way way = Way::cool;
    std::size_t order = 0;
    bool packs = false;
    bool back = false; ///< what it has lent
  };
  struct Alternative {
    Candidate candidate;
    Amount packs = 0;  ///< 0: as much as there is and is needed
    bool none = false; ///< the demand goes without
  };

  bool freezes_for_room() const { return item_.freezes_for_room; }
  const Source& source(const Holding& held) const { return item_.sources[held.source]; }

  template <typename Sink>
  void go(Branch<Track>& branch, const Stretch& stretch, std::size_t demand, Open open,
          std::size_t depth, Sink& sink) {
    for (;;) {
      if (demand == stretch.end) {
        settle(branch, stretch.end, stretch.last);
        sink(branch);
        return;
      }
      if (!open.begun) {
        open.begun = true;
        open.amount = item_.demands[demand].amount - item_.demands[demand].give;
      }
      if (open.amount == 0) {
        finish(branch, demand, open);
        ++demand;
        open = Open{};
        continue;
      }
      if (const auto opened = opened_cool(branch.held, demand);
          opened && !takes_too_little(demand, open)) {
        take(branch, demand, {{*opened, Way::open, 0, false, false}}, open);
        continue;
      }
      std::vector<Alternative>& ways = scratch(depth).alternatives;
      if (!find_alternatives(branch.held, demand, open, ways, scratch(depth).candidates)) {
        return; // kinds were passed over that are needed after all
      }
      if (ways.empty()) {
        miss(branch, demand, open);
        continue;
      }
      if (ways.size() == 1) {
        take(branch, demand, ways.front(), open);
        continue;
      }
      if (chooses_first_) {
        take(branch, demand, Alternative(ways[first_way(branch.held, ways)]), open);
        continue;
      }
      if (script_) {
        const std::uint32_t choice = script_->front();
        script_ = script_->subspan(1);
        branch.choices.push_back(choice);
        take(branch, demand, Alternative(ways[choice]), open);
        continue;
      }
      for (std::size_t w = 0; w + 1 < ways.size(); ++w) {
        Branch<Track>& other = scratch(depth).branch;
        other = branch;
        Open then = open;
        other.choices.push_back(static_cast<std::uint32_t>(w));
        take(other, demand, Alternative(scratch(depth).alternatives[w]), then);
        go(other, stretch, demand, then, depth + 1, sink);
      }
      const std::size_t last = scratch(depth).alternatives.size() - 1;
      branch.choices.push_back(static_cast<std::uint32_t>(last));
      take(branch, demand, Alternative(scratch(depth).alternatives[last]), open);
    }
  }

  /// Which way looking ahead takes.
  std::size_t first_way(const Holdings& held, const std::vector<Alternative>& ways) const {
    const std::size_t first = ways.front().none ? 1 : 0;
    for (std::size_t w = first; chosen_last_ && w < ways.size(); ++w) {
      if (!is_chosen_last(held[ways[w].candidate.at])) {
        return w;
      }
    }
    return first;
  }
  bool is_chosen_last(const Holding& held) const { return chosen_last_ == held.source; }

  /// Of the opened packs that are good unfrozen for the demand, the one that goes off first.
  std::optional<std::size_t> opened_cool(const Holdings& held, std::size_t d) const {
    const Demand& demand = item_.demands[d];
    std::optional<std::size_t> best;
    for (std::size_t i = 0; i < held.size(); ++i) {
      const Holding& one = held[i];
      if (one.free() > 0 && is_opened_cool(one, demand) &&
          (!best || one.until < held[*best].until)) {
        best = i;
      }
    }
    return best;
  }
  static bool is_opened_cool(const Holding& held, const Demand& demand) {
    return held.open && held.until >= demand.day - demand.slack &&
           (!held.thawed || demand.takes_frozen);
  }

  /// Of holdings of one kind in one state, the one that goes off first.
  void offer(std::vector<Candidate>& candidates, const Holdings& held, const Candidate& one) const {
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

  void find_candidates(const Holdings& held, std::size_t d, const Open& open,
                       std::vector<Candidate>& candidates) const {
    candidates.clear();
    if (takes_too_little(d, open)) {
      add_frozen(held, d, open, candidates);
      return;
    }
    add_cool(held, d, candidates);
    if (item_.demands[d].takes_frozen) {
      // What is added now may go again; these stay where they are.
      const std::size_t cool_count = candidates.size();
      add_frozen(held, d, open, candidates);
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
      add_lent(held, d, open, candidates);
    }
  }

  /// It may be taken from the freezer once the other, which goes off before it, is used up.
  bool is_behind(const Holding& held, const Holding& other, std::size_t d) const {
    return source(held).kind == source(other).kind && serves_frozen(held, d);
  }
  bool serves_frozen(const Holding& held, std::size_t d) const {
    return held.open ? held.frozen_until != never &&
                           held.frozen_until >= item_.demands[d].day - item_.demands[d].slack
                     : item_.frozen(held.source, d);
  }

  /// What is frozen can do later whatever the other, which is good unfrozen now, could do later.
  bool can_wait(const Holding& frozen, const Holding& cool, std::size_t d) const {
    if (item_.end_of_use[cool.source] <= d + 1 && !item_.keeps(cool.source)) {
      return true;
    }
    const Day until = frozen.open ? frozen.frozen_until : source(frozen).frozen_until;
    const bool keeps = is_kept(frozen) || !item_.keeps(cool.source);
    return item_.end_of_fresh_use[cool.source] <= d + 1 && keeps && !source(cool).comes_in_packs &&
           (until >= item_.last_frozen_use || until >= source(cool).frozen_until);
  }

  static constexpr std::size_t way_count = 6;
  /// Candidates of one order stand behind each other. What is good unfrozen, but has been frozen
  /// for want of room, hides nothing else.
  std::size_t order_of(const Source& from, Way way, bool for_room = false) const {
    return (from.kind * 2 + (for_room ? 1 : 0)) * way_count + static_cast<std::size_t>(way);
  }

  void add_cool(const Holdings& held, std::size_t d, std::vector<Candidate>& candidates) const {
    for (std::size_t i = 0; i < held.size(); ++i) {
      const Holding& one = held[i];
      const Source& from = source(one);
      if (!one.open && one.free() > 0 && item_.cool(one.source, d)) {
        offer(candidates, held,
              {i, Way::cool, order_of(from, Way::cool), from.comes_in_packs, false});
      }
    }
  }

  void add_frozen(const Holdings& held, std::size_t d, const Open& open,
                  std::vector<Candidate>& candidates) const {
    const Demand& demand = item_.demands[d];
    for (std::size_t i = 0; i < held.size(); ++i) {
      const Holding& one = held[i];
      const Source& from = source(one);
      if (one.free() == 0 || !(from.in_freezer || is_enough(free_frozen(held, d, open), d, open))) {
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
      } else if (item_.frozen(one.source, d) &&
                 (!item_.cool(one.source, d) || freezes_for_room())) {
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

  /// The least that the demand takes from the freezer if something was frozen for it.
  Amount least_frozen(std::size_t d) const {
    return std::min(facts_.least_frozen, item_.demands[d].amount - item_.demands[d].give);
  }
  bool takes_too_little(std::size_t d, const Open& open) const {
    return open.from_bag && open.thawed < least_frozen(d);
  }
  /// So much more from there would do.
  bool is_enough(Amount more, std::size_t d, const Open& open) const {
    return open.thawed + more >= least_frozen(d);
  }

  /// What there is for the demand in the freezer.
  Amount free_frozen(const Holdings& held, std::size_t d, const Open& open) const {
    Amount sum = 0;
    for (const Holding& one : held) {
      const bool from_there = one.open || !item_.cool(one.source, d) || freezes_for_room();
      if (from_there && serves_frozen(one, d)) {
        sum += source(one).served_by(item_.demands[d], one.free(), open.amount);
      }
    }
    return std::min(sum, open.amount);
  }

  /// The way in which something that is open or loose serves the demand without more ado; with
  /// `frozen`, from the freezer, too.
  std::optional<Way> way_at_hand(const Holding& held, std::size_t d, bool frozen) const {
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

  /// What was lent to other demands.
  void add_lent(const Holdings& held, std::size_t d, const Open& open,
                std::vector<Candidate>& candidates) const {
    for (std::size_t i = 0; i < held.size(); ++i) {
      const auto way = held[i].lent > 0 ? way_at_hand(held[i], d, true) : std::nullopt;
      if (!way) {
        continue;
      }
      const Source& from = source(held[i]);
      const Amount served = from.served_by(item_.demands[d], held[i].lent, open.amount);
      if (!from_freezer(*way) || from.in_freezer || is_enough(served, d, open)) {
        candidates.push_back({i, *way, std::numeric_limits<std::size_t>::max(), false, true});
        return; // one after the other
      }
    }
  }

  /// Size of a pack of an unopened holding: what was weighed is one pack.
  Amount pack_of(const Holding& held) const {
    const Source& from = source(held);
    const bool weighed = !from.stock && facts_.offers[from.offer].by_weight;
    return weighed ? held.left : from.pack;
  }

  /// False if something could serve the demand, but was passed over.
  bool find_alternatives(const Holdings& held, std::size_t d, const Open& open,
                         std::vector<Alternative>& ways, std::vector<Candidate>& candidates) const {
    find_candidates(held, d, open, candidates);
    ways.clear();
    // It need not have been frozen: there may be no room for it, or a better use.
    if (!candidates.empty() && !takes_too_little(d, open) &&
        std::all_of(candidates.begin(), candidates.end(), [&](const Candidate& one) {
          return from_freezer(one.way) && !one.back && !source(held[one.at]).in_freezer;
        })) {
      ways.push_back({{}, 0, true});
    }
    if (candidates.size() == 1 && candidates.front().order >= open.after) {
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
      const Amount needed = source(holding).spent_on(item_.demands[d], open.amount);
      if (pack > needed) {
        ways.push_back({one, 1, false}); // the last pack: whichever
        continue;
      }
      // Full packs, kind by kind in one order, so that no two ways open the same packs.
      if (one.order < open.after) {
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

  void take(Branch<Track>& branch, std::size_t d, const Alternative& way, Open& open) {
    if (way.none) {
      miss(branch, d, open);
      return;
    }
    const Demand& demand = item_.demands[d];
    const Candidate& candidate = way.candidate;
    open.frozen = open.frozen || from_freezer(candidate.way);
    if (!candidate.packs) {
      Holding& held = branch.held[candidate.at];
      const Amount needed = source(held).spent_on(demand, open.amount);
      const Amount part = std::min(candidate.back ? held.lent : held.free(), needed);
      cover(source(held), demand, part, candidate.way, open);
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
    const Amount pack = pack_of(unopened);
    Amount left = unopened.left;
    Holding opened = open_pack(unopened, demand, candidate.way);
    for (Amount n = 0; left > 0 && open.amount > 0 && (way.packs == 0 || n < way.packs); ++n) {
      opened.left = pack;
      branch.track.open(unopened, opened, opening_day(unopened, demand, candidate.way));
      const Amount part = std::min(pack, from.spent_on(demand, open.amount));
      cover(from, demand, part, candidate.way, open);
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
      open.after = std::max(open.after, candidate.order + (left > 0 ? 1U : 0U));
    }
    if (opened.left > 0) {
      put(branch.held, opened);
    }
  }

  /// So much of a source leaves that much less open.
  static void cover(const Source& from, const Demand& demand, Amount part, Way way, Open& open) {
    const Amount served = from.served_by(demand, part, open.amount);
    open.amount -= served;
    if (from_freezer(way)) {
      open.thawed += served;
      open.from_bag = open.from_bag || !from.in_freezer;
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

  void miss(Branch<Track>& branch, std::size_t d, Open& open) const {
    branch.cost += value_of(open.amount, facts_.missing) + fine(facts_.missing_once);
    branch.track.miss(d, open.amount);
    open.amount = 0;
    open.missed = true;
  }

  /// What the demand may lack is taken from what is open or loose, unless it is needed otherwise,
  /// or something of the demand is missing anyway.
  void finish(Branch<Track>& branch, std::size_t d, const Open& open) const {
    const Demand& demand = item_.demands[d];
    if (open.frozen) {
      branch.cost += fine(facts_.from_freezer);
      branch.track.thaw(d);
    }
    Amount give = demand.give;
    while (give > 0) {
      const auto at = open.missed ? std::nullopt : lender(branch.held, d, open.frozen);
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
      branch.track.lend(held, d, part, *way_at_hand(held, d, open.frozen));
      held.lent += part;
      branch.cost += value_of(part, facts_.lacking);
    }
  }

  /// What goes off first of what is open, then of what is loose.
  std::optional<std::size_t> lender(const Holdings& held, std::size_t d, bool frozen) const {
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

  /// Nothing later can be served by it.
  bool is_done(const Holding& held, std::size_t next) const {
    if (!held.open) {
      return item_.end_of_use[held.source] <= next;
    }
    return held.until < item_.earliest(next, held.thawed) &&
           (held.frozen_until == never || held.frozen_until < item_.earliest(next, true));
  }

  bool is_kept(const Holding& held) const {
    return held.open ? held.until >= facts_.kept_day : item_.keeps(held.source);
  }

  /// What would have to be is enough for a bag.
  bool freezes_rest(const Holdings& rest) const {
    Amount sum = 0;
    for (const Holding& held : rest) {
      sum += is_frozen_to_keep(item_, held) ? held.free() : 0;
    }
    return sum >= facts_.least_frozen;
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
    const bool freezes = !at_end || freezes_rest(branch.held);
    for (std::size_t i = 0; i < branch.held.size(); ++i) {
      Holding held = branch.held[i];
      const bool keep = is_kept(held) && (freezes || !is_frozen_to_keep(item_, held));
      if (!at_end && (keep || !is_done(held, next))) {
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
    std::vector<Alternative> alternatives;
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
  bool apart_;
  std::deque<Scratch> scratch_;
  std::optional<std::span<const std::uint32_t>> script_;
  bool chooses_first_ = false;
  std::optional<std::size_t> chosen_last_;
};

} // namespace manciple::buying
