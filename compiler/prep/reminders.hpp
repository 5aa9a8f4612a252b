#pragma once

#include "prep/freezing.hpp"
#include "prep/prep.hpp"

#include <vector>

namespace manciple::prep {

/// What has to be remembered: thawing, soaking, marinating, ripening, freezing, using up. By date.
std::vector<Reminder> reminders(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                                const purchase::Shopping& shopping,
                                const std::vector<Cooking>& cooking,
                                const std::vector<Freezing>& freezing);

} // namespace manciple::prep
