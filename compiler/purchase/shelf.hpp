#pragma once

#include <array>
#include <optional>
#include <vector>

#include "purchase/network.hpp"

namespace manciple::purchase {

/// Excess that networks are built for at first: 30 cents of a dollar.
constexpr Fine wide = fine(3'000);
/// Edges of a good's network after which a set of stops is left open, for an effort of 1.
constexpr std::size_t most_edges = 200'000;

/// How much cheaper things have become: a Money spent, by stop; and as a part of what they cost
/// before, by stop and by place (on the night on which that is most).
struct Drop {
  std::vector<Fine> money;
  std::vector<double> stop;
  std::array<double, place_count> place{};
};
Drop drop(const Model& model, const Prices& from, const Prices& to);

/// A good's network for all stops that may be made, with what it is known not to have.
struct Shelved {
  Network network;
  /// At the prices it was built for, any plan that is none of its paths costs more; `impossible` if
  /// such plans never matter.
  Fine longest = impossible.value;
  /// How much of that lies above the least cost.
  Fine slack = 0;
  /// By visit: the most that can be spent there on what is of use; none if that is not known.
  std::vector<Money> useful;

  /// A lower bound, at other prices, on the cost of any plan that is none of the paths.
  Fine beyond(const Drop& drop) const;
};

/// Networks of the goods, all for the prices that the ledger has as well. They serve for any set of
/// stops: what is bought at a stop that is not made is left out when paths are looked for.
class Shelf {
public:
  /// `may_be_made` is by stop.
  Shelf(Ledger& ledger, std::vector<bool> may_be_made, const Prices& prices, Limits& limits);

  const Prices& prices() const { return prices_; }
  void set_prices(const Prices& prices);

  enum class Got : std::uint8_t { all, cannot_be, gave_up };
  /// By good, its network; with all plans that cost at most `slack` more than the cheapest when
  /// these stops are made. Gives up at `most` edges. The pointers stay good.
  Got take(const std::vector<bool>& made, Fine slack, std::size_t most,
           std::vector<const Shelved*>& taken);

  /// Likewise, of all the stops that may be made, as far as they are not given up.
  void lay_out(Fine slack, std::size_t most);
  /// A lower bound on what the good costs at the shelf's prices, and what it buys in its network.
  /// None if it has nothing there.
  std::optional<Outcome> at_least(GoodId good, const Terms& terms);

private:
  bool matters(const Prepared& good) const;

  Ledger& ledger_;
  std::vector<bool> may_be_made_;
  Limits& limits_;
  Prices prices_;
  /// What things cost at these prices, with the stops and charges of the question at hand.
  Workspace workspace_;
  Tariff tariff_;
  std::vector<Cost> charge_;
  Network::Way way_;
  std::vector<std::optional<Shelved>> shelved_;
};

} // namespace manciple::purchase
