#pragma once

#include "kitchen/household.hpp"
#include "text/yaml.hpp"

#include <vector>

/// Parts of a household's file.
namespace manciple::kitchen {

/// Foods that stand for each other. Each group is a mapping from foods to how much of each does the
/// same.
void read_any_of(const std::vector<const text::Node*>& groups, Household& household, Names& names,
                 text::Diagnostics& diagnostics);
/// Those that usually do. What the household groups itself stays as it says.
void read_swaps(const text::Node& node, Household& household, Names& names,
                text::Diagnostics& diagnostics);

/// The meals of a day and their hours.
void read_slots(const std::vector<const text::Entry*>& entries, Household& household,
                text::Diagnostics& diagnostics);
/// Who cooks when.
void read_cooks(const std::vector<const text::Node*>& nodes, Household& household,
                text::Diagnostics& diagnostics);

} // namespace manciple::kitchen
