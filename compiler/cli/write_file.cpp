#include "cli/write_file.hpp"

#include "cli/exit.hpp"
#include "cli/folder.hpp"
#include "cli/say.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <filesystem>

namespace manciple::cli {
namespace {

namespace fs = std::filesystem;

} // namespace

std::string write_file(const std::string& path, std::string_view content, bool replace) {
  const fs::path file(path);
  try {
    std::error_code wrong;
    fs::create_directories(file.parent_path().empty() ? fs::path(".") : file.parent_path(), wrong);
    const Folder folder(file.parent_path().empty() ? "." : file.parent_path().string(), true);
    const std::string name = file.filename().string();
    const struct stat there = folder.look(name);
    if (!replace && there.st_mode != 0) {
      return fmt::format("{} already exists and is left as it is", path);
    }
    if (there.st_mode != 0 && !S_ISREG(there.st_mode)) {
      return fmt::format("{} is not a file", path);
    }
    const std::string draft = name_of_our_own();
    folder.write(draft, content);
    if (replace && there.st_mode != 0) {
      (void)::fchmodat(folder.descriptor(), draft.c_str(), there.st_mode & 07777U, 0);
    }
    // A link is refused where the name has been taken in the meantime; a renaming replaces.
    const int done =
        replace
            ? ::renameat(folder.descriptor(), draft.c_str(), folder.descriptor(), name.c_str())
            : ::linkat(folder.descriptor(), draft.c_str(), folder.descriptor(), name.c_str(), 0);
    const int why = errno;
    if (done != 0 || !replace) {
      folder.remove(draft);
    }
    if (done != 0) {
      errno = why;
      fail(path);
    }
    return {};
  } catch (const FolderError& error) {
    return error.what;
  }
}

int write_and_say(const std::string& path, std::string_view content, bool replace) {
  if (const std::string failed = write_file(path, content, replace); !failed.empty()) {
    complain("manciple: {}\n", failed);
    return bad_input;
  }
  say("Written to {}\n", path);
  return good;
}

} // namespace manciple::cli
