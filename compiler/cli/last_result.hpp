#pragma once

#include "emit/emit.hpp"

#include <optional>
#include <string>
#include <vector>

/// What the last build of a plan gave, and what is otherwise now.
namespace manciple::cli {

/// The bytes of a result; nothing where there is no such file, or it is too large to be one.
std::optional<std::string> read_whole(const std::string& path);

/// What changed against the result that stood in a folder before it was replaced, in a few lines.
/// Empty where that is no result that can be read.
std::string since_last_build(const std::optional<std::string>& last,
                             const std::vector<emit::Output>& now, const std::string& plan);

} // namespace manciple::cli
