#pragma once

#include "buying/item/branch.hpp"
#include "buying/item/holding.hpp"

#include <optional>
#include <vector>

namespace manciple::buying {

/// Of packs of two kinds a demand takes any number of each; but if it can use up more than this of
/// one kind, those.
constexpr Amount packs_to_choose = 8;

/// How far the demand at hand has been served.
struct DemandAtHand {
  bool begun = false;
  Amount amount = 0; ///< still to be served, `give` left out
  bool frozen = false;
  Amount thawed = 0;     ///< served from the freezer
  bool from_bag = false; ///< some of that was frozen after the beginning
  bool missed = false;   ///< something of it is missing
  /// Packs of kinds up to this order have been taken as many as was chosen.
  std::size_t after = 0;
};
/// Something held that could serve the demand.
struct Candidate {
  std::size_t at = 0; ///< in what is held
  Way way = Way::cool;
  std::size_t order = 0;
  bool packs = false;
  bool back = false; ///< what it has lent
};
/// A candidate and how much of it, or nothing.
struct ServiceChoice {
  Candidate candidate;
  Amount packs = 0;  ///< 0: as much as there is and is needed
  bool none = false; ///< the demand goes without
};

/// What could serve the demand at hand, by the rules of use (model.hpp), out of what is held.
class ServiceChoices {
public:
  explicit ServiceChoices(const Prepared& item) : item_(item), facts_(*item.item) {}

  /// From now on, this source is chosen only where nothing else serves; none: there is no such.
  void choose_last(std::optional<std::size_t> source) { chosen_last_ = source; }

  /// Fills `ways` with those in which the demand may be served next, one of which has to be chosen;
  /// none if nothing serves it. `candidates` is room to work in. False if something could serve the
  /// demand, but was passed over.
  bool find_alternatives(const Holdings& held, std::size_t d, const DemandAtHand& at_hand,
                         std::vector<ServiceChoice>& ways,
                         std::vector<Candidate>& candidates) const;
  /// Which way looking ahead takes.
  std::size_t first_way(const Holdings& held, const std::vector<ServiceChoice>& ways) const;
  /// Of the opened packs that are good unfrozen for the demand, the one that goes off first.
  std::optional<std::size_t> opened_cool(const Holdings& held, std::size_t d) const;
  /// Something was frozen for the demand, but less than is worth a bag so far.
  bool takes_too_little(std::size_t d, const DemandAtHand& at_hand) const {
    return at_hand.from_bag && at_hand.thawed < least_frozen(d);
  }
  /// The way in which something that is open or loose serves the demand without more ado; with
  /// `frozen`, from the freezer, too.
  std::optional<Way> way_at_hand(const Holding& held, std::size_t d, bool frozen) const;
  /// What goes off first of what is open, then of what is loose.
  std::optional<std::size_t> lender(const Holdings& held, std::size_t d, bool frozen) const;
  /// Size of a pack of an unopened holding: what was weighed is one pack.
  Amount pack_of(const Holding& held) const {
    const Source& from = source(held);
    const bool weighed = !from.stock && facts_.offers[from.offer].by_weight;
    return weighed ? held.left : from.pack;
  }
  /// Nothing later can be served by it.
  bool is_done(const Holding& held, std::size_t next) const;
  /// It is good beyond the end.
  bool is_kept(const Holding& held) const {
    return held.open ? held.until >= facts_.kept_day : item_.keeps(held.source);
  }
  /// What would have to be is enough for a bag.
  bool freezes_rest(const Holdings& rest) const;

private:
  bool freezes_for_room() const { return item_.freezes_for_room; }
  const Source& source(const Holding& held) const { return item_.sources[held.source]; }

  bool is_chosen_last(const Holding& held) const { return chosen_last_ == held.source; }
  static bool is_opened_cool(const Holding& held, const Demand& demand) {
    return held.open && held.until >= demand.day - demand.slack &&
           (!held.thawed || demand.takes_frozen);
  }
  /// Of holdings of one kind in one state, the one that goes off first.
  void offer(std::vector<Candidate>& candidates, const Holdings& held, const Candidate& one) const;
  void find_candidates(const Holdings& held, std::size_t d, const DemandAtHand& at_hand,
                       std::vector<Candidate>& candidates) const;
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
  bool can_wait(const Holding& frozen, const Holding& cool, std::size_t d) const;
  static constexpr std::size_t way_count = 6;
  /// Candidates of one order stand behind each other. What is good unfrozen, but has been frozen
  /// for want of room, hides nothing else.
  std::size_t order_of(const Source& from, Way way, bool for_room = false) const {
    return (from.kind * 2 + (for_room ? 1 : 0)) * way_count + static_cast<std::size_t>(way);
  }
  void add_cool(const Holdings& held, std::size_t d, std::vector<Candidate>& candidates) const;
  void add_frozen(const Holdings& held, std::size_t d, const DemandAtHand& at_hand,
                  std::vector<Candidate>& candidates) const;
  /// The least that the demand takes from the freezer if something was frozen for it.
  Amount least_frozen(std::size_t d) const {
    return std::min(facts_.least_frozen, item_.demands[d].amount - item_.demands[d].give);
  }
  /// So much more from there would do.
  bool is_enough(Amount more, std::size_t d, const DemandAtHand& at_hand) const {
    return at_hand.thawed + more >= least_frozen(d);
  }
  /// What there is for the demand in the freezer.
  Amount free_frozen(const Holdings& held, std::size_t d, const DemandAtHand& at_hand) const;
  /// What was lent to other demands.
  void add_lent(const Holdings& held, std::size_t d, const DemandAtHand& at_hand,
                std::vector<Candidate>& candidates) const;

  const Prepared& item_;
  const Item& facts_;
  std::optional<std::size_t> chosen_last_;
};

} // namespace manciple::buying
