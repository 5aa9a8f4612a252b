#pragma once

#include "buying/model/ids.hpp"
#include "buying/model/price.hpp"

#include <array>
#include <cstdint>
#include <limits>
#include <optional>
#include <vector>

/// What to buy, where and when, as a problem without names: items, offers, stops, room. `solve`
/// (solve.hpp) gives a `Solution` that says what it has proven.
///
/// The rules that the solver, the checker and the reference formulations of the tests share:
///
/// **Moments and days.** Stops and demands have a moment, in minutes. What is bought at a stop can
/// serve a demand of the same moment or a later one. How long things keep is counted in days: the
/// day of a stop is that of its moment, the day of a demand is said with it (what is used at the
/// end of a day belongs to that day).
///
/// **Life.** What was bought on day b is ready for use on the days b + ready and later, and good
/// unfrozen on the days up to b + cool. Frozen on day b it is good up to b + frozen, for demands
/// that take frozen food. A demand with `slack` may be eaten up to so many days earlier than its
/// day: it can be served by what is good on any of those days.
///
/// **Packs.** Where a life has `opened`, what is bought comes in packs, one or several in each that
/// is paid for, and opening one starts a clock. A pack that is opened on day o is good unfrozen up
/// to o + opened, and not beyond b + cool. Or it is frozen whole on day b, thawed and opened on day
/// o for a demand that takes frozen food, and good for such demands up to o + opened. Or it is
/// opened on day b and portions of it are frozen, good up to b + frozen. Or, with `refrozen`, the
/// rest of a pack that was opened on day o, and not frozen before, is portioned and frozen that day
/// and good up to o + refrozen. Without `opened`, what is bought is loose: any part of it may be
/// frozen on day b.
///
/// **Stock** is there from the start, with days of its own; what stands in the freezer serves
/// demands that take frozen food. Of the rest, what may be frozen is frozen on day 0.
///
/// **Use.** A demand is served by one holding after the other, each used up before the next one is
/// taken, where a holding is a lot of stock or what one offer at one stop gave (a pack of it if it
/// comes in packs). What is open and good unfrozen for the demand comes first, then what is free to
/// choose: of holdings of a kind (loose, or packs of one size) the one that goes off first
/// unfrozen; or, from the freezer, of each kind the one that goes off first there; of equals, the
/// first lot, then the first stop and offer. (A demand that can use up more than eight packs of one
/// size does so before it takes another size: the size that is first in the order of lots, then
/// stops and offers.) A demand is not left short while something may serve it, but for what would
/// have to be frozen for it: that is free to choose. What is good unfrozen may come from the
/// freezer all the same if its cool place is limited (and the item has no more than eight demands).
/// What a demand takes from the freezer in all must be at least `least_frozen`, or else all that it
/// must have, unless all of that was there from the start.
///
/// **Containers.** A demand may be for a number of containers ("1 can"), whatever their size within
/// reason. An offer or lot with `containers` serves it by the container, any other by weight.
///
/// **Shortage.** What a demand must have is its amount less `give`. It takes the rest, too, from
/// what is open or loose and serves it at that time, unless what it takes so is needed by another
/// demand that nothing else could serve, or something of the rest is missing. What is lacking of
/// `give` costs `lacking`; what is missing of the rest costs `missing`, and `missing_once` for the
/// demand. (What is taken so takes no room until then.)
///
/// **Left at the end.** What serves no demand is kept if it is still good on `kept_day`, cool or,
/// loose or in unopened packs, frozen; of an opened pack only if it is good unfrozen. What would
/// have to be frozen for that is kept if it is at least `least_frozen` in all, and `freezes_rest`.
/// What is kept is worth `salvage` up to `salvage_cap`. What is not kept is waste and costs
/// `waste`.
///
/// **Room.** What is bought on day b and used on day d takes room on the nights b, ..., d - 1: in
/// the freezer from the day it is frozen, before that in its cool place. What is kept takes room
/// until the last night of the plan. What is wasted takes none: it is thrown away at once.
///
/// **Money.** What is spent at a stop is the sum of its purchases at the till, less `off` if that
/// sum is at least `over` for the stop's shop. A shop's credit takes up to `credit` off what is
/// then still to pay at its stops together.
///
/// **The total to minimise**: the purchases' costs, less what reductions and credit take off, plus
/// the cost of the stops made, waste, lacking, missing, and `from_freezer` for each demand that is
/// served from the freezer, minus salvage. Equal totals: fewer stops, then fewer packs, then
/// purchases on days that suit the item: as early as can be, or, for what spoils (see
/// `Item::buy_late`), as late as can be.
namespace manciple::buying {

/// Microlitres (cubic millimetres).
using Volume = std::int64_t;
constexpr Volume microlitres_per_litre = 1'000'000;
/// Days from the plan's first day, which is 0. May be negative only for an offer's first day.
using Day = int;
/// Minutes from the first midnight of day 0.
using Minute = std::int64_t;
constexpr Minute minutes_per_day = Minute{24} * 60;

enum class Place : std::uint8_t { pantry, fridge, freezer };
constexpr std::size_t place_count = 3;
constexpr std::size_t index(Place place) {
  return static_cast<std::size_t>(place);
}

struct Shop {
  /// Store credit: taken off what is paid here in the plan, at most this much in all.
  Money credit = 0;
  /// What one Money of it is worth, in Fine: less than fine_per_money where what it pays earns no
  /// cash back. No offer's cost is less than this times what it counts for at the till, so that it
  /// never pays to buy for the sake of the credit.
  Fine credit_worth = fine_per_money;
  /// Spend at least `over` in one visit and pay `off` less (once a visit). None if `off` is 0.
  /// 0 <= off <= over.
  Money over = 0;
  Money off = 0;
};

/// A shop that can be visited at a moment. Trips are the stops of one moment.
struct Stop {
  /// When its purchases are at hand; >= 0.
  Minute at = 0;
  ShopId shop;
  /// What making the stop costs the household; >= 0.
  Money cost = 0;
  /// Made whatever it costs; others are dropped when they do not pay.
  bool always = false;

  [[nodiscard]] Day day() const { return static_cast<Day>(at / minutes_per_day); }
};

/// How long something keeps, in days from the day on which it comes home.
struct Life {
  int ready = 0;
  int cool = 0;
  std::optional<int> frozen;
  std::optional<int> opened;
  /// From the day of opening; only with `opened`.
  std::optional<int> refrozen;
};

/// A pack of an item at a shop on the days first_day ... last_day.
struct Offer {
  ShopId shop;
  Day first_day = std::numeric_limits<Day>::min();
  Day last_day = std::numeric_limits<Day>::max();
  /// What one pack holds, or one step of the scale; > 0.
  Amount pack = 0;
  /// Packs in one, each opened by itself: what each holds is a whole number (matters only to a life
  /// with `opened`; 1 if by weight).
  int inside = 1;
  /// n steps are handed over as one pack (matters only to a life with `opened`).
  bool by_weight = false;
  /// What n packs count in the total, and for reductions and credit.
  PackPrice cost;
  TillPrice till;
  /// Most packs, or steps, in one visit; >= 1.
  int limit = std::numeric_limits<int>::max();
  /// Where it stands as it is bought. In the freezer it is bought frozen: then `life.cool` is how
  /// long it keeps there, and every demand may be served by it.
  Place place = Place::pantry;
  Life life;
  /// Thousandths of a container that one pack counts for, the same for each of those inside; 0: it
  /// counts by weight only.
  Amount containers = 0;
};

/// Something that is there from the start.
struct Lot {
  /// It stands in the freezer, and is thawed for those who take frozen food.
  [[nodiscard]] bool is_thawed() const { return place == Place::freezer && life.frozen; }

  /// In all, > 0; in so many packs of equal size if it has an `opened` life.
  Amount amount = 0;
  int packs = 1;
  Place place = Place::pantry;
  /// Days counted from day 0, not from when it came home. In the freezer only `frozen` counts, or,
  /// of what was bought frozen, which has none, `cool`.
  Life life;
  /// Where what is thawed stands.
  Place thawed_in = Place::pantry;
  /// It has been opened before: the first pack is good up to this day.
  std::optional<Day> opened_until;
  Amount containers = 0; ///< of each pack
};

struct Demand {
  Minute at = 0;
  Day day = 0;
  /// > 0, `give` included.
  Amount amount = 0;
  /// May be lacking; 0 <= give <= amount.
  Amount give = 0;
  /// May come from the freezer.
  bool takes_frozen = true;
  /// May be eaten so many days before its day; >= 0.
  int slack = 0;
  /// Thousandths of a container, if it is asked for so: `amount` is what they hold as a rule.
  Amount containers = 0;
};

struct Item {
  Table<DemandId, Demand> demands;
  Table<OfferId, Offer> offers;
  Table<LotId, Lot> stock;
  /// Room of one unit, in microlitres.
  Volume room_cool = 0;
  Volume room_frozen = 0;
  /// Values of 1000 units; >= 0, and `lacking` >= `salvage`.
  Money waste = 0;
  Money salvage = 0;
  Money lacking = 0;
  Money missing = 0;
  /// Of each demand that has something missing; >= 0.
  Money missing_once = 0;
  Amount salvage_cap = 0;
  /// What is left is kept if it is good on this day, which is after the plan's last.
  Day kept_day = 0;
  /// Of each demand that is served from the freezer, in part or in full; >= 0.
  Money from_freezer = 0;
  Amount least_frozen = 0;
  /// What is left is frozen to be kept if it keeps so.
  bool freezes_rest = true;
  /// Of equal lists, one with late purchases; else one with early ones.
  bool buy_late = false;
};

struct Model {
  Day last_day = 0;
  Table<ShopId, Shop> shops;
  Table<StopId, Stop> stops;
  Table<ItemId, Item> items;
  /// Room on the night after day t, by place and day 0 ... last_day. An empty vector is a place
  /// without limit. The stock of all items, if none of it is used, fits.
  std::array<std::vector<Volume>, place_count> room;
};

/// Throws std::invalid_argument, saying which value, if one is outside the ranges given above or
/// the sums of a model might go beyond `most_money`: it is the caller's mistake.
void validate(const Model& model);

/// What the model's prices, values and penalties can add up to at most, or more than `most_money`.
/// For the caller to choose the unit of Money by.
Money most_that_may_be_paid(const Model& model);

} // namespace manciple::buying
