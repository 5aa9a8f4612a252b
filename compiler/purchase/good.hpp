#pragma once

#include <algorithm>
#include <optional>
#include <span>
#include <vector>

#include "purchase/model.hpp"

namespace manciple::purchase {

/// A demand with the days of buying that may serve it.
struct Use {
  DemandId demand = 0;
  Day day = 0;
  Amount amount = 0;
  /// Bought on or after this day, it is good unfrozen ...
  Day cool_from = 0;
  /// ... and on or after this day, frozen if need be.
  Day from = 0;
  /// Uses with the same limit (day - from) form a group: whoever may serve one of two uses of a
  /// group may serve an earlier one as well, so what is served of a group is always a prefix.
  std::size_t group = 0;
  /// Amount of the group's uses before this one.
  Amount before = 0;

  Day limit() const { return day - from; }
};

/// The offers of a good that can be bought at one stop.
struct Visit {
  StopId stop = 0;
  Day day = 0;
  std::vector<OfferId> offers;
  /// By group: what must be served by earlier days' buying (demands before `day`), and up to where
  /// something bought on `day` can serve (with what is kept, up to its cap).
  std::vector<Amount> need;
  std::vector<Amount> reach;
};

/// Narrows what may be bought, for the question what another choice would cost.
struct Restriction {
  /// Nothing but this offer.
  std::optional<OfferId> only;
  /// Not this offer at this stop.
  std::optional<std::pair<StopId, OfferId>> without;
  /// At least one pack of this offer at this stop.
  std::optional<std::pair<StopId, OfferId>> required;
};

/// A good ready for the search: demands in the order of use, offers by day.
struct Prepared {
  const Good* good = nullptr;
  Day last_day = 0;
  /// By day, then limit, then index.
  std::vector<Use> uses;
  /// Indices into `uses`, by group, in order; and each group's amount.
  std::vector<std::vector<std::size_t>> groups;
  std::vector<Amount> group_total;
  /// By group: up to where each of its uses is served, ascending.
  std::vector<std::vector<Amount>> group_ends;
  Amount total = 0;
  /// What is left is kept if bought on or after this day, and kept cool on or after that.
  Day kept_from = 0;
  Day kept_cool_from = 0;
  /// The day on which what is kept must still be good.
  Day kept_day = 0;
  /// How much of what is kept is worth something.
  Amount kept_cap = 0;
  /// Group that what is kept is served after: the one with its limit. Only if kept_cap > 0.
  std::size_t kept_group = 0;
  /// By offer: least cost of a micro-unit, in Money, over the numbers of packs that can be bought.
  std::vector<double> least_unit_cost;
  /// By day, then stop. A stop where nothing can be bought has none.
  std::vector<Visit> visits;
  /// What the restriction requires, as an index into `visits`; none if there is no such thing.
  struct Required {
    std::size_t visit = 0;
    OfferId offer = 0;
  };
  std::optional<Required> required;
  /// The restriction requires what cannot be bought.
  bool barred = false;

  /// Day of a stop at which the good can be bought.
  Day stop_day(StopId stop) const;
  bool opened() const { return good->keeps_opened.has_value(); }
  bool kept(Day bought) const { return bought >= kept_from; }
  /// Position within the group of the first use that is not served in full.
  std::size_t first_unserved(std::size_t group, Amount served) const {
    const std::vector<Amount>& ends = group_ends[group];
    return static_cast<std::size_t>(std::upper_bound(ends.begin(), ends.end(), served) -
                                    ends.begin());
  }
};

Prepared prepare(const Model& model, const Good& good, const Restriction& restriction = {});

} // namespace manciple::purchase
