#pragma once

#include <vector>

#include "purchase/good.hpp"
#include "purchase/subproblem.hpp"

namespace manciple::purchase {

/// A part of what is bought that has one fate.
struct Stored {
  Amount amount = 0;
  bool frozen = false;
  /// Gone from this day on.
  Day until = 0;
};

/// What buying something at a stage leads to.
struct Move {
  std::vector<Amount> next;
  std::vector<Buy> buys;
  /// Waste less salvage.
  Fine leftover = 0;
  Day day = 0;
  std::vector<Stored> stored;
};

/// A good's purchases, decided stage by stage: an offer at a visit after the other, or all offers
/// of a day at once for a good with `keeps_opened`. The state is what is served, by group or, if
/// opened, as a position. Follows the rule of use to the letter, for limits that count it.
class Stages {
public:
  Stages(const Prepared& good, const std::vector<bool>& open);

  std::size_t count() const { return lines_.size(); }
  std::vector<Amount> start() const;
  /// The state still can, or in the end does, meet the demands.
  bool in_time(std::size_t stage, const std::vector<Amount>& state) const;
  /// Most packs of each line of the stage that can matter in this state (more may be bought only
  /// to spend more).
  std::vector<int> most(std::size_t stage, const std::vector<Amount>& state) const;
  /// The stage's offers, by visit and offer.
  const std::vector<Buy>& lines(std::size_t stage) const { return lines_[stage]; }
  /// Buys that many packs of the stage's lines. The memory of `result` is used again.
  void move(std::size_t stage, const std::vector<Amount>& state, const std::vector<int>& packs,
            Move& result) const;

private:
  /// Both change `result`, in which nothing has been bought yet.
  void move_lot(std::size_t stage, int packs, Move& result) const;
  void move_packs(std::size_t stage, const std::vector<int>& packs, Move& result) const;
  Day day(std::size_t stage) const { return good_->visits[lines_[stage].front().visit].day; }

  const Prepared* good_;
  std::vector<std::vector<Buy>> lines_;
};

} // namespace manciple::purchase
