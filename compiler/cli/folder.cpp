#include "cli/folder.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cerrno>
#include <dirent.h>
#include <fcntl.h>
#include <memory>
#include <sys/random.h>
#include <system_error>
#include <unistd.h>

namespace manciple::cli {
namespace {

constexpr std::string_view start_of_name = ".manciple-";
constexpr std::size_t digits_of_name = 16;

} // namespace

void fail(const std::string& path) {
  throw FolderError{fmt::format("{} cannot be written: {}", path,
                                std::error_code(errno, std::generic_category()).message())};
}

std::string name_of_our_own() {
  std::uint64_t number = 0;
  if (::getrandom(&number, sizeof number, 0) != static_cast<ssize_t>(sizeof number)) {
    fail("what is beside it");
  }
  return fmt::format("{}{:0{}x}", start_of_name, number, digits_of_name);
}

bool is_name_of_our_own(std::string_view name) {
  return name.size() == start_of_name.size() + digits_of_name && name.starts_with(start_of_name) &&
         name.find_first_not_of("0123456789abcdef", start_of_name.size()) == std::string_view::npos;
}

Folder::Folder(const std::string& path, bool follow)
    : descriptor_(
          ::open(path.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC | (follow ? 0 : O_NOFOLLOW))),
      path_(path) {
  if (descriptor_ < 0) {
    fail(path);
  }
}

Folder::Folder(const Folder& parent, const std::string& name)
    : descriptor_(::openat(parent.descriptor_, name.c_str(),
                           O_RDONLY | O_DIRECTORY | O_CLOEXEC | O_NOFOLLOW)),
      path_(parent.path(name)) {
  if (descriptor_ < 0) {
    fail(path_);
  }
}

Folder::~Folder() {
  ::close(descriptor_);
}

std::vector<std::string> Folder::names() const {
  const int copy = ::openat(descriptor_, ".", O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  DIR* const raw = copy < 0 ? nullptr : ::fdopendir(copy);
  if (raw == nullptr) {
    fail(path_);
  }
  const std::unique_ptr<DIR, int (*)(DIR*)> open(raw, ::closedir);
  std::vector<std::string> out;
  while (const dirent* entry = ::readdir(open.get())) {
    const std::string_view name = entry->d_name;
    if (name != "." && name != "..") {
      out.emplace_back(name);
    }
  }
  std::sort(out.begin(), out.end());
  return out;
}

struct stat Folder::look(const std::string& name) const {
  struct stat out {};
  if (::fstatat(descriptor_, name.c_str(), &out, AT_SYMLINK_NOFOLLOW) != 0) {
    if (errno != ENOENT) {
      fail(path(name));
    }
    out.st_mode = 0;
  }
  return out;
}

struct stat Folder::look() const {
  struct stat out {};
  if (::fstat(descriptor_, &out) != 0) {
    fail(path_);
  }
  return out;
}

bool Folder::has_folder(const std::string& name) const {
  return S_ISDIR(look(name).st_mode);
}

bool Folder::make(const std::string& name, mode_t mode) const {
  if (::mkdirat(descriptor_, name.c_str(), mode) == 0) {
    return true;
  }
  if (errno != EEXIST) {
    fail(path(name));
  }
  return false;
}

void Folder::write(const std::string& name, std::string_view content) const {
  constexpr mode_t mode = 0666; // less what the user's mask takes away
  const int file = ::openat(descriptor_, name.c_str(),
                            O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, mode);
  if (file < 0) {
    fail(path(name));
  }
  while (!content.empty()) {
    const ssize_t written = ::write(file, content.data(), content.size());
    if (written < 0 && errno != EINTR) {
      const int error = errno;
      ::close(file);
      errno = error;
      fail(path(name));
    }
    content.remove_prefix(static_cast<std::size_t>(std::max<ssize_t>(written, 0)));
  }
  if (::close(file) != 0) {
    fail(path(name));
  }
}

void Folder::remove(const std::string& name) const {
  if (has_folder(name)) {
    const Folder inner(*this, name);
    for (const std::string& each : inner.names()) {
      inner.remove(each);
    }
    remove_if_empty(name);
  } else if (::unlinkat(descriptor_, name.c_str(), 0) != 0 && errno != ENOENT) {
    fail(path(name));
  }
}

void Folder::remove_if_empty(const std::string& name) const {
  if (::unlinkat(descriptor_, name.c_str(), AT_REMOVEDIR) != 0 && errno != ENOENT &&
      errno != ENOTEMPTY && errno != EEXIST) {
    fail(path(name));
  }
}

} // namespace manciple::cli
