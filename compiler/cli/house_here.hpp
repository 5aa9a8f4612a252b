#pragma once

#include "text/diagnostics.hpp"
#include "text/yaml.hpp"

#include <optional>
#include <string>

namespace manciple::cli {

/// A file of the house in which the command is run, by its path in it; none if there is no such
/// file, or it cannot be read.
std::optional<text::Node> file_here(const std::string& path, text::Sources& sources,
                                    text::Diagnostics& diagnostics);

/// Likewise the household, for what a command has to know of it. What is wrong with it is not said.
std::optional<text::Node> household_here();

} // namespace manciple::cli
