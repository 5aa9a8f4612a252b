#pragma once

#include "buying/item/prepared.hpp"
#include "buying/item/terms.hpp"

#include <vector>

namespace manciple::buying {

/// A lower bound on what the rest of an item will cost that knows of whole packs: the item as if
/// all that is held were one pile, which serves any demand and lasts as long as the longest-lived
/// thing that may be in it. A dynamic programme over visits and the size of the pile, in steps of a
/// scale that is coarse in favour of the bound (packs and piles are rounded up, needs down). Limits
/// of offers, room, and what opening a pack starts are left out; deals cost their least a pack.
class PileBound {
public:
  /// Works it out for the terms (their charges are left out), if of sources with `most` 0 nothing
  /// is bought.
  void prepare(const Prepared& item, const Terms& terms, const std::vector<int>& most);

  /// Of the demands from the first that the visit may serve, with purchases at `visit` and later
  /// and `reach` units of demands served by what is held.
  [[nodiscard]] double rest(std::size_t visit, double reach) const;

private:
  static constexpr std::size_t steps = 1024;

  [[nodiscard]] std::size_t steps_up(double amount) const;
  void pass_time(std::size_t visit);
  bool buy(const Terms& terms, const std::vector<int>& most, std::size_t visit);

  const Prepared* item_ = nullptr;
  double step_ = 1;
  /// By visit and step: the least from there on.
  std::vector<double> least_;
  /// By step, at the visit at hand.
  std::vector<double> now_;
  /// By visit: of the demands from the next visit on, how much the pile can serve or be kept for.
  std::vector<double> lasts_;
  std::vector<double> needs_;
};

} // namespace manciple::buying
