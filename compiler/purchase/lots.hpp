#pragma once

#include <algorithm>
#include <array>
#include <cstdint>
#include <utility>
#include <vector>

#include "purchase/room_price.hpp"
#include "purchase/subproblem.hpp"
#include "purchase/to_go.hpp"

namespace manciple::purchase {

/// How a state came about: `packs` of an offer at a visit, after state `parent`.
struct Step {
  std::int32_t parent = -1;
  std::int32_t visit = 0;
  std::int32_t offer = 0;
  std::int32_t packs = 0;
};

/// The buys that lead to a step, in order; runs of one offer at one visit put together.
std::vector<Buy> buys_to(const std::vector<Step>& steps, std::int32_t last);

template <std::size_t groups>
struct LotState {
  std::array<Amount, groups> served{};
  Cost key;
  std::int32_t step = -1;
};

template <std::size_t groups>
struct LotMemory {
  std::vector<LotState<groups>> front, base, fresh, queue;
  std::vector<std::array<Amount, groups>> skyline;
  std::vector<std::pair<Cost, std::size_t>> ranks;
  std::vector<Step> steps;
  ToGo to_go;
};

/// The subproblem of a good whose packs keep as long opened as closed. By the rule of use, what is
/// bought on a day serves the earliest uses that it may and nothing older does; so what has been
/// served of each group is a prefix, and together the prefixes are the state.
///
/// States are compared by a key instead of their cost. Of two states with the same later buys, the
/// one that has more served may waste more later, salvage less and hold stock longer: at most
/// `refund_` a unit (and what salvage is worth). So `key = cost + refund_ * served + salvaged` can
/// be compared: a state that has served no less at no higher key dominates.
///
/// A first, narrow pass gives an upper limit; in the second, exact pass, a state goes when its cost
/// and the least cost of the rest exceed it.
template <std::size_t groups>
class Lots {
public:
  Lots(const Prepared& good, const Terms& terms, LotMemory<groups>& memory)
      : good_(good), terms_(terms), memory_(memory), refund_(good.good->waste) {
    if (terms.room != nullptr && !terms.room->free()) {
      room_ = terms.room;
      const Fine highest = std::max(room_->cool.back(), room_->frozen.back());
      const auto days = static_cast<Fine>(good.visits.size());
      refund_ += static_cast<Fine>(Wide{highest} * days / 1'000'000) + 1;
    }
    for (std::size_t g = 0; g < good.group_total.size(); ++g)
      real_[g] = good.group_total[g];
    memory_.to_go.prepare(good, terms);
  }

  Outcome solve() {
    Outcome quick;
    narrow_ = good_.uses.size() > few_uses;
    if (narrow_)
      quick = pass();
    narrow_ = false;
    limit_ = quick.cost;
    Outcome exact = pass();
    return exact.cost < quick.cost ? exact : quick;
  }

private:
  using State = LotState<groups>;
  using Prefixes = std::array<Amount, groups>;
  static constexpr std::size_t narrow_states = 3;
  /// With so few uses, an upper limit does not save what it costs.
  static constexpr std::size_t few_uses = 4;

  Outcome pass() {
    memory_.steps.clear();
    memory_.front.assign(1, State{});
    for (visit_ = 0; visit_ < good_.visits.size() && !memory_.front.empty(); ++visit_) {
      if (is_possible(terms_.charge[visit_]))
        visit();
      else if (good_.required && good_.required->visit == visit_)
        memory_.front.clear();
    }
    return best();
  }

  const Visit& here() const { return good_.visits[visit_]; }
  Amount reach(std::size_t group) const {
    return group < here().reach.size() ? here().reach[group] : 0;
  }

  /// Serves as much as can be served by `amount` bought here, and adds to the key what that adds
  /// besides the price.
  void serve(Prefixes& served, Fine& key, Amount amount) const {
    const Prefixes before = served;
    Amount open = 0;
    for (std::size_t g = 0; g < groups; ++g)
      open += std::max<Amount>(0, reach(g) - served[g]);
    const Amount used = std::min(open, amount);
    if (used == open)
      for (std::size_t g = 0; g < groups; ++g)
        served[g] = std::max(served[g], reach(g));
    else if constexpr (groups == 1)
      served[0] += used;
    else
      merge(served, used);
    const Amount left = amount - used;
    const bool kept = good_.kept(here().day);
    key += refund_ * used + (kept ? 0 : value_of(left, good_.good->waste));
    if (room_ == nullptr)
      return;
    for (std::size_t g = 0; g < good_.groups.size(); ++g)
      key += room_of(before[g], served[g], g);
    key += priced(left, kept ? kept_price(*room_, good_, here().day)
                             : waste_price(*room_, good_, here().day));
  }

  /// Serves `amount` of the uses that something bought here may serve, in order.
  void merge(Prefixes& served, Amount amount) const {
    std::array<std::size_t, groups> next{};
    for (std::size_t g = 0; g < good_.groups.size(); ++g)
      next[g] = good_.first_unserved(g, served[g]);
    while (amount > 0) {
      std::size_t group = groups;
      std::size_t use = good_.uses.size();
      for (std::size_t g = 0; g < good_.groups.size(); ++g)
        if (next[g] < good_.groups[g].size() && good_.groups[g][next[g]] < use &&
            served[g] < here().reach[g]) {
          group = g;
          use = good_.groups[g][next[g]];
        }
      if (group == groups) { // only what is kept is left
        served[good_.kept_group] += amount;
        return;
      }
      const Amount step =
          std::min(amount, good_.uses[use].before + good_.uses[use].amount - served[group]);
      served[group] += step;
      amount -= step;
      ++next[group];
    }
  }

  Fine room_of(Amount from, Amount to, std::size_t group) const {
    Fine sum = 0;
    for (std::size_t i = good_.first_unserved(group, from); i < good_.groups[group].size(); ++i) {
      const Use& use = good_.uses[good_.groups[group][i]];
      const Amount begin = std::max(from, use.before);
      const Amount end = std::min(to, use.before + use.amount);
      if (begin >= end)
        break;
      sum += priced(end - begin, use_price(*room_, use, here().day));
    }
    const Amount kept = to - std::max(from, real_[group]);
    if (kept > 0)
      sum += priced(kept, kept_price(*room_, good_, here().day));
    return sum;
  }

  Fine price(std::size_t visit, Money money) const {
    return money * (terms_.per_money.empty() ? fine_per_money : terms_.per_money[visit]);
  }

  /// What the state has cost, with what it keeps sold.
  Cost cost(const State& state) const {
    Amount served = 0;
    for (std::size_t g = 0; g < groups; ++g)
      served += state.served[g];
    Cost cost = state.key;
    cost.value -= refund_ * served;
    if (good_.kept_cap > 0) {
      const Amount kept = state.served[good_.kept_group] - real_[good_.kept_group];
      if (kept > 0)
        cost.value -= value_of(kept, good_.good->salvage);
    }
    return cost;
  }

  /// A lower bound on the cost of what the state leads to if all that is still bought is bought at
  /// `visit` or later.
  Cost estimate(const State& state, std::size_t visit) const {
    double rest = 0;
    for (std::size_t g = 0; g < good_.groups.size(); ++g)
      rest += memory_.to_go.rest(visit, g, state.served[g]);
    if (good_.kept_cap > 0) {
      const Amount kept =
          std::max<Amount>(0, state.served[good_.kept_group] - real_[good_.kept_group]);
      rest -= memory_.to_go.gain(visit) * static_cast<double>(good_.kept_cap - kept);
    }
    if (rest >= static_cast<double>(impossible.value))
      return impossible;
    Cost result = cost(state);
    result.value += static_cast<Fine>(rest) - 1;
    return result;
  }

  /// The first pass has no limit.
  bool too_dear(const State& state) const { return !narrow_ && estimate(state, visit_) >= limit_; }

  void visit() {
    std::vector<State>& front = memory_.front;
    std::erase_if(front, [&](const State& state) {
      for (std::size_t g = 0; g < good_.groups.size(); ++g)
        if (state.served[g] < here().need[g])
          return true;
      return too_dear(state);
    });
    const bool required = good_.required && good_.required->visit == visit_;
    if (terms_.charge[visit_] == Cost{} && !required) {
      for (const OfferId offer : here().offers)
        extend(offer);
    } else {
      memory_.base = front;
      for (State& state : front)
        state.key += terms_.charge[visit_];
      if (required) {
        memory_.base.clear();
        extend(good_.required->offer, true);
      }
      for (const OfferId offer : here().offers)
        if (!required || offer != good_.required->offer)
          extend(offer);
      front.insert(front.end(), memory_.base.begin(), memory_.base.end());
      prune(front);
    }
    if (narrow_)
      narrow();
  }

  /// Leaves the most promising states.
  void narrow() {
    std::vector<State>& front = memory_.front;
    if (front.size() <= narrow_states)
      return;
    auto& ranks = memory_.ranks;
    ranks.clear();
    for (std::size_t i = 0; i < front.size(); ++i)
      ranks.emplace_back(estimate(front[i], visit_ + 1), i);
    std::partial_sort(ranks.begin(), ranks.begin() + narrow_states, ranks.end(),
                      [&](const auto& a, const auto& b) {
                        return a.first != b.first ? a.first < b.first
                                                  : front[a.second].served > front[b.second].served;
                      });
    memory_.base.clear();
    for (std::size_t k = 0; k < narrow_states; ++k)
      memory_.base.push_back(front[ranks[k].second]);
    front.swap(memory_.base);
    prune(front);
  }

  /// How many of the later visits can be awaited with this served.
  std::size_t awaits(const Prefixes& served) const {
    std::size_t v = visit_ + 1;
    const auto met = [&](std::size_t other) {
      for (std::size_t g = 0; g < good_.groups.size(); ++g)
        if (served[g] < good_.visits[other].need[g])
          return false;
      return true;
    };
    while (v < good_.visits.size() && met(v))
      ++v;
    for (std::size_t g = 0; v == good_.visits.size() && g < groups; ++g)
      if (served[g] < real_[g])
        return v;
    return v + 1;
  }

  /// A later visit that sells packs like these, as many as one likes, for no more, and is free to
  /// use. A pack that is not needed before it need not be bought here: bought there it can serve
  /// all that it would have served from then on. (Older food could take over what it would have
  /// served before; a newer pack may serve whatever an older one may, from its day on.)
  const Visit* better_later(const Offer& offer) const {
    if (room_ != nullptr || narrow_ || good_.required || !offer.cost.table.empty())
      return nullptr;
    for (std::size_t v = visit_ + 1; v < good_.visits.size(); ++v) {
      if (terms_.charge[v] != Cost{})
        continue;
      const Visit& later = good_.visits[v];
      for (const OfferId id : later.offers) {
        const Offer& other = good_.good->offers[id];
        const Fine dearer = price(visit_, offer.cost.unit) - price(v, other.cost.unit);
        if (other.pack == offer.pack && other.cost.table.empty() &&
            other.cost.limit >= (good_.total + good_.kept_cap) / offer.pack + 1 &&
            (dearer > 0 || (dearer == 0 && later.day > here().day)))
          return &later;
      }
    }
    return nullptr;
  }
  bool can_await(const Prefixes& served, const Visit* later) const {
    for (std::size_t g = 0; later != nullptr && g < good_.groups.size(); ++g)
      if (served[g] < later->need[g])
        return false;
    return later != nullptr;
  }

  /// Adds the states that buy something of the offer; if it is required, only those stay.
  void extend(OfferId id, bool required = false) {
    const Offer& offer = good_.good->offers[id];
    std::vector<State>& front = memory_.front;
    if (front.empty())
      return;
    if constexpr (groups == 1) {
      const Amount widest = std::max<Amount>(0, reach(0) - front.front().served[0]);
      if (!required && !narrow_ && offer.cost.table.empty() &&
          offer.cost.limit >= (widest + offer.pack - 1) / offer.pack) {
        extend_by_steps(id);
        return;
      }
    }
    std::vector<State>& fresh = memory_.fresh;
    fresh.clear();
    for (const State& state : front)
      extend(state, id, required);
    if (required)
      front.swap(fresh);
    else
      front.insert(front.end(), fresh.begin(), fresh.end());
    prune(front);
  }

  void extend(const State& state, OfferId id, bool required) {
    const Offer& offer = good_.good->offers[id];
    const bool linear = offer.cost.table.empty();
    const Visit* const later = better_later(offer);
    Prefixes served = state.served;
    Fine key = 0;
    std::size_t awaited = narrow_ ? awaits(served) : 0;
    for (int n = 1; n <= offer.cost.most(); ++n) {
      if (can_await(served, later))
        return;
      const Prefixes before = served;
      serve(served, key, offer.pack);
      // Packs that serve nothing pay only if more packs cost less, or one is required.
      const bool useful = served != before;
      if (!useful && linear && !(required && n == 1))
        return;
      if (narrow_ && useful && !required) {
        const std::size_t now = awaits(served);
        const bool full = is_full(served);
        if (now == awaited && !full && n < offer.cost.most())
          continue;
        awaited = now;
      }
      State next{served, state.key, state.step};
      next.key += Cost{key + price(visit_, offer.cost.of(n)), n};
      if (!required && (too_dear(next) || (groups > 1 && dominated(next)))) {
        // With one price a pack, more of them do not catch up with who dominates.
        if (linear)
          return;
        continue;
      }
      next.step = add_step(state.step, id, n);
      memory_.fresh.push_back(next);
    }
  }

  /// All uses that can be served from here are.
  bool is_full(const Prefixes& served) const {
    for (std::size_t g = 0; g < groups; ++g)
      if (served[g] < std::min(reach(g), real_[g]))
        return false;
    return true;
  }

  /// extend() for one group and packs of one price without limit: adding one pack at a time to the
  /// states in order of what they serve yields the new ones in order, too, so that dominated ones
  /// are dropped as they come up. Linear in the number of states that remain.
  void extend_by_steps(OfferId id) {
    const Offer& offer = good_.good->offers[id];
    const Fine pack_price = price(visit_, offer.cost.unit);
    const Visit* const later = better_later(offer);
    std::vector<State>& old = memory_.front;
    std::vector<State>& queue = memory_.queue; // from `head` on: undominated, ascending
    std::vector<State>& result = memory_.fresh;
    queue.clear();
    result.clear();
    std::size_t head = 0;
    std::size_t next_old = 0;
    while (next_old < old.size() || head < queue.size()) {
      const bool from_old =
          head == queue.size() ||
          (next_old < old.size() && old[next_old].served[0] <= queue[head].served[0]);
      const State state = from_old ? old[next_old++] : queue[head++];
      if ((next_old < old.size() && old[next_old].key <= state.key) ||
          (head < queue.size() && queue[head].key <= state.key))
        continue;
      result.push_back(state);
      if (state.served[0] >= reach(0) || can_await(state.served, later))
        continue;
      State next = state;
      serve(next.served, next.key.value, offer.pack);
      next.key += Cost{pack_price, 1};
      while (queue.size() > head &&
             (next.key < queue.back().key ||
              (next.key == queue.back().key && queue.back().served < next.served)))
        queue.pop_back();
      if ((queue.size() > head && queue.back().served == next.served) || too_dear(next))
        continue;
      next.step = add_step(state.step, id, 1);
      queue.push_back(next);
    }
    old.swap(result);
  }

  std::int32_t add_step(std::int32_t parent, OfferId offer, int packs) {
    memory_.steps.push_back(
        Step{parent, static_cast<std::int32_t>(visit_), static_cast<std::int32_t>(offer), packs});
    return static_cast<std::int32_t>(memory_.steps.size()) - 1;
  }

  /// By a state of the front, which is in order of keys.
  bool dominated(const State& state) const {
    for (const State& other : memory_.front) {
      if (other.key > state.key)
        return false;
      if (serves_no_less(other, state))
        return true;
    }
    return false;
  }

  static bool serves_no_less(const State& a, const State& b) {
    for (std::size_t g = 0; g < groups; ++g)
      if (a.served[g] < b.served[g])
        return false;
    return true;
  }

  /// Leaves the states that no other dominates, in order of keys.
  void prune(std::vector<State>& states) {
    std::sort(states.begin(), states.end(), [](const State& a, const State& b) {
      if (a.key != b.key)
        return a.key < b.key;
      return a.served != b.served ? a.served > b.served : a.step < b.step;
    });
    auto& skyline = memory_.skyline;
    skyline.clear();
    std::size_t kept = 0;
    for (std::size_t i = 0; i < states.size(); ++i) {
      bool drop = false;
      if constexpr (groups == 1) {
        drop = kept > 0 && states[kept - 1].served >= states[i].served;
      } else if constexpr (groups == 2) {
        drop = !rises_above(skyline, states[i].served);
      } else {
        for (std::size_t k = kept; k-- > 0 && !drop;)
          drop = serves_no_less(states[k], states[i]);
      }
      if (!drop)
        states[kept++] = states[i];
    }
    states.resize(kept);
  }

  /// Adds a point to the skyline of points that no other exceeds in both parts (the first
  /// ascending, so the second descending); false if it does not rise above it.
  static bool rises_above(std::vector<Prefixes>& skyline, const Prefixes& point) {
    const auto next =
        std::lower_bound(skyline.begin(), skyline.end(), point,
                         [](const Prefixes& a, const Prefixes& b) { return a[0] < b[0]; });
    if (next != skyline.end() && (*next)[groups - 1] >= point[groups - 1])
      return false;
    auto end = next;
    if (end != skyline.end() && (*end)[0] == point[0])
      ++end;
    auto begin = next;
    while (begin != skyline.begin() && (*(begin - 1))[groups - 1] <= point[groups - 1])
      --begin;
    skyline.insert(skyline.erase(begin, end), point);
    return true;
  }

  Outcome best() const {
    Outcome result;
    std::int32_t last = -1;
    for (const State& state : memory_.front) {
      bool met = true;
      for (std::size_t g = 0; g < groups; ++g)
        met = met && state.served[g] >= real_[g];
      if (met && cost(state) < result.cost) {
        result.cost = cost(state);
        last = state.step;
      }
    }
    if (is_possible(result.cost))
      result.buys = buys_to(memory_.steps, last);
    return result;
  }

  const Prepared& good_;
  const Terms& terms_;
  LotMemory<groups>& memory_;
  const RoomPrices* room_ = nullptr;
  Fine refund_;
  Prefixes real_{};
  std::size_t visit_ = 0;
  bool narrow_ = false;
  Cost limit_ = impossible;
};

} // namespace manciple::purchase
