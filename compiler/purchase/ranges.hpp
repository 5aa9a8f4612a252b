#pragma once

#include "kitchen/kitchen.hpp"
#include "resolve/resolve.hpp"

namespace manciple::purchase {

/// Amounts, prices and litres that are beyond what the list is reckoned with exactly are errors,
/// each at its line: a hundred tons or a hundred million pieces, ten million for a pack, a million
/// litres. Far more than any kitchen has; mostly a digit too many.
void check_ranges(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                  text::Diagnostics& diagnostics);

} // namespace manciple::purchase
