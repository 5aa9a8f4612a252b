#pragma once

#include "purchase/worth.hpp"

namespace manciple::purchase {

/// Warns of what costs more than its budget, the plan or a trip, and names the fewest things whose
/// absence would bring it down: dishes of the plan, lines of the trip, the dearest first.
void check_budgets(const kitchen::Kitchen& kitchen, const Shopping& shopping, const Worth& worth,
                   text::Diagnostics& diagnostics);

} // namespace manciple::purchase
