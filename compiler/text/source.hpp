#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace manciple::text {

/// Names one file of a Sources.
enum class FileId : std::uint32_t {};

/// A stretch of bytes in one file: [begin, end). The place of a diagnostic.
struct Span {
  FileId file{};
  std::uint32_t begin = 0;
  std::uint32_t end = 0;

  friend bool operator==(const Span&, const Span&) = default;
};

/// The part of `whole` from byte `offset` on, `length` bytes long, kept inside `whole`.
Span part_of(Span whole, std::size_t offset, std::size_t length);

/// A place as a person counts it: lines and columns from 1, columns in characters (code points).
struct Position {
  std::uint32_t line = 1;
  std::uint32_t column = 1;
};

/// The texts that a run has read, kept so that a diagnostic can show the line it speaks of.
class Sources {
public:
  /// `path` is what the user would type to name the file; it is printed as it is given.
  FileId add(std::string path, std::string text);

  [[nodiscard]] std::string_view path(FileId file) const;
  /// The file that was added under a path, or another way of writing it.
  [[nodiscard]] std::optional<FileId> find(std::string_view path) const;
  [[nodiscard]] std::string_view text(FileId file) const;
  [[nodiscard]] Position position(FileId file, std::uint32_t offset) const;
  /// The line that holds `offset`, without its line end.
  [[nodiscard]] std::string_view line(FileId file, std::uint32_t offset) const;

private:
  struct File {
    std::string path;
    std::string text;
    std::vector<std::uint32_t> line_starts;
  };
  [[nodiscard]] const File& get(FileId file) const;
  [[nodiscard]] static std::size_t line_index(const File& file, std::uint32_t offset);

  std::vector<File> files_;
};

/// The number of characters (code points) in UTF-8 text; a stray byte counts as one.
std::size_t count_characters(std::string_view utf8);

} // namespace manciple::text
