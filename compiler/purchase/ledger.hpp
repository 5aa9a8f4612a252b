#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

#include "purchase/subproblem.hpp"

namespace manciple::purchase {

/// What a stop is to the goods: not made, made, or made at a share of its cost that each good that
/// uses it pays.
enum class StopState : char { closed, open, charged };

/// Where a good meets a stop: a visit of the good.
struct Meeting {
  GoodId good = 0;
  std::size_t visit = 0;
};

/// Each good's cheapest outcome under given stops, worked out once and remembered.
class Ledger {
public:
  Ledger(const Model& model, std::vector<Prepared> goods);

  const Model& model() const { return *model_; }
  const std::vector<Prepared>& goods() const { return goods_; }
  const std::vector<Meeting>& at_stop(StopId stop) const { return at_stop_[stop]; }
  std::int64_t subproblems() const { return subproblems_; }

  /// Share of the stop's cost that the good pays at a visit while the stop is `charged`. Raising it
  /// forgets the good's outcomes that a share is part of.
  Cost share(GoodId good, std::size_t visit) const { return shares_[good][visit]; }
  void raise_share(Meeting meeting, Cost by);

  /// Prices of room and, by visit, the worth of money. If they change, the good's outcomes are
  /// forgotten; its shares go back to nothing.
  void set_prices(GoodId good, RoomPrices room, std::vector<Fine> per_money);

  /// A quicker way to an outcome, for terms at the prices that are set. It may cost too little
  /// where a bound is all that is asked for. None if it does not know.
  using Quickly = std::function<std::optional<Outcome>(GoodId, const Terms&)>;
  void ask_first(Quickly quickly) { quickly_ = std::move(quickly); }

  /// The state of each visit of a good, as a string to look up.
  using Visits = std::basic_string<char>;
  /// The reference stays good until the good's shares or prices change.
  const Outcome& cheapest(GoodId good, const Visits& visits);

private:
  const Model* model_;
  std::vector<Prepared> goods_;
  std::vector<std::vector<Meeting>> at_stop_;
  std::vector<std::vector<Cost>> shares_;
  std::vector<RoomPrices> rooms_;
  std::vector<std::vector<Fine>> per_money_;
  /// Outcomes that no share is part of, and the others.
  std::vector<std::unordered_map<Visits, Outcome>> known_;
  std::vector<std::unordered_map<Visits, Outcome>> known_charged_;
  Quickly quickly_;
  Workspace workspace_;
  Terms terms_;
  Visits key_;
  std::int64_t subproblems_ = 0;
};

/// The goods' outcomes while stops change their state one at a time.
class Basket {
public:
  Basket(Ledger& ledger, std::vector<StopState> stops);

  const std::vector<StopState>& stops() const { return stops_; }
  void set(StopId stop, StopState state);
  /// Works a good out again after its shares or prices have changed.
  void refresh(GoodId good);
  /// What the good would cost with the stop in another state.
  Cost cost_if(Meeting meeting, StopState state) const;

  /// Sum over the goods; `impossible` if one has no outcome.
  Cost goods_cost() const { return missing_ == 0 ? sum_ : impossible; }
  const Outcome& outcome(GoodId good) const { return *outcomes_[good]; }
  /// The good's outcome buys something at the visit.
  bool uses(Meeting meeting) const;

private:
  Ledger* ledger_;
  std::vector<StopState> stops_;
  std::vector<Ledger::Visits> visits_;
  std::vector<const Outcome*> outcomes_;
  std::vector<Cost> costs_;
  Cost sum_;
  std::size_t missing_ = 0;
};

} // namespace manciple::purchase
