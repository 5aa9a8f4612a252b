#pragma once

#include "purchase/shopping.hpp"

namespace manciple::purchase {

/// Says of each stop that is made for less than the stop itself costs the household what it is made
/// for, and what leaving it out would mean: the list is solved once more without it. Not of the
/// only one.
void tell_small_stops(const kitchen::Kitchen& kitchen, const Shopping& shopping,
                      text::Diagnostics& diagnostics, const Search& search);

} // namespace manciple::purchase
