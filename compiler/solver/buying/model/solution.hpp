#pragma once

#include "buying/model/model.hpp"

#include <cstdint>
#include <optional>
#include <vector>

namespace manciple::buying {

enum class Status : std::uint8_t {
  /// `total` is proven to be the least.
  optimal,
  /// `total` is possible and nothing below `bound` is.
  feasible
};

struct Purchase {
  StopId stop;
  OfferId offer;
  /// Packs, or steps of an offer by weight; >= 1.
  int packs = 0;
  Money cost = 0; ///< counts in the total
  Money till = 0; ///< shown by the till
  Amount amount = 0;
};

/// What became of a part of a purchase or of a lot of stock.
struct Fate {
  /// A place in `purchases`, or else in the item's stock.
  bool stock = false;
  std::size_t of = 0;
  /// Which of its packs (of all that are inside them), where packs are opened; else 0.
  int pack = 0;
  Amount amount = 0;
};

/// Used for a demand.
struct Serving : Fate {
  DemandId demand;
  /// From the freezer.
  bool frozen = false;
  /// The day on which it went into the freezer (0 for stock that stands there).
  Day frozen_on = 0;
  /// Thawed and opened as a whole pack (on the day of `opened_on`).
  bool whole = false;
  /// Of packs: the day on which it was opened.
  std::optional<Day> opened_on;
};

/// Left at the end and still good.
struct Kept : Fate {
  bool frozen = false;
  std::optional<Day> opened_on;
};

/// Thrown away: `day` is the first on which it is no longer good for anything (which may lie after
/// the plan).
struct Waste : Fate {
  Day day = 0;
};

/// A demand that was not served in full.
struct Short {
  DemandId demand;
  Amount lacking = 0; ///< within its give
  Amount missing = 0; ///< beyond it
};

struct ItemSolution {
  /// By stop, then offer.
  std::vector<Purchase> purchases;
  /// By demand, then by purchase.
  std::vector<Serving> servings;
  std::vector<Kept> kept;
  std::vector<Waste> wastes;
  std::vector<Short> shorts;
  /// Sums: of the purchases, and the terms of the total.
  Money cost = 0;
  Fine waste_value = 0;
  Fine salvage_value = 0;
  Fine lacking_value = 0;
  Fine missing_value = 0;
  Money handling = 0;

  /// What all its demands are missing.
  [[nodiscard]] Amount missing() const {
    Amount sum = 0;
    for (const Short& one : shorts) {
      sum += one.missing;
    }
    return sum;
  }
  [[nodiscard]] Fine total() const {
    return fine(cost + handling) + waste_value - salvage_value + lacking_value + missing_value;
  }
};

struct Solution {
  Status status = Status::feasible;
  /// Indices of the stops made, ascending.
  std::vector<StopId> stops;
  Table<ItemId, ItemSolution> items;
  /// Spend-over-X taken, by stop of the model; credit taken, by shop.
  Table<StopId, Money> off;
  Table<ShopId, Money> credit;
  /// Room taken by the items, by place and night, in thousandths of a microlitre; empty for places
  /// without limit.
  std::array<std::vector<std::int64_t>, place_count> room;
  /// Total to minimise, exact, and rounded to Money (half up).
  Fine total_fine = 0;
  Money total = 0;
  Money stop_cost = 0;
  /// Proven lower bound on `total`; equal to it when optimal.
  Money bound = 0;
  /// What the search took: nodes of its trees, items looked at anew, and all work that it counts.
  std::int64_t nodes = 0;
  std::int64_t subproblems = 0;
  std::int64_t work = 0;
  /// It ended for reasons that may differ from machine to machine: see Options::stop.
  bool interrupted = false;
};

} // namespace manciple::buying
