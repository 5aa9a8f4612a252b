#pragma once

#include <map>
#include <vector>

#include "purchase/network.hpp"

namespace manciple::purchase {

/// How much cheaper things have become, as a part of what they cost before: by stop, and by place
/// on the night on which that is most.
struct Drop {
  std::vector<double> stop;
  std::array<double, place_count> place{};
};
Drop drop(const Model& model, const Prices& from, const Prices& to);

/// A good's network for some of its stops, kept for other sets of stops among which the good has
/// the same choice.
struct Shelved {
  Network network;
  /// The slack it was built for, and the length at its prices that any plan exceeds that is none of
  /// its paths; `impossible` if such plans never matter.
  Fine slack = 0;
  Fine longest = impossible.value;

  /// A lower bound, at other prices, on the cost of any plan that is none of the paths.
  Fine beyond(const Drop& drop) const;
};

/// Networks of the goods, all for the same prices.
class Shelf {
public:
  Shelf(const Model& model, const std::vector<Prepared>& goods, Prices prices, Limits& limits)
      : model_(model),
        goods_(goods),
        limits_(limits),
        prices_(std::move(prices)),
        shelved_(goods.size()) {}

  const Prices& prices() const { return prices_; }
  void set_prices(Prices prices);

  enum class Got : std::uint8_t { all, cannot_be, gave_up };
  /// By good, its network when these stops are made, of at least this slack; gives up at `most`
  /// edges. They stay good until the prices are set or more slack is asked for.
  Got take(const std::vector<bool>& made, Fine slack, std::size_t most,
           std::vector<const Shelved*>& taken);

private:
  bool matters(const Prepared& good, const std::vector<bool>& made) const;

  const Model& model_;
  const std::vector<Prepared>& goods_;
  Limits& limits_;
  Prices prices_;
  /// By good and which of its visits can be used.
  std::vector<std::map<std::vector<bool>, Shelved>> shelved_;
};

} // namespace manciple::purchase
