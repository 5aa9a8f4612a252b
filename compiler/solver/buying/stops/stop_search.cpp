#include "buying/stops/stop_search.hpp"

#include <algorithm>
#include <set>

namespace manciple::buying {

StopChoices choices_of(const Model& model) {
  StopChoices choices;
  for (const Stop& stop : model.stops) {
    choices.push_back(stop.always ? StopChoice::must : StopChoice::maybe);
  }
  return choices;
}

OpenStops may_be_open(const StopChoices& choices) {
  OpenStops result;
  for (const StopChoice choice : choices) {
    result.push_back(choice != StopChoice::no);
  }
  return result;
}

StopTerms plain_terms(const Model& model) {
  StopTerms terms;
  for (const Stop& stop : model.stops) {
    terms.cost.push_back(stop_cost(stop));
  }
  terms.shop_gain.assign(model.shops.size(), 0);
  return terms;
}

namespace {

using StopStates = Table<StopId, StopState>;

class StopSearch {
public:
  StopSearch(SubproblemCache& cache, const StopTerms& terms, const StopChoices& choices,
             Cost cutoff)
      : cache_(cache),
        terms_(terms),
        budget_(cache.budget()),
        slack_(choices.size()),
        basket_(cache, first(choices)),
        plain_(basket_) {
    result_.cost = cutoff;
    root_ = bound();
    for (const ItemId item : ids(cache.items())) {
      alone_.push_back(basket_.outcome(item).bound);
    }
    for (const StopId stop : ids(choices)) {
      if (choices[stop] == StopChoice::maybe) {
        slack_[stop] = std::max(Cost{}, terms.cost[stop]);
      }
    }
  }

  /// A first set.
  StopsResult start() {
    if (is_possible(basket_.bound())) {
      improve(used());
    }
    return result_;
  }

  StopsResult run() {
    if (!is_possible(basket_.bound())) {
      return {};
    }
    const Cost cutoff = result_.cost;
    tell_what_is_enough();
    improve(used());
    for (int pass = 0; pass < most_passes && bound() < result_.cost && !budget_.spent(); ++pass) {
      if (!ascend()) {
        break;
      }
    }
    branch();
    result_.bound = std::min(result_.bound, result_.cost);
    if (result_.open.empty() && result_.cost == cutoff) {
      result_.cost = impossible;
    }
    return result_;
  }

private:
  static constexpr int most_passes = 4;

  static StopStates first(const StopChoices& choices) {
    StopStates states;
    for (const StopChoice choice : choices) {
      states.push_back(choice == StopChoice::no     ? StopState::closed
                       : choice == StopChoice::must ? StopState::open
                                                    : StopState::charged);
    }
    return states;
  }

  IdRange<StopId> stops() const { return ids(basket_.stops()); }
  bool undecided(StopId stop) const { return basket_.stops()[stop] == StopState::charged; }

  /// Cost besides the items; an undecided stop counts only as far as it gains something.
  Cost stops_cost(const StopStates& states) const {
    Cost sum{terms_.constant, 0};
    Table<ShopId, bool> visited(terms_.shop_gain.size(), false);
    for (const StopId stop : ids(states)) {
      if (states[stop] == StopState::closed) {
        continue;
      }
      visited[cache_.model().stops[stop].shop] = true;
      sum +=
          states[stop] == StopState::open ? terms_.cost[stop] : std::min(Cost{}, terms_.cost[stop]);
    }
    for (const ShopId shop : ids(terms_.shop_gain)) {
      sum.value -= visited[shop] ? terms_.shop_gain[shop] : 0;
    }
    return sum;
  }
  Cost bound() const {
    const Cost items = basket_.bound();
    return is_possible(items) ? items + stops_cost(basket_.stops()) : impossible;
  }

  /// Stops that are made if the undecided ones that an item uses are.
  StopStates used() const {
    StopStates states = basket_.stops();
    for (const StopId stop : ids(states)) {
      if (states[stop] == StopState::charged) {
        states[stop] = is_used(stop) ? StopState::open : StopState::closed;
      }
    }
    return states;
  }
  bool is_used(StopId stop) const {
    const std::vector<Meeting>& meetings = cache_.at_stop(stop);
    return std::any_of(meetings.begin(), meetings.end(),
                       [&](Meeting meeting) { return basket_.uses(meeting); });
  }

  /// Cost (or bound, if items are coupled) with exactly these stops made.
  Cost set_plain(const StopStates& states) {
    for (const StopId stop : ids(states)) {
      plain_.set(stop, states[stop]);
    }
    const Cost items = terms_.exact ? plain_.bound() : plain_.cost();
    return is_possible(items) ? items + stops_cost(states) : impossible;
  }

  static OpenStops open(const StopStates& states) {
    OpenStops result;
    for (const StopState state : states) {
      result.push_back(state == StopState::open);
    }
    return result;
  }

  /// Takes the set as the best one so far if it is. A set whose real cost could not be settled
  /// weakens the bound.
  void offer(Cost total, const StopStates& states) {
    if (total >= result_.cost) {
      return;
    }
    if (terms_.exact) {
      if (!tried_.insert(open(states)).second) {
        return;
      }
      const auto [cost, bound] = terms_.exact(open(states), result_.cost);
      if (bound < cost) {
        result_.bound = std::min(result_.bound, std::max(bound, total));
      }
      total = cost;
    }
    if (total < result_.cost) {
      result_.cost = total;
      result_.open = open(states);
      tell_what_is_enough();
    }
  }

  /// An item that costs so much more than with all stops made that the others cannot make up for it
  /// is part of no better list.
  void tell_what_is_enough() {
    if (!is_possible(root_) || result_.cost < root_) {
      return;
    }
    Table<ItemId, Cost> enough = alone_;
    for (Cost& one : enough) {
      one += result_.cost - root_;
    }
    cache_.know_up_to(std::move(enough));
  }

  /// Drops and adds stops one at a time while that pays.
  void improve(StopStates states) {
    Cost total = set_plain(states);
    if (!terms_.exact) {
      offer(total, states);
    }
    for (bool better = true; better && !budget_.spent();) {
      better = false;
      for (const StopId stop : ids(states)) {
        if (!undecided(stop) || budget_.spent()) {
          continue;
        }
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

  /// Lets the items that use an undecided stop pay for it, each up to what it would pay for the
  /// stop rather than do without. Raises the bound by as much. False if nothing could be raised.
  bool ascend() {
    bool raised = false;
    for (const StopId stop : stops()) {
      if (!undecided(stop)) {
        continue;
      }
      for (const Meeting meeting : cache_.at_stop(stop)) {
        if (slack_[stop] == Cost{} || budget_.spent()) {
          break;
        }
        if (!basket_.uses(meeting)) {
          continue;
        }
        const Cost without = basket_.bound_if(meeting, StopState::closed);
        const Cost worth = without - basket_.outcome(meeting.item).bound;
        const Cost by = std::min(worth, slack_[stop]);
        if (by <= Cost{}) {
          continue;
        }
        cache_.raise_share(meeting, by);
        basket_.refresh(meeting.item);
        slack_[stop] -= by;
        raised = true;
      }
    }
    return raised;
  }

  /// How much closing the stop adds to the items' part of the bound.
  Cost loss(StopId stop) const {
    Cost sum;
    for (const Meeting meeting : cache_.at_stop(stop)) {
      if (!basket_.uses(meeting)) {
        continue;
      }
      const Cost without = basket_.bound_if(meeting, StopState::closed);
      if (!is_possible(without)) {
        return impossible;
      }
      // Of an outcome that is only a bound, the bound may be lower without the stop.
      sum += std::max(Cost{}, without - basket_.outcome(meeting.item).bound);
    }
    return sum;
  }

  /// Decides stops that leave no choice, and names the one to branch on. False if the node is done
  /// with.
  bool decide(std::vector<StopId>& decided, StopId& next) {
    for (bool changed = true; changed;) {
      changed = false;
      if (bound() >= result_.cost) {
        return false;
      }
      const StopStates states = used();
      if (!terms_.exact) {
        offer(set_plain(states), states);
      }
      if (bound() >= result_.cost) {
        return false;
      }
      Cost most{-1, 0};
      bool any_used = false;
      for (const StopId stop : stops()) {
        if (!undecided(stop)) {
          continue;
        }
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
          // Not used by any item: may still be made for a reduction.
          most = Cost{};
          next = stop;
        }
        if (decision != StopState::charged) {
          basket_.set(stop, decision);
          decided.push_back(stop);
          changed = true;
          break;
        }
      }
      if (changed || most >= Cost{}) {
        continue;
      }
      // All that is used is open, and nothing undecided can do better than what this set costs.
      if (terms_.exact) {
        offer(set_plain(states), states);
      } else if (bound() < set_plain(states)) {
        result_.bound = std::min(result_.bound, bound()); // some outcome is only a bound
      }
      return false;
    }
    return true;
  }

  void branch() {
    budget_.node();
    if (budget_.spent()) {
      result_.bound = std::min(result_.bound, bound());
      return;
    }
    std::vector<StopId> decided;
    StopId next;
    if (decide(decided, next)) {
      const bool open_first = is_used(next);
      for (const bool open : {open_first, !open_first}) {
        basket_.set(next, open ? StopState::open : StopState::closed);
        branch();
        basket_.set(next, StopState::charged);
      }
    }
    for (const StopId stop : decided) {
      basket_.set(stop, StopState::charged);
    }
  }

  SubproblemCache& cache_;
  const StopTerms& terms_;
  WorkBudget& budget_;
  /// By stop: what no item pays of its cost yet.
  Table<StopId, Cost> slack_;
  Basket basket_;
  Basket plain_;
  /// With every stop undecided: the bound, and of each item.
  Cost root_;
  Table<ItemId, Cost> alone_;
  std::set<OpenStops> tried_;
  StopsResult result_;
};

} // namespace

StopsResult likely_stops(SubproblemCache& cache, const StopTerms& terms,
                         const StopChoices& choices) {
  cache.forget_shares(); // items pay each stop once
  cache.know_up_to({});
  return StopSearch(cache, terms, choices, impossible).start();
}

StopsResult choose_stops(SubproblemCache& cache, const StopTerms& terms, const StopChoices& choices,
                         Cost cutoff) {
  cache.forget_shares();
  cache.know_up_to({});
  StopsResult result = StopSearch(cache, terms, choices, cutoff).run();
  cache.know_up_to({});
  return result;
}

} // namespace manciple::buying
