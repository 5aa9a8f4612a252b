#pragma once

#include "prep/prep.hpp"

#include <vector>

namespace manciple::prep {

/// The tasks of a session by their start, each with the cook who does it: the first one who is
/// free, and for a wash-up the one who has made it necessary.
std::vector<Task> assign_cooks(std::vector<Task> tasks, int cooks);

} // namespace manciple::prep
