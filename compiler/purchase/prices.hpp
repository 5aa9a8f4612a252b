#pragma once

#include <array>
#include <vector>

#include "purchase/ledger.hpp"

namespace manciple::purchase {

/// Whether a stop's spend-over-X reduction is to be reached. While that is `open`, a bound can
/// count a part of it in proportion to what is spent.
enum class Target : std::uint8_t { open, reached, missed };

/// Lagrange multipliers of what couples goods. With them every good can be decided on its own, and
/// the sum, less what the limits are worth, is a bound from below (Geoffrion 1974).
struct Prices {
  /// By place and night: Fine for one microlitre. Empty for a place without limit.
  std::array<std::vector<Fine>, place_count> room;
  /// By shop: worth of one Money spent there towards its credit, in Fine; 0 ... fine_per_money.
  std::vector<Fine> credit;
  /// By stop: worth of one Money spent there towards `off`, in Fine. 0 if it is to be missed.
  std::vector<Fine> off;
  std::vector<Target> targets;
};

/// No price on anything; targets are open where there is a reduction.
Prices no_prices(const Model& model);

/// The prices at which a bound counts as much of each reduction as of what must be spent for it:
/// the most that it can be worth while it is open whether it is reached.
Prices first_prices(const Model& model);

/// A mix of both, with the targets of the first; `part` of the second.
Prices between(const Prices& a, const Prices& b, double part);

/// What the model couples at all.
bool has_room_limit(const Model& model);
bool is_coupled(const Model& model);

/// What one Money spent at the stop counts for.
Fine per_money(const Model& model, const Prices& prices, StopId stop);
/// What the stop's reduction is worth at most (if it is to be reached: exactly), and the shop's
/// credit, once prices are paid.
Fine off_gain(const Model& model, const Prices& prices, StopId stop);
Fine credit_gain(const Model& model, const Prices& prices, ShopId shop);
/// What all room is worth at these prices.
Fine room_worth(const Model& model, const Prices& prices);

/// The prices in the form in which a plan's cost is quickest to work out.
struct Tariff {
  /// By stop, and one for none: what one Money spent there counts less than what is paid.
  std::vector<Fine> discount;
  /// Likewise: 1 if nothing can be bought there.
  std::vector<char> closed;
  /// By place: what a microlitre costs in the nights before each; empty if it costs nothing.
  std::array<std::vector<Fine>, place_count> room;
};
Tariff tariff(const Model& model, const Prices& prices, const std::vector<bool>& made);

RoomPrices room_prices(const Model& model, const Prices& prices, const Good& good);
/// What the good does at the prices when these stops are made.
Outcome cheapest(const Model& model, const Prepared& good, const Prices& prices,
                 const std::vector<bool>& made, Workspace& workspace);
/// Sets the prices of every good.
void set_prices(Ledger& ledger, const Prices& prices);

} // namespace manciple::purchase
