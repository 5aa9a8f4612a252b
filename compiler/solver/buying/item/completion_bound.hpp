#pragma once

#include "buying/item/holding.hpp"
#include "buying/item/pile_bound.hpp"
#include "buying/item/terms.hpp"

#include <vector>

namespace manciple::buying {

/// A lower bound on what the rest of an item will cost: each demand that is not served yet at the
/// least price per unit among the visits to come that may serve it (or at what it costs to do
/// without), less what is held already, which serves whatever is dearest.
///
/// Where some demands must be fresh, these and the others may be bounded apart, for no frozen thing
/// can stand in for what is lacking of the fresh ones.
///
/// Of what comes in packs, another one may be higher: uses that are further apart than an opened
/// pack lasts fall into runs, and no pack serves two of them, but from the freezer, which costs
/// something for each use; so that each run takes whole packs, or that. A pack that is held saves
/// at most what it would cost to buy as much.
class CompletionBound {
public:
  /// Works out the bound for the terms (their charges are left out), if no more than `most` packs
  /// of each source are bought. All three must stay.
  void prepare(const Prepared& item, const Terms& terms, const std::vector<int>& most);
  /// Takes more time, for a bound that may be higher (see PileBound).
  void strengthen();

  /// What is held can do at most.
  struct Held {
    double reach = 0; ///< units of demands that it serves
    double fresh = 0; ///< of those that must be fresh
    double saves = 0; ///< of packs: what they spare buying; only where runs count

    Held& add(const Held& more, double times) {
      reach += times * more.reach;
      fresh += times * more.fresh;
      saves += times * more.saves;
      return *this;
    }
  };
  [[nodiscard]] Held held(std::size_t visit, const Holding* begin, const Holding* end) const;
  /// Of one purchase (or step) of a source.
  [[nodiscard]] Held pack(std::size_t visit, std::size_t source) const;

  /// Of the demands from `demand` on, with purchases at `visit` and later. The values that holdings
  /// count for as waste and as give are to be taken off by the caller (see `refund`).
  [[nodiscard]] double rest(std::size_t visit, std::size_t demand, const Held& held) const;

  /// What has been counted for holdings and may be given back when they are used.
  [[nodiscard]] Fine refund(const Holding* begin, const Holding* end) const;

private:
  /// Some of the demands, with purchases at a visit and later.
  struct Amounts {
    /// By demand, of those before it: at the least prices; and the most that serving it is worth.
    std::vector<double> cost;
    std::vector<double> worth;
    /// By demand: the most that serving a unit is worth.
    std::vector<double> unit;
    /// What a unit that gives costs at least, whether it is served or lacking.
    double give = 0;
    /// What can be gained at most by buying for what is kept.
    double gain = 0;
  };
  /// All demands; or those that must be fresh, or all others: then nothing that is frozen can stand
  /// in for what is lacking of the fresh ones.
  struct Part {
    bool fresh = true;
    bool others = true;
    double cap = 0; ///< of what is kept
    /// By demand: what those before it need, without what gives.
    std::vector<double> needed;
    /// Likewise, what gives and is charged for if it is lacking.
    std::vector<double> gives;
    std::vector<Amounts> by_visit; ///< and once more for after the last
  };
  struct Sums {
    /// What may be kept of packs that are bought is worth at most.
    double of_kept = 0;
    /// By demand: what the runs from there on cost at least; by source: what a pack saves.
    std::vector<double> of_runs;
    std::vector<double> saves;
  };
  /// A pack on offer, at its share of what is paid for those with which it is sold.
  struct Pack {
    double amount = 0;
    double cost = 0;
    bool by_weight = false;
  };
  [[nodiscard]] double rest_of(const Part& part, std::size_t visit, std::size_t demand,
                               double reach) const;
  void prepare(Part& part) const;
  /// A unit of a demand, by demand: served by what is bought at best; missing; and what serving it
  /// costs besides.
  struct Prices {
    std::vector<double> served, without, handling;
  };
  /// What a unit that is kept at the end gains at most over what it is bought for, and is worth.
  struct Salvaged {
    double gain = 0;
    double kept = 0;
  };
  void add_offers(std::size_t visit, std::vector<Pack>& packs, std::vector<double>& served,
                  Salvaged& salvaged) const;
  void add_amounts(Part& part, std::size_t visit, const Prices& prices, double gain) const;
  [[nodiscard]] std::vector<double> least_handling() const;
  [[nodiscard]] bool serves_fresh(std::size_t visit, std::size_t source) const;
  void add_runs(std::vector<std::vector<Pack>> on_offer);

  const Prepared* item_ = nullptr;
  const Terms* terms_ = nullptr;
  const std::vector<int>* most_ = nullptr;
  bool strong_ = false;
  PileBound pile_;
  /// By visit, and once more for after the last.
  std::vector<Sums> sums_;
  Part all_;
  /// Where some demands must be fresh and others need not be.
  bool splits_ = false;
  Part fresh_, others_;
  double salvage_ = 0;
  double cap_ = 0;
  bool runs_ = false;
};

} // namespace manciple::buying
