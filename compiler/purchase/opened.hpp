#pragma once

#include <vector>

#include "purchase/lots.hpp"

namespace manciple::purchase {

/// What one pack of a good with `keeps_opened` does, by the rule of opened packs, when everything
/// before position `from` is served. Positions are amounts in the order of uses; they run to
/// Prepared::total and, through what is kept, beyond it.
struct PackRun {
  /// It serves the uses from position `from` to position `to`, of which what lies beyond the total
  /// is kept. Equal: it serves nothing and is waste.
  Amount from = 0;
  Amount to = 0;
  /// Index into Prepared::uses of the first use served; the number of uses for what is kept.
  std::size_t first = 0;
  /// Frozen whole on the day of buying.
  bool frozen = false;
};

PackRun run_pack(const Prepared& good, Amount from, Day bought, Amount size);

/// First day on which what is left of a pack is no longer good.
Day thrown_on(const Prepared& good, const PackRun& run, Day bought);

/// A day's packs in the order in which they are used.
struct DayPack {
  /// Index into the day's list of buys.
  std::size_t buy = 0;
  PackRun run;
};

/// The order of one day's packs that serves most; of equals, the earlier buys first.
/// `sizes[i]` and `counts[i]` say how many packs of what size the i-th buy is.
std::vector<DayPack> order_of_day(const Prepared& good, Amount from, Day day,
                                  const std::vector<Amount>& sizes, const std::vector<int>& counts);

struct OpenedMemory {
  std::vector<LotState<1>> front;
  std::vector<std::vector<LotState<1>>> cells;
  std::vector<Step> steps;
};

/// The subproblem of a good with `keeps_opened`: one prefix of uses, served pack by pack.
Outcome cheapest_opened(const Prepared& good, const Terms& terms, OpenedMemory& memory);

} // namespace manciple::purchase
