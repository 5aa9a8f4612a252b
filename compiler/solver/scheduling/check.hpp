#pragma once

#include "scheduling/project.hpp"

#include <optional>
#include <string>

namespace manciple::scheduling {

/// What is wrong with starts for a project, if anything: the first fault found, with indices.
/// Shares nothing with the search.
std::optional<std::string> fault(const Project& project, const std::vector<int>& start);

/// The same for a schedule; its length and bound must be right as well.
std::optional<std::string> fault(const Project& project, const Schedule& schedule);

} // namespace manciple::scheduling
