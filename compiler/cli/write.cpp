#include "cli/write.hpp"

#include "cli/folder.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cerrno>
#include <charconv>
#include <chrono>
#include <cstdio>
#include <fcntl.h>
#include <filesystem>
#include <sys/file.h>
#include <system_error>
#include <thread>
#include <unistd.h>

namespace manciple::cli {
namespace {

namespace fs = std::filesystem;
using Files = std::vector<emit::Output>;

constexpr std::chrono::seconds longest_wait{30};

bool is_output(const Files& files, const std::string& name) {
  return std::any_of(files.begin(), files.end(),
                     [&](const emit::Output& file) { return file.name == name; });
}

bool same_thing(const struct stat& a, const struct stat& b) {
  return a.st_dev == b.st_dev && a.st_ino == b.st_ino;
}

bool older(const struct stat& a, const struct stat& b) {
  return std::pair(a.st_mtim.tv_sec, a.st_mtim.tv_nsec) <
         std::pair(b.st_mtim.tv_sec, b.st_mtim.tv_nsec);
}

// What the user keeps in the old folder is linked into the new one, folders made anew for that.
// What cannot be linked is moved later, by bring_over.
void link_over(const Folder& from, const Folder& to, const Files& outputs) {
  const dev_t device = from.look().st_dev;
  for (const std::string& name : from.names()) {
    const struct stat there = from.look(name);
    if (is_output(outputs, name) || there.st_mode == 0) {
      continue;
    }
    if (!S_ISDIR(there.st_mode)) {
      (void)::linkat(from.descriptor(), name.c_str(), to.descriptor(), name.c_str(), 0);
      continue;
    }
    if (there.st_dev != device) {
      throw FolderError{fmt::format("{} is on another file system, so the folder cannot be "
                                    "replaced as a whole; give another folder with --out",
                                    from.path(name))};
    }
    to.make(name, there.st_mode & 07777U);
    const Folder inner(from, name);
    const Folder made(to, name);
    link_over(inner, made, {});
    const timespec times[2] = {there.st_atim, there.st_mtim};
    (void)::fchmod(made.descriptor(), there.st_mode & 07777U);
    (void)::futimens(made.descriptor(), times);
  }
}

void move(const Folder& from, const Folder& to, const std::string& name) {
  if (::renameat(from.descriptor(), name.c_str(), to.descriptor(), name.c_str()) != 0) {
    fail(to.path(name));
  }
}

// Empties a folder that has been replaced: outputs go, what the user keeps goes into `to` unless it
// is there already.
void bring_over(const Folder& from, const Folder& to, const Files& outputs) {
  for (const std::string& name : from.names()) {
    const struct stat there = from.look(name);
    const struct stat here = to.look(name);
    const bool both_folders = S_ISDIR(there.st_mode) && S_ISDIR(here.st_mode);
    if (!is_output(outputs, name) && both_folders && !same_thing(there, here)) {
      bring_over(Folder(from, name), Folder(to, name), {});
      from.remove_if_empty(name);
      continue;
    }
    if (!is_output(outputs, name) && here.st_mode != 0 &&
        S_ISDIR(there.st_mode) != S_ISDIR(here.st_mode)) {
      continue; // a folder and a file of one name: both stay where they are
    }
    // Where someone has changed it while we wrote, the later one stays.
    const bool kept = !is_output(outputs, name) && !same_thing(there, here) &&
                      (here.st_mode == 0 || !older(there, here));
    if (kept) {
      move(from, to, name);
    } else {
      from.remove(name);
    }
  }
}

// Whether the lock was had; without one (not every file system has locks) nothing of others is
// touched.
bool lock(const Folder& above) {
  const auto until = std::chrono::steady_clock::now() + longest_wait;
  while (::flock(above.descriptor(), LOCK_EX | LOCK_NB) != 0) {
    if (errno != EWOULDBLOCK && errno != EINTR) {
      return false;
    }
    if (std::chrono::steady_clock::now() > until) {
      throw FolderError{fmt::format("another build is writing into {}", above.path())};
    }
    std::this_thread::sleep_for(std::chrono::milliseconds(20));
  }
  return true;
}

// A folder of our own beside the target. In it the draft stands under its inode and the target's
// name, so that whoever finds it later can tell whether it has been exchanged: then another folder,
// the old one, has that name.
class Workspace {
public:
  explicit Workspace(const Folder& above)
      : above_(above), name_(make(above)), folder_(above, name_) {}
  ~Workspace() {
    try {
      if (!draft_.empty()) {
        folder_.remove(draft_);
      }
      above_.remove_if_empty(name_);
    } catch (const FolderError&) { // NOLINT: the next build clears it away
    }
  }
  Workspace(const Workspace&) = delete;
  Workspace& operator=(const Workspace&) = delete;

  [[nodiscard]] const Folder& folder() const { return folder_; }
  /// The draft's name, once made.
  const std::string& make_draft(const std::string& target) {
    draft_ = "new";
    folder_.make(draft_, 0777);
    const std::string named = fmt::format("{}.{}", folder_.look(draft_).st_ino, target);
    if (::renameat(folder_.descriptor(), draft_.c_str(), folder_.descriptor(), named.c_str()) !=
        0) {
      fail(folder_.path(named));
    }
    draft_ = named;
    return draft_;
  }
  /// From now on what bears the draft's name is not the draft.
  void exchanged() { draft_.clear(); }

private:
  static std::string make(const Folder& above) {
    for (;;) {
      std::string name = name_of_our_own();
      if (above.make(name, 0700)) {
        return name;
      }
    }
  }

  const Folder& above_;
  std::string name_;
  Folder folder_;
  std::string draft_;
};

bool is_workspace(const Folder& above, const std::string& name) {
  const struct stat there = above.look(name);
  return is_name_of_our_own(name) && S_ISDIR(there.st_mode) && there.st_uid == ::geteuid();
}

// What a build that was killed has left in one entry of its workspace.
void clear_entry(const Folder& above, const Folder& workspace, const std::string& entry,
                 const Files& outputs) {
  const std::size_t point = entry.find('.');
  const std::string target = point == std::string::npos ? "" : entry.substr(point + 1);
  ino_t made = 0;
  std::from_chars(entry.data(), entry.data() + std::min(point, entry.size()), made);
  if (target.empty() || workspace.look(entry).st_ino == made) {
    workspace.remove(entry); // a draft
  } else if (above.has_folder(target)) {
    bring_over(Folder(workspace, entry), Folder(above, target), outputs);
    workspace.remove_if_empty(entry);
  } else if (::renameat(workspace.descriptor(), entry.c_str(), above.descriptor(),
                        target.c_str()) != 0) {
    fail(above.path(target));
  }
}

void clear_away(const Folder& above, const Files& outputs) {
  for (const std::string& name : above.names()) {
    if (!is_workspace(above, name)) {
      continue;
    }
    {
      const Folder workspace(above, name);
      for (const std::string& entry : workspace.names()) {
        clear_entry(above, workspace, entry, outputs);
      }
    }
    above.remove_if_empty(name);
  }
}

// What stands in the target's place; a word about it where it cannot be replaced.
bool check_target(const Folder& above, const std::string& name, const Files& files) {
  const struct stat there = above.look(name);
  if (S_ISLNK(there.st_mode)) {
    throw FolderError{fmt::format("{} is a link; name the folder itself", above.path(name))};
  }
  if (there.st_mode != 0 && !S_ISDIR(there.st_mode)) {
    throw FolderError{fmt::format("{} is not a folder", above.path(name))};
  }
  if (there.st_mode == 0) {
    return false;
  }
  const Folder old(above, name);
  for (const emit::Output& file : files) {
    if (old.has_folder(file.name)) {
      throw FolderError{fmt::format("{} is a folder", old.path(file.name))};
    }
  }
  return true;
}

bool not_supported(int error) {
  return error == EINVAL || error == ENOSYS || error == EOPNOTSUPP;
}

// The draft takes the target's place, and the old folder the draft's.
void exchange(const Folder& workspace, const std::string& draft, const Folder& above,
              const std::string& name, bool replaces) {
  const unsigned how = replaces ? RENAME_EXCHANGE : RENAME_NOREPLACE;
  const auto put = [&](unsigned flags) {
    return ::renameat2(workspace.descriptor(), draft.c_str(), above.descriptor(), name.c_str(),
                       flags) == 0;
  };
  if (put(how)) {
    return;
  }
  if (!not_supported(errno)) {
    fail(above.path(name));
  }
  const std::string old = "0." + name; // no folder has that inode
  if (replaces &&
      ::renameat(above.descriptor(), name.c_str(), workspace.descriptor(), old.c_str()) != 0) {
    fail(above.path(name));
  }
  if (!put(0)) {
    const int error = errno;
    if (replaces) {
      (void)::renameat(workspace.descriptor(), old.c_str(), above.descriptor(), name.c_str());
    }
    errno = error;
    fail(above.path(name));
  }
}

void write(const std::string& parent, const std::string& name, const Files& files) {
  const Folder above(parent, true);
  if (lock(above)) {
    clear_away(above, files);
  }
  const bool replaces = check_target(above, name, files);
  Workspace workspace(above);
  const std::string draft = workspace.make_draft(name);
  {
    const Folder made(workspace.folder(), draft);
    for (const emit::Output& file : files) {
      made.write(file.name, file.content);
    }
    if (replaces) {
      const Folder old(above, name);
      link_over(old, made, files);
      (void)::fchmod(made.descriptor(), old.look().st_mode & 07777U);
    }
  }
  exchange(workspace.folder(), draft, above, name, replaces);
  workspace.exchanged();
  for (const std::string& entry : workspace.folder().names()) {
    clear_entry(above, workspace.folder(), entry, files);
  }
}

} // namespace

std::string write_all(const std::string& folder, const Files& files) {
  try {
    std::error_code error;
    fs::path path = fs::path(folder + "/.").lexically_normal().parent_path();
    if (path.empty() || path.filename() == "." || path.filename() == "..") {
      path = fs::canonical(folder, error);
    }
    const fs::path parent = path.has_parent_path() ? path.parent_path() : fs::path(".");
    if (!error) {
      fs::create_directories(parent, error);
    }
    if (error) {
      return fmt::format("{} cannot be made: {}", folder, error.message());
    }
    if (!path.has_filename()) {
      return fmt::format("{} cannot be replaced; give another folder with --out", folder);
    }
    write(parent.string(), path.filename().string(), files);
    return {};
  } catch (const FolderError& error) {
    return error.what;
  }
}

} // namespace manciple::cli
