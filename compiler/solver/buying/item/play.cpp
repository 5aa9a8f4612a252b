#include "buying/item/play.hpp"

#include "buying/item/service.hpp"
#include "buying/item/weighing.hpp"

#include <tuple>

namespace manciple::buying {
namespace {

/// A part of what a holding consists of.
struct Part : Fate {
  std::size_t source = 0;
  std::optional<Day> opened_on;
};

/// Parts that a demand has taken for what gives.
struct Loan {
  std::size_t demand = 0;
  Way way = Way::cool;
  std::vector<Part> parts;
};

/// What a holding consists of, beside the holding itself.
struct Contents {
  Holding holding;
  std::vector<Part> parts;
  std::vector<Loan> loans;
};

/// All that is noted; shared by the branch's track, which may be copied.
struct Notes {
  const Prepared* item = nullptr;
  std::vector<Contents> contents;
  Played out;
  /// By demand: how much of what gives is lacking, and what is missing.
  std::vector<Amount> lacking, missing;

  Contents& of(const Holding& holding) {
    for (Contents& one : contents) {
      if (one.holding.key() == holding.key()) {
        return one;
      }
    }
    contents.push_back({holding, {}, {}});
    return contents.back();
  }

  const Source& source(const Holding& holding) const { return item->sources[holding.source]; }
  const Source& source(const Part& part) const { return item->sources[part.source]; }

  /// Takes `amount` out of parts: what goes off first, in the freezer or out of it.
  template <typename Each>
  void take_out(std::vector<Part>& parts, Amount amount, bool frozen, Each each) const {
    while (amount > 0) {
      const auto part = first_of(parts, frozen);
      Part taken = *part;
      taken.amount = std::min(amount, part->amount);
      each(taken);
      part->amount -= taken.amount;
      amount -= taken.amount;
      if (part->amount == 0) {
        parts.erase(part);
      }
    }
  }

  /// Things that can do the same are held as one from some day on, and yet the one that goes off
  /// first is used first; of equals, what was there first.
  std::vector<Part>::iterator first_of(std::vector<Part>& parts, bool frozen) const {
    const auto rank = [&](const Part& part) {
      const Source& from = source(part);
      const auto [first, second] = frozen ? std::pair(from.frozen_until, from.cool_until)
                                          : std::pair(from.cool_until, from.frozen_until);
      return std::tuple(first, second, part.source, part.pack);
    };
    return std::min_element(parts.begin(), parts.end(),
                            [&](const Part& a, const Part& b) { return rank(a) < rank(b); });
  }

  void serve(const Holding& holding, const Part& part, std::size_t d, Way way) {
    const Day home = source(part).home;
    Serving serving;
    static_cast<Fate&>(serving) = static_cast<const Fate&>(part);
    serving.demand = item->ids[d];
    serving.frozen = from_freezer(way) || holding.thawed;
    serving.frozen_on = way == Way::of_portion ? std::max(home, holding.frozen_on) : home;
    serving.whole = holding.thawed;
    serving.opened_on = part.opened_on;
    out.solution.servings.push_back(serving);
  }

  void add_stays(const Part& part, const Holding& holding, bool portion, Day until) {
    for (const Stay& stay : stays_of(source(part), holding, part.amount, portion, until)) {
      if (stay.amount > 0 && stay.until > stay.from) {
        out.stays.push_back(stay);
      }
    }
  }

  /// So much of what gives is lacking after all: in units of the holding that lent it.
  void cancel(const Contents& from, const Loan& loan, Amount amount) {
    const Demand& demand = item->demands[loan.demand];
    lacking[loan.demand] += source(from.holding).served_by(demand, amount, demand.give);
  }
};

struct PlayTrack {
  Notes* notes = nullptr;

  void stay(const Stay&) {} // each part has its own
  void take(const Holding& holding, std::size_t demand, Amount amount, Way way) {
    const bool portion = from_freezer(way) && way != Way::whole;
    notes->take_out(notes->of(holding).parts, amount, from_freezer(way), [&](const Part& part) {
      notes->add_stays(part, holding, portion, notes->item->demands[demand].day);
      notes->serve(holding, part, demand, way);
    });
  }
  void open(const Holding& unopened, const Holding& opened, Day day) {
    if (notes == nullptr) {
      return; // the stock that is open from the start: see Player
    }
    std::vector<Part>& parts = notes->of(unopened).parts;
    const auto first = notes->first_of(parts, opened.thawed);
    Part part = *first;
    parts.erase(first);
    part.opened_on = std::max(day, notes->source(part).home);
    notes->of(opened).parts.push_back(part);
  }
  void rename(const Holding& from, const Holding& to) {
    Contents moved = std::move(notes->of(from));
    notes->of(from).parts.clear();
    notes->of(from).loans.clear();
    Contents& target = notes->of(to);
    target.parts.insert(target.parts.end(), moved.parts.begin(), moved.parts.end());
    target.loans.insert(target.loans.end(), moved.loans.begin(), moved.loans.end());
  }
  void thaw(std::size_t) { notes->out.solution.handling += notes->item->item->from_freezer; }
  void miss(std::size_t demand, Amount amount) { notes->missing[demand] += amount; }
  void lend(const Holding& holding, std::size_t demand, Amount amount, Way way) {
    Contents& from = notes->of(holding);
    Loan loan{demand, way, {}};
    notes->take_out(from.parts, amount, from_freezer(way),
                    [&](const Part& part) { loan.parts.push_back(part); });
    from.loans.push_back(std::move(loan));
  }
  void take_back(const Holding& holding, Amount amount) {
    Contents& from = notes->of(holding);
    while (amount > 0) {
      Loan& loan = from.loans.back();
      Part part = loan.parts.back();
      part.amount = std::min(part.amount, amount);
      loan.parts.back().amount -= part.amount;
      if (loan.parts.back().amount == 0) {
        loan.parts.pop_back();
      }
      notes->cancel(from, loan, part.amount);
      from.parts.push_back(part);
      amount -= part.amount;
      if (loan.parts.empty()) {
        from.loans.pop_back();
      }
    }
  }
  void lack(std::size_t demand, Amount amount) { notes->lacking[demand] += amount; }
  void settle(const Holding& holding, bool kept) {
    Contents& from = notes->of(holding);
    for (const Loan& loan : from.loans) { // it takes no room: see `Shortage` in model.hpp
      for (const Part& part : loan.parts) {
        notes->serve(holding, part, loan.demand, loan.way);
      }
    }
    from.loans.clear();
    notes->take_out(from.parts, holding.free(), false, [&](const Part& part) {
      if (kept) {
        Kept left;
        static_cast<Fate&>(left) = static_cast<const Fate&>(part);
        left.frozen = !holding.open && !notes->item->keeps_cool(holding.source);
        notes->add_stays(part, holding, left.frozen, notes->item->last_day + 1);
        left.opened_on = part.opened_on;
        notes->out.solution.kept.push_back(left);
      } else {
        Waste waste;
        static_cast<Fate&>(waste) = static_cast<const Fate&>(part);
        const Source& source = notes->source(part);
        const Day last = holding.open        ? holding.until
                         : source.in_freezer ? source.frozen_until
                                             : source.cool_until;
        waste.day = last + 1;
        notes->out.solution.wastes.push_back(waste);
      }
    });
  }
};

class Player {
public:
  Player(const Prepared& item, const ItemPlan& plan)
      : item_(item),
        plan_(plan),
        service_(item, plan.apart ? Lots::apart : Lots::together),
        weighing_(item) {
    notes_.item = &item;
    notes_.lacking.assign(item.demands.size(), 0);
    notes_.missing.assign(item.demands.size(), 0);
  }

  Played run() {
    Branch<PlayTrack> branch = service_.start();
    branch.track.notes = &notes_;
    lay_in_stock();
    Fine cost = branch.cost;
    branch.cost = 0;
    std::span<const std::uint32_t> script = plan_.choices;
    script = service_.play(branch, service_.block(0), script);
    std::size_t next = 0;
    for (std::size_t v = 0; v < item_.visits.size(); ++v) {
      service_.enter(branch, v);
      for (; next < plan_.buys.size() && plan_.buys[next].visit == v; ++next) {
        buy(branch, plan_.buys[next]);
      }
      script = service_.play(branch, service_.block(v + 1), script);
    }
    cost += branch.cost;
    finish(cost);
    return std::move(notes_.out);
  }

private:
  void lay_in_stock() {
    for (std::size_t s = 0; s < item_.sources.size() && item_.sources[s].stock; ++s) {
      const Source& source = item_.sources[s];
      const Lot& lot = item_.item->stock[source.lot];
      const Holding unopened = unopened_of(s, 0);
      const int packs = source.comes_in_packs ? lot.packs : 1;
      for (int pack = 0; pack < packs; ++pack) {
        const Part part{{true, source.lot.index(), pack, lot.amount / packs}, s, {}};
        if (pack == 0 && lot.opened_until) {
          Holding opened = unopened;
          opened.open = true;
          opened.until = *lot.opened_until;
          notes_.of(opened).parts.push_back(part);
        } else {
          notes_.of(unopened).parts.push_back(part);
        }
      }
    }
  }

  void buy(Branch<PlayTrack>& branch, const Buy& buy) {
    const Visit& visit = item_.visits[buy.visit];
    const Offer& offer = item_.item->offers[buy.offer];
    const auto o = static_cast<std::size_t>(
        std::find(visit.offers.begin(), visit.offers.end(), buy.offer) - visit.offers.begin());
    const Amount amount =
        offer.by_weight ? weighing_.amount(branch.held, buy.visit, visit.sources[o], buy.packs)
                        : offer.pack * buy.packs;
    Purchase purchase{
        visit.stop, buy.offer, buy.packs, offer.cost.of(buy.packs), offer.till.of(buy.packs),
        amount};
    const Holding bought = service_.bought(buy.visit, visit.sources[o], amount);
    branch.cost += service_.wasted(bought);
    put(branch.held, bought);
    const bool apart = item_.sources[visit.sources[o]].comes_in_packs && !offer.by_weight;
    const int packs = apart ? buy.packs * offer.inside : 1;
    for (int pack = 0; pack < packs; ++pack) {
      notes_.of(bought).parts.push_back(
          {{false, notes_.out.solution.purchases.size(), pack, purchase.amount / packs},
           visit.sources[o],
           {}});
    }
    notes_.out.solution.cost += purchase.cost;
    notes_.out.solution.purchases.push_back(purchase);
  }

  void finish(Fine cost) {
    ItemSolution& solution = notes_.out.solution;
    const Item& facts = *item_.item;
    Amount kept = 0;
    for (const Kept& left : solution.kept) {
      kept += left.amount;
    }
    for (const Waste& waste : solution.wastes) {
      solution.waste_value += value_of(waste.amount, facts.waste);
    }
    solution.salvage_value = value_of(std::min(kept, facts.salvage_cap), facts.salvage);
    for (std::size_t d = 0; d < item_.demands.size(); ++d) {
      if (notes_.lacking[d] > 0 || notes_.missing[d] > 0) {
        solution.shorts.push_back({item_.ids[d], notes_.lacking[d], notes_.missing[d]});
      }
      if (notes_.missing[d] > 0) {
        solution.missing_value +=
            value_of(notes_.missing[d], facts.missing) + fine(facts.missing_once);
      }
    }
    // What gives is reckoned in units of what served the demand, which only the rules know.
    solution.lacking_value = cost - solution.waste_value + solution.salvage_value -
                             solution.missing_value - fine(solution.handling);
    const auto order = [](const Serving& a, const Serving& b) {
      return std::tie(a.demand, a.stock, a.of, a.pack, a.frozen) <
             std::tie(b.demand, b.stock, b.of, b.pack, b.frozen);
    };
    std::stable_sort(solution.servings.begin(), solution.servings.end(), order);
  }

  const Prepared& item_;
  const ItemPlan& plan_;
  Service<PlayTrack> service_;
  Weighing weighing_;
  Notes notes_;
};

} // namespace

Played play(const Prepared& item, const ItemPlan& plan) {
  return Player(item, plan).run();
}

} // namespace manciple::buying
