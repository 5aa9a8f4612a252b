#pragma once

#include "buying/item/label_setting.hpp"

#include <array>
#include <vector>

namespace manciple::buying {

/// By stop: it is made.
using OpenStops = Table<StopId, bool>;

/// Whether a stop's spend-over-X reduction is to be reached. While that is `open`, a bound can
/// count a part of it in proportion to what is spent.
enum class Target : std::uint8_t { open, reached, missed };

/// What of a model couples its items, worked out once.
struct Coupling {
  explicit Coupling(const Model& model);

  bool room = false; ///< a place with a limit
  bool reductions = false;
  bool credit = false;
  /// By stop: the most that a Money spent there may count less than it is, such that buying more
  /// never costs less; less than fine_per_money where cash back is given.
  Table<StopId, Fine> most_discount;
  /// Fine for a litre and night: no room is worth more, and sums with it stay in range.
  Fine dearest_room = 0;

  [[nodiscard]] bool any() const { return room || reductions || credit; }
};

/// Lagrange multipliers of what couples items. With them every item can be decided on its own, and
/// the sum, less what the limits are worth, is a bound from below (Geoffrion 1974).
struct Multipliers {
  /// By place and night: Fine for one litre. Empty for a place without limit.
  std::array<std::vector<Fine>, place_count> room;
  /// By shop: worth of one Money spent there towards its credit, in Fine.
  Table<ShopId, Fine> credit;
  /// By stop: worth of one Money spent there towards `off`, in Fine. 0 if it is to be missed.
  Table<StopId, Fine> off;
  Table<StopId, Target> targets;
};

/// All zero; targets are open where there is a reduction.
Multipliers no_multipliers(const Model& model);

/// Those at which a bound counts as much of each reduction as of what must be spent for it: the
/// most that it can be worth while it is open whether it is reached.
Multipliers first_multipliers(const Model& model, const Coupling& coupling);

/// A mix of both, with the targets of the first; `part` of the second.
Multipliers between(const Multipliers& a, const Multipliers& b, double part);

/// What one Money spent at the stop counts less than it is.
Fine discount(const Model& model, const Multipliers& at, StopId stop);
/// What the stop's reduction is worth at most (if it is to be reached: exactly), and the shop's
/// credit, beyond what the multipliers give for spending.
Fine off_gain(const Model& model, const Multipliers& at, StopId stop);
Fine credit_gain(const Model& model, const Multipliers& at, ShopId shop);
/// What all room is worth, rounded up.
Fine room_worth(const Model& model, const Multipliers& at);

RoomRates room_rates(const Model& model, const Multipliers& at, const Item& item);
/// Of an item when these stops are made. `room` must stay.
Terms terms_at(const Model& model, const Prepared& item, const Multipliers& at,
               const OpenStops& open, const RoomRates& room);

} // namespace manciple::buying
