#include "purchase/ledger.hpp"

#include <algorithm>

namespace manciple::purchase {

Ledger::Ledger(const Model& model, std::vector<Prepared> goods)
    : model_(&model),
      goods_(std::move(goods)),
      at_stop_(model.stops.size()),
      shares_(goods_.size()),
      rooms_(goods_.size()),
      per_money_(goods_.size()),
      known_(goods_.size()),
      known_charged_(goods_.size()) {
  for (GoodId good = 0; good < goods_.size(); ++good) {
    shares_[good].assign(goods_[good].visits.size(), Cost{});
    for (std::size_t visit = 0; visit < goods_[good].visits.size(); ++visit)
      at_stop_[goods_[good].visits[visit].stop].push_back({good, visit});
  }
}

void Ledger::raise_share(Meeting meeting, Cost by) {
  shares_[meeting.good][meeting.visit] += by;
  known_charged_[meeting.good].clear();
}

void Ledger::set_prices(GoodId good, RoomPrices room, std::vector<Fine> per_money) {
  shares_[good].assign(shares_[good].size(), Cost{});
  if (room.cool == rooms_[good].cool && room.frozen == rooms_[good].frozen &&
      per_money == per_money_[good]) {
    known_charged_[good].clear();
    return;
  }
  rooms_[good] = std::move(room);
  per_money_[good] = std::move(per_money);
  known_[good].clear();
  known_charged_[good].clear();
}

const Outcome& Ledger::cheapest(GoodId good, const Visits& visits) {
  key_ = visits;
  bool charged = false;
  for (std::size_t v = 0; v < key_.size(); ++v) {
    if (key_[v] != static_cast<char>(StopState::charged))
      continue;
    if (shares_[good][v] == Cost{})
      key_[v] = static_cast<char>(StopState::open);
    else
      charged = true;
  }
  const auto [it, is_new] = (charged ? known_charged_ : known_)[good].try_emplace(key_);
  if (is_new) {
    terms_.charge.resize(key_.size());
    for (std::size_t v = 0; v < key_.size(); ++v) {
      const auto state = static_cast<StopState>(key_[v]);
      terms_.charge[v] = state == StopState::closed ? impossible
                         : state == StopState::open ? Cost{}
                                                    : shares_[good][v];
    }
    terms_.per_money = per_money_[good];
    terms_.room = &rooms_[good];
    if (std::optional<Outcome> known = quickly_ ? quickly_(good, terms_) : std::nullopt) {
      it->second = std::move(*known);
    } else {
      it->second = purchase::cheapest(goods_[good], terms_, workspace_);
      ++subproblems_;
    }
  }
  return it->second;
}

Basket::Basket(Ledger& ledger, std::vector<StopState> stops)
    : ledger_(&ledger),
      stops_(std::move(stops)),
      visits_(ledger.goods().size()),
      outcomes_(ledger.goods().size(), nullptr),
      costs_(ledger.goods().size()) {
  for (GoodId good = 0; good < visits_.size(); ++good) {
    for (const Visit& visit : ledger.goods()[good].visits)
      visits_[good].push_back(static_cast<char>(stops_[visit.stop]));
    refresh(good);
  }
}

void Basket::set(StopId stop, StopState state) {
  if (stops_[stop] == state)
    return;
  const StopState before = stops_[stop];
  stops_[stop] = state;
  for (const Meeting meeting : ledger_->at_stop(stop)) {
    visits_[meeting.good][meeting.visit] = static_cast<char>(state);
    // What a good does not use, it does not miss.
    const bool unused_closes = state == StopState::closed && !uses(meeting);
    const bool free_anyway = before != StopState::closed && state != StopState::closed &&
                             ledger_->share(meeting.good, meeting.visit) == Cost{};
    if (!unused_closes && !free_anyway)
      refresh(meeting.good);
  }
}

void Basket::refresh(GoodId good) {
  if (outcomes_[good] != nullptr) {
    if (is_possible(costs_[good]))
      sum_ -= costs_[good];
    else
      --missing_;
  }
  outcomes_[good] = &ledger_->cheapest(good, visits_[good]);
  costs_[good] = outcomes_[good]->cost;
  if (is_possible(costs_[good]))
    sum_ += costs_[good];
  else
    ++missing_;
}

Cost Basket::cost_if(Meeting meeting, StopState state) const {
  Ledger::Visits visits = visits_[meeting.good];
  visits[meeting.visit] = static_cast<char>(state);
  return ledger_->cheapest(meeting.good, visits).cost;
}

bool Basket::uses(Meeting meeting) const {
  const std::vector<Buy>& buys = outcomes_[meeting.good]->buys;
  return std::any_of(buys.begin(), buys.end(),
                     [&](const Buy& buy) { return buy.visit == meeting.visit; });
}

} // namespace manciple::purchase
