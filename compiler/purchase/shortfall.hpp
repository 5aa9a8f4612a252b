#pragma once

#include "purchase/shopping.hpp"

namespace manciple::purchase {

/// Warns of what is still to be found, at the line that asks for it, with the reason and what would
/// help: no price list has it, no trip is in time, it would not keep until then, shops sell too
/// little in a visit, or there is no room.
void explain_shortfalls(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                        const Shopping& shopping, text::Diagnostics& diagnostics);

} // namespace manciple::purchase
