#include "purchase/opened.hpp"

#include <algorithm>

namespace manciple::purchase {
namespace {

/// Position of `amount` in all uses: index of the first use not served in full.
std::size_t first_unserved(const Prepared& good, Amount position) {
  std::size_t use = 0;
  while (use < good.uses.size() && position >= good.uses[use].amount)
    position -= good.uses[use++].amount;
  return use;
}

/// How far a pack gets that is kept cool, or frozen whole.
Amount run_to(const Prepared& good, const PackRun& run, Day bought, Amount size, bool frozen) {
  const Good& facts = *good.good;
  const Day frozen_days = facts.keeps_frozen.value_or(-1);
  const auto good_on = [&](Day day, bool takes_frozen, Day cool_from) {
    return frozen ? takes_frozen && day - bought <= frozen_days : bought >= cool_from;
  };
  Amount position = run.from;
  Day last = std::numeric_limits<Day>::max();
  if (run.first < good.uses.size())
    last = good.uses[run.first].day + *facts.keeps_opened;
  Amount before = 0;
  for (std::size_t i = 0; i < run.first; ++i)
    before += good.uses[i].amount;
  for (std::size_t i = run.first; i < good.uses.size(); ++i) {
    const Use& use = good.uses[i];
    if (use.day > last || !good_on(use.day, facts.demands[use.demand].takes_frozen, use.cool_from))
      return position;
    const Amount step = std::min(size, before + use.amount - position);
    position += step;
    size -= step;
    before += use.amount;
    if (size == 0)
      return position;
  }
  if (good.kept_day <= last && good_on(good.kept_day, true, good.kept_cool_from))
    position += size;
  return position;
}

/// The search over what to buy on the days of one good.
class OpenedSearch {
public:
  OpenedSearch(const Prepared& good, const Terms& terms, OpenedMemory& memory)
      : good_(good),
        terms_(terms),
        memory_(memory),
        priced_(terms.room != nullptr && !terms.room->free()) {}

  Outcome solve() {
    memory_.steps.clear();
    memory_.front.assign(1, LotState<1>{});
    for (std::size_t v = 0; v < good_.visits.size();) {
      std::size_t end = v;
      while (end < good_.visits.size() && good_.visits[end].day == good_.visits[v].day)
        ++end;
      buy_on_day(v, end);
      v = end;
    }
    return best();
  }

private:
  using State = LotState<1>;

  /// An offer on the day. Those whose packs all cost the same and that are open to anyone need no
  /// count; of the others, the number bought so far is part of the state.
  struct Line {
    std::size_t visit = 0;
    OfferId offer = 0;
    int most = 0;
    std::size_t stride = 0;   // in the numbering of counts; 0 for those without
    std::size_t stop_bit = 0; // stride of "the stop's charge is paid"; 0 if there is none
  };

  const Offer& offer(const Line& line) const { return good_.good->offers[line.offer]; }
  bool required(std::size_t visit, OfferId id) const {
    return good_.required && good_.required->visit == visit && good_.required->offer == id;
  }

  /// How many packs of this size in a row can be of use to any state.
  int useful(Day day, Amount size) const {
    Amount position = memory_.front.front().served[0];
    int packs = 0;
    while (position < good_.total + good_.kept_cap) {
      const PackRun run = run_pack(good_, position, day, size);
      if (run.to == run.from)
        break;
      position = run.to;
      ++packs;
    }
    return packs;
  }

  void buy_on_day(std::size_t begin, std::size_t end) {
    const Day day = good_.visits[begin].day;
    std::vector<State>& front = memory_.front;
    Amount need = 0;
    for (const Use& use : good_.uses)
      need += use.day < day ? use.amount : 0;
    std::erase_if(front, [&](const State& state) { return state.served[0] < need; });
    if (front.empty())
      return;

    lines_.clear();
    std::size_t cells = 1;
    for (std::size_t v = begin; v < end; ++v) {
      if (!is_possible(terms_.charge[v])) {
        if (good_.required && good_.required->visit == v)
          front.clear();
        continue;
      }
      std::size_t stop_bit = 0;
      if (terms_.charge[v] != Cost{}) {
        stop_bit = cells;
        cells *= 2;
      }
      for (const OfferId id : good_.visits[v].offers) {
        Line line{v, id, 0, 0, stop_bit};
        const Offer& facts = good_.good->offers[id];
        const int enough = facts.by_weight ? 1 : useful(day, facts.pack);
        const std::vector<Money>& table = facts.cost.table;
        const bool falls = !std::is_sorted(table.begin(), table.end());
        line.most =
            facts.by_weight || falls ? facts.cost.most() : std::min(enough, facts.cost.most());
        if (required(v, id))
          line.most = std::max(line.most, 1);
        if (line.most == 0)
          continue;
        if (facts.by_weight || !table.empty() || line.most < enough || required(v, id)) {
          line.stride = cells;
          cells *= facts.by_weight ? 2 : static_cast<std::size_t>(line.most) + 1;
        }
        lines_.push_back(line);
      }
    }
    if (front.empty())
      return;
    memory_.cells.resize(std::max(memory_.cells.size(), cells));
    for (std::size_t c = 0; c < cells; ++c)
      memory_.cells[c].clear();
    memory_.cells[0] = front;
    front.clear();
    for (std::size_t c = 0; c < cells; ++c)
      settle(c);
    for (std::size_t c = 0; c < cells; ++c)
      if (has_required(c))
        front.insert(front.end(), memory_.cells[c].begin(), memory_.cells[c].end());
    prune(front);
  }

  std::size_t count(const Line& line, std::size_t cell) const {
    const std::size_t radix = offer(line).by_weight ? 2 : static_cast<std::size_t>(line.most) + 1;
    return cell / line.stride % radix;
  }

  bool has_required(std::size_t cell) const {
    return std::all_of(lines_.begin(), lines_.end(), [&](const Line& line) {
      return !required(line.visit, line.offer) || count(line, cell) > 0;
    });
  }

  /// Buys whatever can be bought from the states of a cell, within it or into later ones.
  void settle(std::size_t cell) {
    for (std::size_t i = 0; i < memory_.cells[cell].size(); ++i) {
      const State state = memory_.cells[cell][i];
      if (dominated(state, memory_.cells[cell], i))
        continue;
      for (const Line& line : lines_) {
        std::size_t to = cell;
        Cost extra;
        if (line.stop_bit != 0 && cell / line.stop_bit % 2 == 0) {
          to += line.stop_bit;
          extra = terms_.charge[line.visit];
        }
        if (line.stride == 0) {
          buy(state, line, to, 1, extra, offer(line).cost.unit, false);
        } else if (offer(line).by_weight) {
          if (count(line, cell) == 0)
            for (int n = 1; n <= line.most; ++n)
              if (!buy(state, line, to + line.stride, n, extra, offer(line).cost.of(n), true))
                break;
        } else {
          const int bought = static_cast<int>(count(line, cell));
          if (bought < line.most)
            buy(state, line, to + line.stride, 1, extra,
                offer(line).cost.of(bought + 1) - offer(line).cost.of(bought), true);
        }
      }
    }
    prune(memory_.cells[cell]);
  }

  /// One more pack, of `steps` steps. False if a larger one could not do more.
  bool buy(const State& state, const Line& line, std::size_t cell, int steps, Cost extra,
           Money money, bool even_if_useless) {
    const Amount size = offer(line).pack * steps;
    const Day day = good_.visits[line.visit].day;
    PackRun run{state.served[0], state.served[0], good_.uses.size(), false};
    if (state.served[0] < good_.total + good_.kept_cap || even_if_useless)
      run = run_pack(good_, state.served[0], day, size);
    const bool useful = run.to > run.from;
    if (!useful && !even_if_useless)
      return false;
    State next{{run.to}, state.key + extra, -1};
    const Fine per_money = terms_.per_money.empty() ? fine_per_money : terms_.per_money[line.visit];
    next.key += Cost{money * per_money + value_of(size, good_.good->waste), steps};
    if (priced_)
      next.key.value += room_of(run, day, size);
    if (!dominated(next, memory_.cells[cell], memory_.cells[cell].size())) {
      next.step = static_cast<std::int32_t>(memory_.steps.size());
      memory_.steps.push_back(Step{state.step, static_cast<std::int32_t>(line.visit),
                                   static_cast<std::int32_t>(line.offer), steps});
      memory_.cells[cell].push_back(next);
    }
    return !offer(line).cost.table.empty() ||
           (run.to - run.from == size && run.to < good_.total + good_.kept_cap);
  }

  Fine room_of(const PackRun& run, Day day, Amount size) const {
    Fine sum = 0;
    Amount before = 0;
    const RoomPrices& room = *terms_.room;
    const auto keep = [&](Amount amount, Day until) {
      sum += priced(amount, keep_price(room, run.frozen, day, until));
    };
    for (const Use& use : good_.uses) {
      const Amount begin = std::max(run.from, before);
      const Amount end = std::min(run.to, before + use.amount);
      if (begin < end)
        keep(end - begin, use.day);
      before += use.amount;
    }
    if (run.to > good_.total)
      keep(run.to - std::max(run.from, good_.total), good_.last_day + 1);
    keep(size - (run.to - run.from), std::min(thrown_on(good_, run, day), good_.last_day + 1));
    return sum;
  }

  /// With room priced, who is ahead may pay more for room later: then only equals compare.
  bool dominates(const State& a, const State& b) const {
    return a.key <= b.key && (priced_ ? a.served == b.served : a.served >= b.served);
  }
  bool dominated(const State& state, const std::vector<State>& by, std::size_t self) const {
    for (std::size_t i = 0; i < by.size(); ++i)
      if (i != self && dominates(by[i], state) && (i < self || !dominates(state, by[i])))
        return true;
    return false;
  }
  void prune(std::vector<State>& states) const {
    std::stable_sort(states.begin(), states.end(), [](const State& a, const State& b) {
      return a.served != b.served ? a.served < b.served : a.key < b.key;
    });
    std::size_t kept = 0;
    for (const State state : states) {
      while (kept > 0 && dominates(state, states[kept - 1]) && !dominates(states[kept - 1], state))
        --kept;
      if (kept == 0 || !dominates(states[kept - 1], state))
        states[kept++] = state;
    }
    states.resize(kept);
  }

  Outcome best() const {
    Outcome result;
    std::int32_t last = -1;
    for (const State& state : memory_.front) {
      const Amount kept = state.served[0] - good_.total;
      if (kept < 0)
        continue;
      Cost cost = state.key;
      cost.value -= value_of(state.served[0], good_.good->waste) +
                    value_of(std::min(kept, good_.kept_cap), good_.good->salvage);
      if (cost < result.cost) {
        result.cost = cost;
        last = state.step;
      }
    }
    if (is_possible(result.cost))
      result.buys = buys_to(memory_.steps, last);
    return result;
  }

  const Prepared& good_;
  const Terms& terms_;
  OpenedMemory& memory_;
  bool priced_ = false;
  std::vector<Line> lines_;
};

} // namespace

PackRun run_pack(const Prepared& good, Amount from, Day bought, Amount size) {
  PackRun run{from, from, first_unserved(good, from), false};
  const Amount cool = run_to(good, run, bought, size, false);
  const Amount frozen = good.good->keeps_frozen ? run_to(good, run, bought, size, true) : from;
  run.frozen = frozen > cool;
  run.to = std::max(cool, frozen);
  return run;
}

Day thrown_on(const Prepared& good, const PackRun& run, Day bought) {
  const Day sealed = bought + good.good->keeps_cool;
  if (run.to == run.from || run.first == good.uses.size())
    return sealed + 1;
  const Day opened = good.uses[run.first].day + *good.good->keeps_opened;
  return (run.frozen ? opened : std::min(opened, sealed)) + 1;
}

std::vector<DayPack> order_of_day(const Prepared& good, Amount from, Day day,
                                  const std::vector<Amount>& sizes,
                                  const std::vector<int>& counts) {
  // reached[c]: where the packs counted by the number c, digit by digit, get in their best order.
  std::vector<std::size_t> stride;
  std::size_t cells = 1;
  for (const int count : counts) {
    stride.push_back(cells);
    cells *= static_cast<std::size_t>(count) + 1;
  }
  const auto has = [&](std::size_t cell, std::size_t buy) {
    return cell / stride[buy] % (static_cast<std::size_t>(counts[buy]) + 1) > 0;
  };
  std::vector<Amount> reached(cells, from);
  std::vector<std::size_t> last(cells, 0);
  for (std::size_t cell = 1; cell < cells; ++cell) {
    Amount best = -1;
    for (std::size_t buy = 0; buy < counts.size(); ++buy) {
      if (!has(cell, buy))
        continue;
      const Amount to = run_pack(good, reached[cell - stride[buy]], day, sizes[buy]).to;
      if (to >= best) {
        best = to;
        last[cell] = buy;
      }
    }
    reached[cell] = best;
  }
  std::vector<DayPack> order;
  for (std::size_t cell = cells - 1; cell > 0; cell -= stride[last[cell]]) {
    const std::size_t buy = last[cell];
    order.push_back({buy, run_pack(good, reached[cell - stride[buy]], day, sizes[buy])});
  }
  std::reverse(order.begin(), order.end());
  return order;
}

Outcome cheapest_opened(const Prepared& good, const Terms& terms, OpenedMemory& memory) {
  return OpenedSearch(good, terms, memory).solve();
}

} // namespace manciple::purchase
