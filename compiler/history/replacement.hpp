#pragma once

#include "history/past.hpp"

#include <optional>

/// What it would cost to buy again what is in the house.
namespace manciple::history {

/// In cents, at the least regular price (`purchase::replacement_price`). Nothing where none is
/// known.
std::optional<Rational> replacement_cost(const kitchen::Kitchen& kitchen, const Holding& holding);

/// Of what was made: its ingredients as its recipe says them, as far as prices are known; the work
/// counts nothing. Nothing where no price is known.
std::optional<Rational> replacement_cost(const kitchen::Kitchen& kitchen,
                                         const kitchen::MadeLot& lot);

} // namespace manciple::history
