#pragma once

#include "text/files.hpp"

#include <string>
#include <vector>

namespace manciple::cli {

/// The files of a house as a revision of its git repository has them, under the paths by which they
/// are called here: what is in recipes, plans and the folder of `plan`. `plan` is one of them. The
/// working files are neither read nor touched. Says why not where git has no such revision, is not
/// there, or refuses.
tl::expected<text::FilesInMemory, std::string> files_at(const std::string& revision,
                                                        const std::string& plan);

/// Whether the house of a plan is in a git repository.
bool is_in_git(const std::string& plan);

} // namespace manciple::cli
