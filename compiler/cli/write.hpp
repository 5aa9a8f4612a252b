#pragma once

#include "emit/emit.hpp"

#include <string>
#include <vector>

namespace manciple::cli {

/// Writes the files into `folder`, all at once: whoever looks, and whenever the program is killed,
/// finds either everything as it was or everything new. Other files in the folder stay. Gives what
/// went wrong, in which case everything is as it was, or nothing.
///
/// How: a whole new folder is made beside, in a folder of our own with a name that nobody can have
/// prepared; what the user keeps in the old one is linked into it; then the two are exchanged in
/// one step (renameat2 of Linux with RENAME_EXCHANGE; a file system that cannot do that gets two
/// renames, between which there is no folder, but never a mixture). A lock on the folder above
/// keeps a second build waiting, and what a killed one left beside is cleared away by the next.
/// Links are not followed.
std::string write_all(const std::string& folder, const std::vector<emit::Output>& files);

} // namespace manciple::cli
