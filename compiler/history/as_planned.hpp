#pragma once

#include "kitchen/kitchen.hpp"
#include "purchase/shopping.hpp"

#include <vector>

namespace manciple::history {

/// The receipts that shopping by the list would give, of the stops of a day or of all days.
std::vector<kitchen::Receipt> as_planned(const kitchen::Kitchen& kitchen,
                                         const purchase::Shopping& shopping,
                                         std::optional<text::Date> day = std::nullopt);

/// The days of shopping before `until` of which neither a receipt nor a count says anything. From
/// `planned_from` on what has no receipt is still to come, whatever else has one on that day.
std::vector<text::Date> days_without_receipt(const kitchen::Kitchen& kitchen, text::Date until,
                                             std::optional<text::Date> planned_from = std::nullopt);

} // namespace manciple::history
