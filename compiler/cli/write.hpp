#pragma once

#include "emit/emit.hpp"

#include <string>
#include <vector>

namespace manciple::cli {

/// Writes the files into `folder`, making it if need be: each under another name first, all of them
/// renamed only when every one is on disk. Other files in the folder stay. Gives what went wrong,
/// or nothing.
std::string write_all(const std::string& folder, const std::vector<emit::Output>& files);

} // namespace manciple::cli
