#pragma once

#include "prep/prep.hpp"

#include <vector>

namespace manciple::prep {

/// Says who does each step that is cooked on a day, where household or plan name somebody: whoever
/// has begun a dish goes on with it, else the first who is free and has time. While a session runs
/// its cooks share its tasks and the dishes anew. What begins before anybody has time is told.
void name_cooks(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                std::vector<SessionPlan>& sessions, std::vector<Cooking>& cooking,
                text::Diagnostics& diagnostics);

} // namespace manciple::prep
