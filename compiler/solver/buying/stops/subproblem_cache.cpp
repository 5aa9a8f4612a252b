#include "buying/stops/subproblem_cache.hpp"

#include <algorithm>
#include <utility>

namespace manciple::buying {
namespace {

/// Labels for an item once the search has to end: a plan and some bound are enough then.
constexpr std::size_t labels_at_the_end = 2'000;
/// While a stop is undecided a bound is enough, for so many times fewer labels: what it leaves open
/// is settled where the stop is decided.
constexpr std::size_t undecided_share = 32;

} // namespace

SubproblemCache::SubproblemCache(const Model& model, const Table<ItemId, Prepared>& items,
                                 WorkBudget& budget)
    : model_(&model),
      items_(&items),
      budget_(&budget),
      at_stop_(model.stops.size()),
      shares_(items.size()),
      rooms_(items.size()),
      discounts_(items.size()),
      known_(items.size()),
      known_charged_(items.size()),
      takes_many_(items.size(), 0) {
  for (const ItemId item : ids(items)) {
    shares_[item].assign(items[item].visits.size(), Cost{});
    for (std::size_t visit = 0; visit < items[item].visits.size(); ++visit) {
      at_stop_[items[item].visits[visit].stop].push_back({item, visit});
    }
  }
}

void SubproblemCache::raise_share(Meeting meeting, Cost by) {
  shares_[meeting.item][meeting.visit] += by;
  known_charged_[meeting.item].clear();
}

void SubproblemCache::forget_shares() {
  for (const ItemId item : ids(shares_)) {
    shares_[item].assign(shares_[item].size(), Cost{});
    known_charged_[item].clear();
  }
}

void SubproblemCache::set_multipliers(const Multipliers& at) {
  forget_shares();
  for (const ItemId id : ids(*items_)) {
    const Prepared& item = (*items_)[id];
    std::vector<Fine> discounts;
    for (const Visit& visit : item.visits) {
      discounts.push_back(discount(*model_, at, visit.stop));
    }
    if (std::all_of(discounts.begin(), discounts.end(), [](Fine one) { return one == 0; })) {
      discounts.clear();
    }
    RoomRates room = room_rates(*model_, at, *item.item);
    if (room != rooms_[id] || discounts != discounts_[id]) {
      rooms_[id] = std::move(room);
      discounts_[id] = std::move(discounts);
      known_[id].clear();
    }
  }
}

void SubproblemCache::allow(std::size_t labels) {
  labels_ = labels;
  for (auto* const all : {&known_, &known_charged_}) {
    for (const ItemId item : ids(*all)) {
      std::erase_if((*all)[item],
                    [](const auto& known) { return known.second.bound < known.second.cost; });
    }
  }
}

const Outcome& SubproblemCache::cheapest(ItemId item, const Visits& visits) {
  key_ = visits;
  bool charged = false;
  for (std::size_t v = 0; v < key_.size(); ++v) {
    if (key_[v] != static_cast<char>(StopState::charged)) {
      continue;
    }
    if (shares_[item][v] == Cost{}) {
      key_[v] = static_cast<char>(StopState::open);
    } else {
      charged = true;
    }
  }
  const auto [it, is_new] = (charged ? known_charged_ : known_)[item].try_emplace(key_);
  if (is_new) {
    terms_.charge.resize(key_.size());
    for (std::size_t v = 0; v < key_.size(); ++v) {
      const auto state = static_cast<StopState>(key_[v]);
      terms_.charge[v] = state == StopState::closed ? impossible
                         : state == StopState::open ? Cost{}
                                                    : shares_[item][v];
    }
    terms_.discount = discounts_[item];
    terms_.room = &rooms_[item];
    if (std::optional<Outcome> known = quickly_ ? quickly_(item, terms_) : std::nullopt) {
      it->second = std::move(*known);
    } else {
      const std::size_t enough_labels =
          charged ? std::max(labels_ / undecided_share, few_labels) : labels_;
      const std::size_t most = budget_->spent() ? labels_at_the_end : enough_labels;
      const Cost enough = enough_.empty() ? impossible : enough_[item];
      const auto solve = [&](std::size_t labels) {
        return buying::cheapest((*items_)[item], terms_, workspace_, budget_->work(), labels,
                                enough, takes_many_[item] != 0);
      };
      Outcome found = solve(most);
      // A plan that lacks what a better one would not is no list to compare with.
      const Cost lacks{fine(model_->items[item].missing_once), 0};
      const std::size_t more = budget_->spent() ? few_labels * 4 : usual_labels;
      if (most < more && found.bound <= enough && found.cost - found.bound > lacks) {
        found = solve(more);
      }
      takes_many_[item] |= found.took_many ? 1 : 0;
      it->second = std::move(found);
      ++subproblems_;
    }
  }
  return it->second;
}

Basket::Basket(SubproblemCache& cache, Table<StopId, StopState> stops)
    : cache_(&cache),
      stops_(std::move(stops)),
      visits_(cache.items().size()),
      outcomes_(cache.items().size(), nullptr),
      summands_(cache.items().size()) {
  for (const ItemId item : ids(visits_)) {
    for (const Visit& visit : cache.items()[item].visits) {
      visits_[item].push_back(static_cast<char>(stops_[visit.stop]));
    }
    refresh(item);
  }
}

void Basket::set(StopId stop, StopState state) {
  if (stops_[stop] == state) {
    return;
  }
  const StopState before = stops_[stop];
  stops_[stop] = state;
  for (const Meeting meeting : cache_->at_stop(stop)) {
    visits_[meeting.item][meeting.visit] = static_cast<char>(state);
    // What an item does not use, it does not miss.
    const bool unused_closes = state == StopState::closed && !uses(meeting);
    const bool free_anyway = before != StopState::closed && state != StopState::closed &&
                             cache_->share(meeting) == Cost{};
    if (!unused_closes && !free_anyway) {
      refresh(meeting.item);
    }
  }
}

void Basket::refresh(ItemId item) {
  Summand& summand = summands_[item];
  if (outcomes_[item] != nullptr) {
    if (is_possible(summand.bound)) {
      bound_ -= summand.bound;
      cost_ -= summand.cost;
    } else {
      --missing_;
    }
  }
  outcomes_[item] = &cache_->cheapest(item, visits_[item]);
  summand = {outcomes_[item]->bound, outcomes_[item]->cost};
  if (is_possible(summand.bound)) {
    bound_ += summand.bound;
    cost_ += summand.cost;
  } else {
    ++missing_;
  }
}

Cost Basket::bound_if(Meeting meeting, StopState state) const {
  SubproblemCache::Visits visits = visits_[meeting.item];
  visits[meeting.visit] = static_cast<char>(state);
  return cache_->cheapest(meeting.item, visits).bound;
}

bool Basket::uses(Meeting meeting) const {
  const std::vector<Buy>& buys = outcomes_[meeting.item]->plan.buys;
  return std::any_of(buys.begin(), buys.end(),
                     [&](const Buy& buy) { return buy.visit == meeting.visit; });
}

Table<ItemId, ItemPlan> Basket::plans() const {
  Table<ItemId, ItemPlan> plans;
  for (const Outcome* const outcome : outcomes_) {
    plans.push_back(outcome->plan);
  }
  return plans;
}

} // namespace manciple::buying
