#include "purchase/stages.hpp"

#include <algorithm>

#include "purchase/cost.hpp"
#include "purchase/opened.hpp"

namespace manciple::purchase {

Stages::Stages(const Prepared& good, const std::vector<bool>& open) : good_(&good) {
  for (std::size_t v = 0; v < good.visits.size(); ++v) {
    if (!open[v])
      continue;
    for (const OfferId offer : good.visits[v].offers) {
      const bool same_day = good.opened() && !lines_.empty() &&
                            good.visits[lines_.back().front().visit].day == good.visits[v].day;
      if (!same_day)
        lines_.emplace_back();
      lines_.back().push_back({v, offer, 0});
    }
  }
}

std::vector<Amount> Stages::start() const {
  return std::vector<Amount>(good_->opened() ? 1 : std::max<std::size_t>(1, good_->groups.size()),
                             0);
}

bool Stages::in_time(std::size_t stage, const std::vector<Amount>& state) const {
  const bool done = stage == lines_.size();
  if (!good_->opened()) {
    for (std::size_t g = 0; g < good_->groups.size(); ++g)
      if (state[g] <
          (done ? good_->group_total[g] : good_->visits[lines_[stage].front().visit].need[g]))
        return false;
    return true;
  }
  Amount need = 0;
  for (const Use& use : good_->uses)
    need += done || use.day < day(stage) ? use.amount : 0;
  return state[0] >= need;
}

std::vector<int> Stages::most(std::size_t stage, const std::vector<Amount>& state) const {
  std::vector<int> most;
  for (const Buy& line : lines_[stage]) {
    const Offer& offer = good_->good->offers[line.offer];
    Amount packs = 0;
    if (!good_->opened()) {
      const Visit& visit = good_->visits[line.visit];
      Amount open = 0;
      for (std::size_t g = 0; g < good_->groups.size(); ++g)
        open += std::max<Amount>(0, visit.reach[g] - state[g]);
      packs = (open + offer.pack - 1) / offer.pack;
    } else if (offer.by_weight) {
      packs = (good_->total + good_->kept_cap - state[0] + offer.pack - 1) / offer.pack;
    } else {
      Amount position = state[0];
      while (position < good_->total + good_->kept_cap) {
        const PackRun run = run_pack(*good_, position, day(stage), offer.pack);
        if (run.to == run.from)
          break;
        position = run.to;
        ++packs;
      }
    }
    const std::vector<Money>& table = offer.cost.table;
    if (!std::is_sorted(table.begin(), table.end()))
      packs = offer.cost.most();
    most.push_back(static_cast<int>(std::clamp<Amount>(packs, 0, offer.cost.most())));
  }
  return most;
}

void Stages::move(std::size_t stage, const std::vector<Amount>& state,
                  const std::vector<int>& packs, Move& result) const {
  result.next.assign(state.begin(), state.end());
  result.buys.clear();
  result.leftover = 0;
  result.day = day(stage);
  result.stored.clear();
  for (std::size_t i = 0; i < packs.size(); ++i)
    if (packs[i] > 0)
      result.buys.push_back({lines_[stage][i].visit, lines_[stage][i].offer, packs[i]});
  if (result.buys.empty())
    return;
  if (good_->opened())
    move_packs(stage, packs, result);
  else
    move_lot(stage, packs[0], result);
}

void Stages::move_lot(std::size_t stage, int packs, Move& move) const {
  const Good& facts = *good_->good;
  Amount left = facts.offers[lines_[stage][0].offer].pack * packs;
  const Day bought = day(stage);
  // With one group, uses are in its order.
  const std::size_t first = good_->groups.size() == 1 ? good_->first_unserved(0, move.next[0]) : 0;
  for (std::size_t u = first; u < good_->uses.size() && left > 0; ++u) {
    const Use& use = good_->uses[u];
    const Amount unserved = use.before + use.amount - move.next[use.group];
    if (use.day < bought || bought < use.from || unserved <= 0)
      continue;
    const Amount amount = std::min(left, unserved);
    move.next[use.group] += amount;
    left -= amount;
    move.stored.push_back({amount, bought < use.cool_from, use.day});
  }
  if (left == 0)
    return;
  if (!good_->kept(bought)) {
    move.leftover = value_of(left, facts.waste);
    move.stored.push_back({left, false, bought + facts.keeps_cool + 1});
    return;
  }
  move.stored.push_back({left, bought < good_->kept_cool_from, good_->last_day + 1});
  if (good_->kept_cap > 0) {
    Amount& kept = move.next[good_->kept_group];
    const Amount sold =
        std::min(left, good_->group_total[good_->kept_group] + good_->kept_cap - kept);
    kept += sold;
    move.leftover = -value_of(sold, facts.salvage);
  }
}

void Stages::move_packs(std::size_t stage, const std::vector<int>& packs, Move& move) const {
  const Good& facts = *good_->good;
  std::vector<Amount> sizes;
  std::vector<int> counts;
  for (std::size_t i = 0; i < packs.size(); ++i) {
    const Offer& offer = facts.offers[lines_[stage][i].offer];
    sizes.push_back(offer.by_weight ? offer.pack * packs[i] : offer.pack);
    counts.push_back(offer.by_weight ? std::min(packs[i], 1) : packs[i]);
  }
  const auto salvage = [&](Amount position) {
    return value_of(std::clamp<Amount>(position - good_->total, 0, good_->kept_cap), facts.salvage);
  };
  const Amount start = move.next[0];
  for (const DayPack& pack : order_of_day(*good_, start, day(stage), sizes, counts)) {
    Amount before = 0;
    for (const Use& use : good_->uses) {
      const Amount from = std::max(pack.run.from, before);
      const Amount to = std::min(pack.run.to, before + use.amount);
      if (from < to)
        move.stored.push_back({to - from, pack.run.frozen, use.day});
      before += use.amount;
    }
    if (pack.run.to > good_->total)
      move.stored.push_back({pack.run.to - std::max(pack.run.from, good_->total), pack.run.frozen,
                             good_->last_day + 1});
    const Amount wasted = sizes[pack.buy] - (pack.run.to - pack.run.from);
    if (wasted > 0)
      move.stored.push_back({wasted, pack.run.frozen, thrown_on(*good_, pack.run, day(stage))});
    move.leftover += value_of(wasted, facts.waste);
    move.next[0] = pack.run.to;
  }
  move.leftover -= salvage(move.next[0]) - salvage(start);
}

} // namespace manciple::purchase
