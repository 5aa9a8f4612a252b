#pragma once

#include <string>
#include <string_view>

namespace manciple::cli {

/// Writes one file, whole or not at all: the folder is made if it is not there, and what stands
/// there is replaced only where `replace` says so. Links are not followed. Gives what went wrong,
/// in which case everything is as it was, or nothing.
std::string write_file(const std::string& path, std::string_view content, bool replace);

/// The same, and says so, or what went wrong; gives the exit code.
int write_and_say(const std::string& path, std::string_view content, bool replace);

} // namespace manciple::cli
