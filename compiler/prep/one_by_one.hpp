#pragma once

#include "scheduling/project.hpp"

#include <vector>

namespace manciple::prep {

/// What is taken of each resource in one minute.
using Row = std::vector<int>;

/// The row of a minute, with those before it made where there are none.
Row& row_at(std::vector<Row>& rows, const scheduling::Project& project, std::size_t minute);

/// Starts of a project's activities, beside what is `used` already: of those whose predecessors are
/// placed, the one that stands first in `order` is placed as early as it fits (serial schedule
/// generation).
std::vector<int> one_by_one(const scheduling::Project& project, const std::vector<int>& order,
                            std::vector<Row> used);

} // namespace manciple::prep
