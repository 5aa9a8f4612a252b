#include "text/source.hpp"

#include <algorithm>
#include <filesystem>
#include <system_error>

namespace manciple::text {

Span part_of(Span whole, std::size_t offset, std::size_t length) {
  const std::size_t size = whole.end - whole.begin;
  const std::size_t from = std::min(offset, size);
  const std::size_t to = std::min(from + length, size);
  return {whole.file, whole.begin + static_cast<std::uint32_t>(from),
          whole.begin + static_cast<std::uint32_t>(to)};
}

FileId Sources::add(std::string path, std::string text) {
  File file{std::move(path), std::move(text), {0}};
  for (std::size_t i = 0; i < file.text.size(); ++i) {
    if (file.text[i] == '\n') {
      file.line_starts.push_back(static_cast<std::uint32_t>(i + 1));
    }
  }
  files_.push_back(std::move(file));
  return FileId{static_cast<std::uint32_t>(files_.size() - 1)};
}

std::string_view Sources::path(FileId file) const {
  return get(file).path;
}
std::optional<FileId> Sources::find(std::string_view path) const {
  const auto plain = [](std::string_view name) {
    std::error_code none;
    return std::filesystem::absolute(name, none).lexically_normal();
  };
  const auto wanted = plain(path);
  const auto found = std::find_if(files_.begin(), files_.end(),
                                  [&](const File& file) { return plain(file.path) == wanted; });
  return found == files_.end()
             ? std::nullopt
             : std::optional(FileId{static_cast<std::uint32_t>(found - files_.begin())});
}

std::string_view Sources::text(FileId file) const {
  return get(file).text;
}

Position Sources::position(FileId file, std::uint32_t offset) const {
  const File& f = get(file);
  const std::size_t index = line_index(f, offset);
  const std::uint32_t start = f.line_starts[index];
  const std::size_t end = std::min<std::size_t>(offset, f.text.size());
  const auto before =
      std::string_view(f.text).substr(start, end - std::min<std::size_t>(start, end));
  return {static_cast<std::uint32_t>(index + 1),
          static_cast<std::uint32_t>(count_characters(before) + 1)};
}

std::string_view Sources::line(FileId file, std::uint32_t offset) const {
  const File& f = get(file);
  const std::string_view text = f.text;
  const std::uint32_t start = f.line_starts[line_index(f, offset)];
  std::size_t end = text.find('\n', start);
  if (end == std::string_view::npos) {
    end = text.size();
  }
  if (end > start && text[end - 1] == '\r') {
    --end;
  }
  return text.substr(start, end - start);
}

const Sources::File& Sources::get(FileId file) const {
  return files_.at(static_cast<std::size_t>(file));
}

std::size_t Sources::line_index(const File& file, std::uint32_t offset) {
  const auto after = std::upper_bound(file.line_starts.begin(), file.line_starts.end(), offset);
  return static_cast<std::size_t>(after - file.line_starts.begin()) - 1;
}

std::size_t count_characters(std::string_view utf8) {
  const auto leads = [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; };
  return static_cast<std::size_t>(std::count_if(utf8.begin(), utf8.end(), leads));
}

} // namespace manciple::text
