#include "purchase/stops.hpp"

#include <algorithm>
#include <set>

namespace manciple::purchase {

Limits::Limits(const Options& options)
    : end_(std::chrono::steady_clock::now() +
           std::chrono::duration_cast<std::chrono::steady_clock::duration>(
               std::chrono::duration<double>(std::clamp(options.seconds, 0.0, 1e6)))),
      most_nodes_(options.nodes) {}

bool Limits::reached() {
  over_ = over_ || ++nodes_ > most_nodes_ || std::chrono::steady_clock::now() > end_;
  return over_;
}

double Limits::seconds_left() const {
  return std::max(0.0,
                  std::chrono::duration<double>(end_ - std::chrono::steady_clock::now()).count());
}

Cost stop_cost(const Stop& stop) {
  return {fine(stop.cost), one_stop};
}

StopTerms plain_terms(const Model& model) {
  StopTerms terms;
  for (const Stop& stop : model.stops)
    terms.cost.push_back(stop_cost(stop));
  terms.shop_gain.assign(model.shops.size(), 0);
  return terms;
}

namespace {

class StopSearch {
public:
  StopSearch(Ledger& ledger, const StopTerms& terms, const std::vector<StopChoice>& choices,
             Limits& limits, Cost cutoff)
      : ledger_(ledger),
        terms_(terms),
        limits_(limits),
        slack_(choices.size()),
        basket_(ledger, first(choices)),
        plain_(basket_) {
    result_.cost = cutoff;
    for (StopId stop = 0; stop < choices.size(); ++stop)
      if (choices[stop] == StopChoice::maybe)
        slack_[stop] = std::max(Cost{}, terms.cost[stop]);
  }

  /// A first set.
  StopsResult start() {
    if (is_possible(basket_.goods_cost()))
      improve(used());
    return result_;
  }

  StopsResult run() {
    if (!is_possible(basket_.goods_cost()))
      return {};
    const Cost cutoff = result_.cost;
    improve(used());
    for (int pass = 0; pass < most_passes && bound() < result_.cost; ++pass)
      if (!ascend())
        break;
    branch();
    result_.bound = std::min(result_.bound, result_.cost);
    if (result_.made.empty() && result_.cost == cutoff)
      result_.cost = impossible;
    return result_;
  }

private:
  static constexpr int most_passes = 4;

  static std::vector<StopState> first(const std::vector<StopChoice>& choices) {
    std::vector<StopState> states;
    for (const StopChoice choice : choices)
      states.push_back(choice == StopChoice::no     ? StopState::closed
                       : choice == StopChoice::must ? StopState::open
                                                    : StopState::charged);
    return states;
  }

  std::size_t stops() const { return basket_.stops().size(); }
  bool undecided(StopId stop) const { return basket_.stops()[stop] == StopState::charged; }

  /// Cost besides the goods; an undecided stop counts only as far as it gains something.
  Cost stops_cost(const std::vector<StopState>& states) const {
    Cost sum{terms_.constant, 0};
    std::vector<bool> visited(terms_.shop_gain.size(), false);
    for (StopId stop = 0; stop < states.size(); ++stop) {
      if (states[stop] == StopState::closed)
        continue;
      visited[ledger_.model().stops[stop].shop] = true;
      sum +=
          states[stop] == StopState::open ? terms_.cost[stop] : std::min(Cost{}, terms_.cost[stop]);
    }
    for (ShopId shop = 0; shop < visited.size(); ++shop)
      sum.value -= visited[shop] ? terms_.shop_gain[shop] : 0;
    return sum;
  }
  Cost bound() const {
    const Cost goods = basket_.goods_cost();
    return is_possible(goods) ? goods + stops_cost(basket_.stops()) : impossible;
  }

  /// Stops that are made if the undecided ones that a good uses are.
  std::vector<StopState> used() const {
    std::vector<StopState> states = basket_.stops();
    for (StopId stop = 0; stop < states.size(); ++stop)
      if (states[stop] == StopState::charged)
        states[stop] = is_used(stop) ? StopState::open : StopState::closed;
    return states;
  }
  bool is_used(StopId stop) const {
    const std::vector<Meeting>& meetings = ledger_.at_stop(stop);
    return std::any_of(meetings.begin(), meetings.end(),
                       [&](Meeting meeting) { return basket_.uses(meeting); });
  }

  /// Cost (or bound, if goods are coupled) with exactly these stops made.
  Cost set_plain(const std::vector<StopState>& states) {
    for (StopId stop = 0; stop < states.size(); ++stop)
      plain_.set(stop, states[stop]);
    const Cost goods = plain_.goods_cost();
    return is_possible(goods) ? goods + stops_cost(states) : impossible;
  }

  static std::vector<bool> made(const std::vector<StopState>& states) {
    std::vector<bool> result;
    for (const StopState state : states)
      result.push_back(state == StopState::open);
    return result;
  }

  /// Takes the set as the best one so far if it is. A set whose real cost could not be settled
  /// weakens the bound.
  void offer(Cost total, const std::vector<StopState>& states) {
    if (total >= result_.cost)
      return;
    if (terms_.exact) {
      if (!tried_.insert(made(states)).second)
        return;
      const auto [cost, bound] = terms_.exact(made(states), result_.cost);
      if (bound < cost)
        result_.bound = std::min(result_.bound, std::max(bound, total));
      total = cost;
    }
    if (total < result_.cost) {
      result_.cost = total;
      result_.made = made(states);
    }
  }

  /// Drops and adds stops one at a time while that pays.
  void improve(std::vector<StopState> states) {
    Cost total = set_plain(states);
    if (!terms_.exact)
      offer(total, states);
    for (bool better = true; better;) {
      better = false;
      for (StopId stop = 0; stop < states.size(); ++stop) {
        if (!undecided(stop))
          continue;
        const StopState before = states[stop];
        states[stop] = before == StopState::open ? StopState::closed : StopState::open;
        const Cost now = set_plain(states);
        if (now < total) {
          total = now;
          better = true;
        } else {
          states[stop] = before;
        }
      }
    }
    offer(total, states);
  }

  /// Lets the goods that use an undecided stop pay for it, each up to what it would pay for the
  /// stop rather than do without. Raises the bound by as much. False if nothing could be raised.
  bool ascend() {
    bool raised = false;
    for (StopId stop = 0; stop < stops(); ++stop) {
      if (!undecided(stop))
        continue;
      for (const Meeting meeting : ledger_.at_stop(stop)) {
        if (slack_[stop] == Cost{})
          break;
        if (!basket_.uses(meeting))
          continue;
        const Cost without = basket_.cost_if(meeting, StopState::closed);
        const Cost worth = without - basket_.outcome(meeting.good).cost;
        const Cost by = std::min(worth, slack_[stop]);
        if (by <= Cost{})
          continue;
        ledger_.raise_share(meeting, by);
        basket_.refresh(meeting.good);
        slack_[stop] -= by;
        raised = true;
      }
    }
    return raised;
  }

  /// How much closing the stop adds to the goods' part of the bound.
  Cost loss(StopId stop) const {
    Cost sum;
    for (const Meeting meeting : ledger_.at_stop(stop)) {
      if (!basket_.uses(meeting))
        continue;
      const Cost without = basket_.cost_if(meeting, StopState::closed);
      if (!is_possible(without))
        return impossible;
      sum += without - basket_.outcome(meeting.good).cost;
    }
    return sum;
  }

  /// Decides stops that leave no choice, and names the one to branch on. False if the node is done
  /// with.
  bool decide(std::vector<StopId>& decided, StopId& next) {
    for (bool changed = true; changed;) {
      changed = false;
      if (bound() >= result_.cost)
        return false;
      const std::vector<StopState> states = used();
      if (!terms_.exact)
        offer(set_plain(states), states);
      if (bound() >= result_.cost)
        return false;
      Cost most{-1, 0};
      bool any_used = false;
      for (StopId stop = 0; stop < stops() && !changed; ++stop) {
        if (!undecided(stop))
          continue;
        StopState decision = StopState::charged;
        if (bound() + slack_[stop] >= result_.cost) {
          decision = StopState::closed;
        } else if (states[stop] == StopState::open) {
          const Cost worth = loss(stop);
          if (bound() + worth >= result_.cost) {
            decision = StopState::open;
          } else if (worth > most || !any_used) {
            any_used = true;
            most = worth;
            next = stop;
          }
        } else if (terms_.exact && most < Cost{}) {
          // Not used by any good: may still be made for a reduction.
          most = Cost{};
          next = stop;
        }
        if (decision == StopState::charged)
          continue;
        basket_.set(stop, decision);
        decided.push_back(stop);
        changed = true;
      }
      if (changed || most >= Cost{})
        continue;
      // All that is used is open, and nothing undecided can do better.
      if (terms_.exact)
        offer(set_plain(states), states);
      return false;
    }
    return true;
  }

  void branch() {
    if (limits_.reached()) {
      result_.bound = std::min(result_.bound, bound());
      return;
    }
    std::vector<StopId> decided;
    StopId next = 0;
    if (decide(decided, next)) {
      const bool open_first = is_used(next);
      for (const bool open : {open_first, !open_first}) {
        basket_.set(next, open ? StopState::open : StopState::closed);
        branch();
        basket_.set(next, StopState::charged);
      }
    }
    for (const StopId stop : decided)
      basket_.set(stop, StopState::charged);
  }

  Ledger& ledger_;
  const StopTerms& terms_;
  Limits& limits_;
  /// By stop: what no good pays of its cost yet.
  std::vector<Cost> slack_;
  Basket basket_;
  Basket plain_;
  std::set<std::vector<bool>> tried_;
  StopsResult result_;
};

} // namespace

StopsResult likely_stops(Ledger& ledger, const StopTerms& terms,
                         const std::vector<StopChoice>& choices, Limits& limits) {
  return StopSearch(ledger, terms, choices, limits, impossible).start();
}

StopsResult choose_stops(Ledger& ledger, const StopTerms& terms,
                         const std::vector<StopChoice>& choices, Limits& limits, Cost cutoff) {
  return StopSearch(ledger, terms, choices, limits, cutoff).run();
}

} // namespace manciple::purchase
