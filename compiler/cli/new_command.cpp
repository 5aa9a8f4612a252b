// Makes the folder of a new house.
#include "cli/command_line.hpp"
#include "cli/commands.hpp"
#include "cli/exit.hpp"
#include "cli/folder.hpp"
#include "cli/new_house.hpp"
#include "cli/say.hpp"
#include "text/words.hpp"

#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <sys/stat.h>
#include <unistd.h>

namespace manciple::cli {
namespace {

namespace fs = std::filesystem;

// A folder of our own beside the new one; gone at the end unless it has been renamed.
class Draft {
public:
  explicit Draft(const fs::path& above) : path_((above / ".manciple-XXXXXX").string()) {
    if (::mkdtemp(path_.data()) == nullptr) {
      fail(above.string());
    }
  }
  ~Draft() {
    std::error_code ignored; // it has another name by now, or cannot be helped
    fs::remove_all(path_, ignored);
  }
  Draft(const Draft&) = delete;
  Draft& operator=(const Draft&) = delete;
  [[nodiscard]] const std::string& path() const { return path_; }

private:
  std::string path_;
};

void write_house(const std::string& path, std::span<const HouseFile> files, text::Date from) {
  const Folder house(path);
  house.write(".gitignore", "# What `manciple build` writes can be written again.\n/out/\n");
  for (const HouseFile& file : files) {
    const fs::path name(file.name);
    std::string folder = path;
    for (const fs::path& part : name.parent_path()) {
      const Folder above(folder);
      above.make(part.string(), 0777);
      folder = above.path(part.string());
    }
    Folder(folder).write(name.filename().string(), with_days(file.text, from));
  }
}

// The folder as a user who makes it has it; mkdtemp makes one for the user alone.
void open_to_others(const std::string& path) {
  const mode_t mask = ::umask(0);
  ::umask(mask);
  if (::chmod(path.c_str(), 0777 & ~mask) != 0) {
    fail(path);
  }
}

} // namespace

std::string with_days(std::string_view text, text::Date from) {
  std::string out;
  constexpr std::string_view mark = "DAY";
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t next = std::min(text.find(mark, at), text.size());
    out += text.substr(at, next - at);
    const std::size_t number = next + mark.size();
    if (number < text.size() && text::is_digit(text[number])) {
      out += text::print_date(from + std::chrono::days(text[number] - '1'));
      at = number + 1;
    } else {
      out += text.substr(next, mark.size());
      at = std::min(number, text.size());
    }
  }
  return out;
}

namespace {

struct NewRequest {
  std::string folder;
  std::string measures = "us";
  std::string from = "2027-01-04"; ///< the first day of its plan
};

// Makes a folder with a small house in it that builds, all at once; nothing that is there is
// touched.
int new_house(const NewRequest& request) {
  const std::string& folder = request.folder;
  const measure::System system = *measure::parse_system(request.measures);
  const text::Date from = date_of("--from", request.from, "2027-01-04");
  std::error_code none;
  const fs::path target = fs::absolute(folder, none).lexically_normal();
  const fs::path house = target.has_filename() ? target : target.parent_path();
  if (fs::exists(fs::symlink_status(house, none))) {
    complain("manciple: {} already exists; give the name of a new folder\n", folder);
    return bad_input;
  }
  if (!fs::is_directory(house.parent_path(), none)) {
    complain("manciple: there is no folder {} to make it in\n", house.parent_path().string());
    return bad_input;
  }
  try {
    const Draft draft(house.parent_path());
    write_house(draft.path(), house_files(system), from);
    open_to_others(draft.path());
    // Fails where something has the name by now, unless it is an empty folder.
    if (std::rename(draft.path().c_str(), house.c_str()) != 0) {
      fail(folder);
    }
  } catch (const FolderError& error) {
    complain("manciple: {}\n", error.what);
    return bad_input;
  }
  const std::string name = text::trim(folder).empty() ? house.string() : folder;
  say("{} holds a small house: three recipes, a shop, what is on hand, and a plan.\n"
      "Every file says what it is for. To see its list:\n\n  manciple build {}\n",
      name, (fs::path(folder) / "plans/week.yaml").lexically_normal().string());
  return good;
}

} // namespace

void add_new(CommandLine& to) {
  auto [command, asked] = to.add<NewRequest>(
      "new",
      "make a folder with the files of a small household, ready to build and to make your own",
      new_house);
  command.add_option("FOLDER", asked.folder, "the folder to make; it must not exist yet")
      ->required();
  command.add_option("--measures", asked.measures, "us or metric (default: us)")
      ->check(CLI::IsMember({"us", "metric"}).description(""));
  command.add_option("--from", asked.from, "the first day of its plan (default: 2027-01-04)");
}

} // namespace manciple::cli
