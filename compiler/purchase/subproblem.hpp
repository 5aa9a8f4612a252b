#pragma once

#include <memory>
#include <vector>

#include "purchase/cost.hpp"
#include "purchase/good.hpp"

namespace manciple::purchase {

/// Prices of room for one good, summed over nights: keeping a unit (1e6 micro-units) from day b to
/// day d costs cool[d] - cool[b], or frozen[d] - frozen[b]. Sizes: last_day + 2. Empty if free.
struct RoomPrices {
  std::vector<Fine> cool;
  std::vector<Fine> frozen;

  bool free() const { return cool.empty(); }
};

/// What is asked of one good's subproblem.
struct Terms {
  /// By visit of the good: what using it costs once; `impossible` if it is closed.
  std::vector<Cost> charge;
  /// By visit: what one Money spent there counts for; empty: fine_per_money everywhere.
  std::vector<Fine> per_money;
  const RoomPrices* room = nullptr;
};

/// `packs` of an offer at a visit of the good (an index into Prepared::visits).
struct Buy {
  std::size_t visit = 0;
  OfferId offer = 0;
  int packs = 0;

  friend bool operator==(const Buy&, const Buy&) = default;
};

/// The cheapest way to meet a good's demands; `impossible` if there is none. The cost counts
/// purchases, charges, waste, salvage (negative) and priced room.
struct Outcome {
  Cost cost = impossible;
  /// By visit, then offer.
  std::vector<Buy> buys;
};

/// Memory that one subproblem after the other uses again.
class Workspace {
public:
  Workspace();
  ~Workspace();
  Workspace(Workspace&&) noexcept;
  Workspace& operator=(Workspace&&) noexcept;
  struct Memory;
  Memory& memory() { return *memory_; }

private:
  std::unique_ptr<Memory> memory_;
};

/// Shortest path over the good's visits. The state is what is served of each group of uses with
/// the same keeping limit; more served at no more cost dominates.
Outcome cheapest(const Prepared& good, const Terms& terms, Workspace& workspace);

/// Most different keeping limits among the demands of a good (its kept rest counts as one).
constexpr std::size_t most_groups = 16;

} // namespace manciple::purchase
