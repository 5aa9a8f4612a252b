#include "text/files.hpp"

#include "text/errors.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <filesystem>
#include <fstream>
#include <system_error>

namespace manciple::text {
namespace {

namespace fs = std::filesystem;
using Refusal = Files::Refusal;

std::string too_large(const std::string& path, std::uintmax_t size) {
  return fmt::format("{} has {} bytes; a recipe or plan file may have at most {}", path, size,
                     largest_file);
}

Refusal unreadable(const std::string& path, const std::error_code& error) {
  return {errors::cannot_read, fmt::format("{} cannot be read: {}", path, error.message()), {}};
}

class Disk final : public Files {
public:
  [[nodiscard]] tl::expected<std::string, Refusal> read(const std::string& path) const override {
    std::error_code error;
    const auto status = fs::status(path, error);
    if (status.type() == fs::file_type::not_found) {
      return tl::unexpected(
          Refusal{errors::cannot_read, fmt::format("there is no file {}", path), {}});
    }
    if (!fs::status_known(status)) {
      return tl::unexpected(unreadable(path, error));
    }
    if (!fs::is_regular_file(status)) {
      return tl::unexpected(
          Refusal{errors::cannot_read, fmt::format("{} is not a file", path),
                  fs::is_directory(status) ? "name a file in that directory" : ""});
    }
    if (const auto size = fs::file_size(path, error); !error && size > largest_file) {
      return tl::unexpected(Refusal{errors::too_large, too_large(path, size), {}});
    }
    errno = 0;
    std::ifstream in(path, std::ios::binary);
    // In pieces: some files have no size until they are read.
    std::string bytes;
    std::array<char, std::size_t{1} << 15U> piece{};
    while (in && bytes.size() <= largest_file) {
      in.read(piece.data(), piece.size());
      bytes.append(piece.data(), static_cast<std::size_t>(in.gcount()));
    }
    if (bytes.size() > largest_file) {
      return tl::unexpected(Refusal{errors::too_large, too_large(path, bytes.size()), {}});
    }
    if (!in.eof()) {
      return tl::unexpected(unreadable(path, std::error_code(errno, std::generic_category())));
    }
    return bytes;
  }

  [[nodiscard]] tl::expected<std::vector<std::string>, Refusal>
  names(const std::string& folder) const override {
    std::vector<std::string> out;
    std::error_code error;
    fs::directory_iterator at(folder, error);
    for (; !error && at != fs::directory_iterator(); at.increment(error)) {
      std::error_code none;
      if (at->is_regular_file(none)) {
        out.push_back(at->path().filename().string());
      }
    }
    if (error && error != std::errc::no_such_file_or_directory) {
      return tl::unexpected(unreadable(folder, error));
    }
    std::sort(out.begin(), out.end());
    return out;
  }

  [[nodiscard]] bool exists(const std::string& path) const override {
    std::error_code none;
    return fs::status(path, none).type() != fs::file_type::not_found;
  }
};

} // namespace

const Files& disk() {
  static const Disk files;
  return files;
}

tl::expected<std::string, Refusal> FilesInMemory::read(const std::string& path) const {
  const auto found = texts.find(path);
  if (found == texts.end()) {
    return tl::unexpected(
        Refusal{errors::cannot_read, fmt::format("there is no file {}", path), {}});
  }
  if (found->second.size() > largest_file) {
    return tl::unexpected(Refusal{errors::too_large, too_large(path, found->second.size()), {}});
  }
  return found->second;
}

tl::expected<std::vector<std::string>, Refusal>
FilesInMemory::names(const std::string& folder) const {
  std::vector<std::string> out;
  const std::string start = folder + "/";
  for (auto at = texts.lower_bound(start); at != texts.end() && at->first.starts_with(start);
       ++at) {
    std::string name = at->first.substr(start.size());
    if (name.find('/') == std::string::npos) {
      out.push_back(std::move(name));
    }
  }
  return out;
}

bool FilesInMemory::exists(const std::string& path) const {
  return texts.contains(path);
}

} // namespace manciple::text
