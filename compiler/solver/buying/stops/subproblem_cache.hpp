#pragma once

#include "buying/stops/bundle.hpp"
#include "buying/work_budget.hpp"

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

namespace manciple::buying {

/// What a stop is to the items: not made, made, or made at a share of its cost that each item that
/// uses it pays.
enum class StopState : char { closed, open, charged };

/// Where an item meets a stop: a visit of the item.
struct Meeting {
  ItemId item;
  std::size_t visit = 0;
};

/// Each item's cheapest outcome under given stops and multipliers, worked out once and remembered.
class SubproblemCache {
public:
  SubproblemCache(const Model& model, const Table<ItemId, Prepared>& items, WorkBudget& budget);

  [[nodiscard]] const Model& model() const { return *model_; }
  [[nodiscard]] const Table<ItemId, Prepared>& items() const { return *items_; }
  [[nodiscard]] const std::vector<Meeting>& at_stop(StopId stop) const { return at_stop_[stop]; }
  [[nodiscard]] std::int64_t subproblems() const { return subproblems_; }
  WorkBudget& budget() { return *budget_; }
  Workspace& workspace() { return workspace_; }

  /// Share of the stop's cost that the item pays at a visit while the stop is `charged`. Raising it
  /// forgets the item's outcomes that a share is part of.
  [[nodiscard]] Cost share(Meeting meeting) const { return shares_[meeting.item][meeting.visit]; }
  void raise_share(Meeting meeting, Cost by);
  /// Shares go back to nothing.
  void forget_shares();

  /// Sets the multipliers for every item. Outcomes of items for which that changes what things cost
  /// are forgotten; shares go back to nothing.
  void set_multipliers(const Multipliers& at);

  /// Lets an item take so many labels, and forgets the outcomes for which they were too few.
  void allow(std::size_t labels);

  /// An outcome that costs more than this need not be known to the cent, by item; empty: each must.
  void know_up_to(Table<ItemId, Cost> enough) { enough_ = std::move(enough); }

  /// A quicker way to an outcome, at the multipliers that are set. None if it does not know.
  using Quickly = std::function<std::optional<Outcome>(ItemId, const Terms&)>;
  void ask_first(Quickly quickly) { quickly_ = std::move(quickly); }

  /// The state of each visit of an item, as a string to look up.
  using Visits = std::basic_string<char>;
  /// The reference stays good until the item's shares or the multipliers change.
  const Outcome& cheapest(ItemId item, const Visits& visits);

private:
  const Model* model_;
  const Table<ItemId, Prepared>* items_;
  WorkBudget* budget_;
  Table<StopId, std::vector<Meeting>> at_stop_;
  Table<ItemId, std::vector<Cost>> shares_;
  Table<ItemId, RoomRates> rooms_;
  Table<ItemId, std::vector<Fine>> discounts_;
  /// Outcomes that no share is part of, and the others.
  Table<ItemId, std::unordered_map<Visits, Outcome>> known_;
  Table<ItemId, std::unordered_map<Visits, Outcome>> known_charged_;
  /// Items that took many labels under some terms take many under most.
  Table<ItemId, char> takes_many_;
  Table<ItemId, Cost> enough_;
  Quickly quickly_;
  Workspace workspace_;
  Terms terms_;
  Visits key_;
  std::int64_t subproblems_ = 0;
  std::size_t labels_ = usual_labels;
};

/// The items' outcomes while stops change their state one at a time.
class Basket {
public:
  Basket(SubproblemCache& cache, Table<StopId, StopState> stops);

  [[nodiscard]] const Table<StopId, StopState>& stops() const { return stops_; }
  void set(StopId stop, StopState state);
  /// Works an item out again after its shares have changed.
  void refresh(ItemId item);
  /// A bound on what the item costs with the stop in another state.
  [[nodiscard]] Cost bound_if(Meeting meeting, StopState state) const;

  /// Sums of the bounds and of the costs of the items' outcomes; `impossible` if one has none.
  [[nodiscard]] Cost bound() const { return missing_ == 0 ? bound_ : impossible; }
  [[nodiscard]] Cost cost() const { return missing_ == 0 ? cost_ : impossible; }
  [[nodiscard]] const Outcome& outcome(ItemId item) const { return *outcomes_[item]; }
  /// The item's outcome buys something at the visit.
  [[nodiscard]] bool uses(Meeting meeting) const;
  /// What all items do.
  [[nodiscard]] Table<ItemId, ItemPlan> plans() const;

private:
  SubproblemCache* cache_;
  Table<StopId, StopState> stops_;
  Table<ItemId, SubproblemCache::Visits> visits_;
  Table<ItemId, const Outcome*> outcomes_;
  /// What each item adds to the sums.
  struct Summand {
    Cost bound;
    Cost cost;
  };
  Table<ItemId, Summand> summands_;
  Cost bound_;
  Cost cost_;
  /// Items without an outcome.
  std::size_t missing_ = 0;
};

} // namespace manciple::buying
