#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <optional>
#include <vector>

/// What to buy, where and when, as a problem without names: goods, offers, trips, room. The caller
/// lowers a kitchen's plan to a `Model`; `solve` gives a `Solution` that says what it has proven.
///
/// The rules that the solver, the checker and the tests' reference formulation share:
///
/// **Days.** A good bought on day b can be used on any day d >= b. Its age at use is d - b. Kept
/// cool it is good up to age `keeps_cool`, frozen up to age `keeps_frozen` (both inclusive).
///
/// **Who may serve whom.** What was bought on day b serves a demand of day d unfrozen if
/// d - b <= min(keeps_cool, the demand's longest age), and frozen, if the demand takes frozen food,
/// when d - b <= keeps_frozen. Freezing is done on the day of buying and stops the clock, so the
/// demand's longest age counts unfrozen days only.
///
/// **Rule of use.** First bought, first used: day by day of buying, what was bought serves, of the
/// demands that it may serve and that nothing older has served, the earliest first (on one day, the
/// one with the shortest keeping limit first, then by index). So the purchases alone decide who
/// serves whom. No other use of the same purchases wastes less (earliest deadline first on interval
/// demands; Glover 1967, maximum matching in a convex bipartite graph).
///
/// **What is frozen.** Exactly what serves a demand that it could not serve unfrozen, and what is
/// left at the end that keeps only frozen.
///
/// **Left at the end.** What serves no demand is *kept* if it still keeps on day
/// `last_day + salvage_days` (cool, or else frozen), and *waste* if not. Kept food is worth
/// `salvage` up to `salvage_cap`; kept food beyond the cap is worth nothing and costs nothing.
/// Waste costs `waste`. Among what is left, the rule of use treats "kept" as a demand later than
/// all others.
///
/// **Opened packs** (only goods with `keeps_opened`). Packs are used one after the other: earlier
/// days of buying first, those of one day in the order that the solver finds best. A pack is opened
/// on the day o of its first use and then serves, in the order of the demands, as long as
/// d <= o + keeps_opened and the good keeps; what is left in it after that is waste, and the next
/// pack takes over. Demands are served strictly in order of day. If the good freezes, a pack
/// may be frozen whole, on the day of buying, when it serves more that way: it is thawed and opened
/// on day o, and all its demands must take frozen food. Unopened packs may be kept at the end; what
/// is left in an opened one is kept only if o + keeps_opened reaches that far. A purchase of an
/// offer by weight counts as one pack of all its steps.
///
/// **Room.** What is bought on day b and used on day d takes room on the nights b, ..., d - 1: in
/// the freezer if frozen, else in the good's cool place. Waste takes cool room until the night on
/// which its keeping time ends, kept food until the last night of the plan. (Opened goods: what is
/// left in an opened pack stays until o + keeps_opened or the keeping time's end; a frozen pack
/// counts as freezer room until it is used or thrown away.)
///
/// **Money.** What is paid at a stop is the sum of its purchases' costs, less `off` if that sum is
/// at least `over` for the stop's shop. A shop's credit takes up to `credit` off what is then still
/// to pay at its stops together. The total to minimise: paid, plus the cost of the stops made, plus
/// waste, minus salvage. Equal totals: fewer stops, then fewer packs; then, as far as moving packs
/// of one good from stop to stop leads, less to freeze, fewer lines, and bought earlier.
namespace manciple::purchase {

/// Money in 1/10000 of the currency's unit.
using Money = std::int64_t;
/// Money in 1e-9 of `Money`, in which the value of waste and salvage is exact.
using Fine = std::int64_t;
constexpr Fine fine_per_money = 1'000'000'000;
/// Micro-units of a good: 1e-6 of a gram, a millilitre or a piece.
using Amount = std::int64_t;
/// Microlitres (cubic millimetres).
using Volume = std::int64_t;
/// Days from the plan's first day, which is 0. May be negative only for an offer's first day.
using Day = int;

/// Indices into the model's vectors. An offer's index is within its good.
using ShopId = std::size_t;
using StopId = std::size_t;
using GoodId = std::size_t;
using OfferId = std::size_t;
using DemandId = std::size_t;

enum class Place : std::uint8_t { pantry, fridge, freezer };
constexpr std::size_t place_count = 3;

struct Shop {
  /// Store credit: taken off what is paid here in the plan, at most this much in all.
  Money credit = 0;
  /// Spend at least `over` in one visit and pay `off` less (once a visit). None if `off` is 0.
  /// 0 <= off <= over.
  Money over = 0;
  Money off = 0;
};

/// A shop that can be visited on a day. Trips are the stops of one day.
struct Stop {
  Day day = 0;
  ShopId shop = 0;
  /// What making the stop costs the household; >= 0.
  Money cost = 0;
  /// Made whatever it costs; others are dropped when they do not pay.
  bool always = false;
};

/// What n packs cost in one visit, as the receipt would say, for n = 1, 2, ... up to a limit.
struct PackCost {
  /// table[n - 1] for n packs. If empty, n packs cost n * unit.
  std::vector<Money> table;
  Money unit = 0;
  /// Most packs in one visit when the table is empty.
  int limit = std::numeric_limits<int>::max();

  int most() const { return table.empty() ? limit : static_cast<int>(table.size()); }
  /// 0 for n = 0; n must not exceed most().
  Money of(int n) const {
    if (n == 0)
      return 0;
    return table.empty() ? n * unit : table[static_cast<std::size_t>(n) - 1];
  }
};

/// A pack of a good at a shop on the days first_day ... last_day.
struct Offer {
  ShopId shop = 0;
  Day first_day = std::numeric_limits<Day>::min();
  Day last_day = std::numeric_limits<Day>::max();
  /// What one pack holds, or the smallest step if sold by weight; > 0.
  Amount pack = 0;
  /// n steps are handed over as one pack (matters only to a good with `keeps_opened`).
  bool by_weight = false;
  PackCost cost;
};

struct Demand {
  Day day = 0;
  /// What is still needed after stock on hand; > 0.
  Amount amount = 0;
  /// May come from the freezer.
  bool takes_frozen = true;
  /// Longest time unfrozen, in days from buying to use; none: as long as it keeps.
  std::optional<int> longest_age;
};

/// At most 16 different keeping limits (greatest age at use, frozen or not) among its demands.
struct Good {
  std::vector<Demand> demands;
  std::vector<Offer> offers;
  /// Days it keeps in its cool place (fridge or pantry), sealed, from buying.
  int keeps_cool = 0;
  /// Days it keeps frozen, from buying; none if it does not freeze.
  std::optional<int> keeps_frozen;
  /// Days a pack keeps once opened (in its cool place); none if opening changes nothing.
  std::optional<int> keeps_opened;
  /// Where it is kept as it is bought. The freezer for what is bought frozen: then `keeps_cool` is
  /// how long it keeps there, `keeps_frozen` is none and every demand may be served by it.
  Place cool_place = Place::pantry;
  /// Room of one unit (1e6 micro-units), in microlitres.
  Volume room_cool = 0;
  Volume room_frozen = 0;
  /// Value of 1000 units (1 kg, 1 l, 1000 pieces) that are thrown away: a penalty; >= 0.
  Money waste = 0;
  /// Value of 1000 units that are left and keep `salvage_days` beyond the plan's last day; >= 0.
  Money salvage = 0;
  Amount salvage_cap = 0;
  int salvage_days = 1;
};

struct Model {
  Day last_day = 0;
  std::vector<Shop> shops;
  std::vector<Stop> stops;
  std::vector<Good> goods;
  /// Room on the night after day t, by place (index: Place) and day 0 ... last_day. An empty vector
  /// is a place without limit. What stock on hand takes is to be deducted by the caller.
  std::array<std::vector<Volume>, place_count> room;
};

struct Options {
  /// Ends the search with what has been found and proven by then. The result may then depend on
  /// the machine; `status` says so.
  double seconds = 2.0;
  /// Ends the search likewise, but the same on every machine.
  std::int64_t nodes = std::numeric_limits<std::int64_t>::max();
};

enum class Status : std::uint8_t {
  /// `total` is proven to be the least.
  optimal,
  /// `total` is possible and nothing below `bound` is.
  feasible,
  /// Nothing is possible; `shortages` says why.
  infeasible,
  /// A limit was reached before anything possible was found.
  unknown
};

struct Purchase {
  StopId stop = 0;
  OfferId offer = 0;
  /// Packs, or steps of an offer by weight; >= 1.
  int packs = 0;
  Money cost = 0;
  /// packs * what a pack holds.
  Amount amount = 0;
  /// Goes to the freezer on the day of buying.
  Amount frozen = 0;
  /// Left at the end and still good, and thrown away. amount = served + kept + wasted.
  Amount kept = 0;
  Amount wasted = 0;
};

/// `amount` of the good's purchase number `purchase` is used for the demand.
struct Serving {
  std::size_t purchase = 0;
  DemandId demand = 0;
  Amount amount = 0;
  bool frozen = false;
};

/// `amount` of a purchase is thrown away on `day`, the first on which it is no longer good (which
/// may lie after the plan).
struct Waste {
  std::size_t purchase = 0;
  Amount amount = 0;
  Day day = 0;
  /// Rest of a pack that was frozen whole (only goods with `keeps_opened`).
  bool frozen = false;
};

struct GoodSolution {
  /// By day, then stop, then offer.
  std::vector<Purchase> purchases;
  /// By demand's day, then by purchase.
  std::vector<Serving> servings;
  std::vector<Waste> wastes;
  Amount wasted = 0;
  Amount kept = 0;
  /// min(kept, salvage_cap).
  Amount salvaged = 0;
  /// Sum of the purchases' costs, before `off` and credit.
  Money spent = 0;
  Fine waste_value = 0;
  Fine salvage_value = 0;
};

enum class Why : std::uint8_t {
  /// The good has no offer at all.
  no_offer,
  /// Offers, but none that can be bought at a stop on or before the demand's day.
  no_stop,
  /// It was to be had in time, but would be too old by then.
  does_not_keep,
  /// It would keep in the freezer, but the demand must be fresh.
  must_be_fresh,
  /// Limits per visit leave too little.
  limit,
  /// Fridge, freezer or pantry are too small. (Named for a demand of the good that takes the most
  /// of the place that is over-full.)
  room
};

/// Why nothing is possible: per good, the first demand that cannot be met.
struct Shortage {
  GoodId good = 0;
  DemandId demand = 0;
  Why why = Why::no_offer;
  /// What is missing of the demand, at least.
  Amount missing = 0;
  /// The last stop on or before the demand's day, and the first after it, that sells the good.
  std::optional<StopId> before;
  std::optional<StopId> after;
  /// With `room`: the place that is too small.
  std::optional<Place> place;
};

struct Solution {
  Status status = Status::unknown;
  /// Indices of the stops made, ascending.
  std::vector<StopId> stops;
  /// One for each good of the model (empty if there is no solution).
  std::vector<GoodSolution> goods;
  /// Spend-over-X taken, by stop of the model; credit taken, by shop.
  std::vector<Money> off;
  std::vector<Money> credit;
  /// Total to minimise, exact, and rounded to Money (half up).
  Fine total_fine = 0;
  Money total = 0;
  /// Paid at the tills: purchases less `off` and credit. And the cost of the stops made.
  Money paid = 0;
  Money stop_cost = 0;
  /// Proven lower bound on `total`; equal to it when optimal.
  Money bound = 0;
  std::vector<Shortage> shortages;
  std::int64_t nodes = 0;
  std::int64_t subproblems = 0;
};

/// Solves the model. A model with values outside the ranges given above (negative costs, a demand
/// of nothing, an index out of range) throws std::invalid_argument: it is the caller's mistake.
Solution solve(const Model& model, const Options& options = {});

/// "Why this pack at this shop": what it would cost to do otherwise for one good, everything else
/// being decided anew.
struct Alternative {
  OfferId offer = 0;
  /// None: the offer wherever its shop is visited.
  std::optional<StopId> stop;
  /// Least total if the stops stay as they are in the solution (plus this stop, at its cost), and
  /// if the stops may change; none if that is not possible. Exact if the solution is optimal and
  /// `proven` holds.
  std::optional<Money> fixed_stops;
  std::optional<Money> free_stops;
  /// Of the solution with free stops: what the good costs at the tills before reductions, what all
  /// stops made cost, and how much of the good is thrown away.
  Money spent = 0;
  Money stop_cost = 0;
  Amount wasted = 0;
  bool proven = true;
};

struct Alternatives {
  /// By offer: the good is bought with this offer and no other.
  std::vector<Alternative> only;
  /// By stop and offer not bought there: at least one pack is bought there.
  std::vector<Alternative> also;
  /// By purchase of the solution: this offer cannot be had at this stop.
  std::vector<Alternative> without;
};

Alternatives alternatives(const Model& model, const Solution& solution, GoodId good,
                          const Options& options = {});

} // namespace manciple::purchase
