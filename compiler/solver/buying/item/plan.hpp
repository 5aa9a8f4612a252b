#pragma once

#include "buying/model/ids.hpp"
#include "buying/model/money.hpp"

#include <cstdint>
#include <vector>

namespace manciple::buying {

/// `packs` of an offer at a visit of the item (an index into Prepared::visits).
struct Buy {
  std::size_t visit = 0;
  OfferId offer;
  int packs = 0;

  friend bool operator==(const Buy&, const Buy&) = default;
};

/// Whether holdings that can do the same from some day on are put together. Where room costs
/// something they are not, for some of them have taken more of it.
enum class Lots : std::uint8_t { together, apart };

/// What is done about one item: what is bought, and what is chosen where the rules of use leave a
/// choice (in the order in which the choices come up: see Service).
struct ItemPlan {
  /// By visit, then in the order of its offers.
  std::vector<Buy> buys;
  std::vector<std::uint32_t> choices;
  /// The choices were made with lots apart.
  bool apart = false;

  friend bool operator==(const ItemPlan&, const ItemPlan&) = default;
};

/// The best plan found for an item under some terms, and a proven bound on any: the same, unless
/// the search gave up.
struct Outcome {
  Cost cost = impossible;
  Cost bound = impossible;
  ItemPlan plan;
  /// Finding it took many labels.
  bool took_many = false;
};

} // namespace manciple::buying
