#pragma once

#include <sys/stat.h>

#include <string>
#include <string_view>
#include <vector>

/// Folders as the system has them, by their descriptors, so that nothing is looked up twice and no
/// link is followed.
namespace manciple::cli {

/// What went wrong, thrown by all here: "out/p/list.txt: No space left on device".
struct FolderError {
  std::string what;
};
[[noreturn]] void fail(const std::string& path);

/// A name for what is written beside: one of our own that nobody can have prepared.
std::string name_of_our_own();
/// Whether a name may be one of those.
bool is_name_of_our_own(std::string_view name);

/// An open folder.
class Folder {
public:
  /// `path` may be anything that names a folder; its last part must not be a link unless `follow`.
  explicit Folder(const std::string& path, bool follow = false);
  /// A folder inside another one.
  Folder(const Folder& parent, const std::string& name);
  ~Folder();
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;

  [[nodiscard]] int descriptor() const { return descriptor_; }
  /// As it is called in messages.
  [[nodiscard]] const std::string& path() const { return path_; }
  [[nodiscard]] std::string path(const std::string& name) const { return path_ + "/" + name; }

  /// The names of what is in it, sorted.
  [[nodiscard]] std::vector<std::string> names() const;
  /// What stands there, not following a link; nothing there: st_mode is 0.
  [[nodiscard]] struct stat look(const std::string& name) const;
  [[nodiscard]] struct stat look() const;
  [[nodiscard]] bool has_folder(const std::string& name) const;

  /// Makes a folder; false where something has the name already.
  bool make(const std::string& name, mode_t mode) const;
  /// A new file with that content.
  void write(const std::string& name, std::string_view content) const;
  /// Takes an entry away, a folder with all that is in it.
  void remove(const std::string& name) const;
  /// Takes a folder away if nothing is in it.
  void remove_if_empty(const std::string& name) const;

private:
  int descriptor_ = -1;
  std::string path_;
};

} // namespace manciple::cli
