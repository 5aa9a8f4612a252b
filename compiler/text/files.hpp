#pragma once

#include "text/diagnostics.hpp"

#include <tl/expected.hpp>

#include <map>
#include <string>
#include <vector>

namespace manciple::text {

/// Where the files of a house are: on a disk, or in memory.
class Files {
public:
  /// Why a file cannot be read, as a diagnostic says it.
  struct Refusal {
    Code code;
    std::string what;
    std::string fix;
  };

  virtual ~Files() = default;
  /// The bytes of a file, at most `largest_file` of them.
  [[nodiscard]] virtual tl::expected<std::string, Refusal> read(const std::string& path) const = 0;
  /// The names of the files of a folder, sorted. A folder that is not there has none; one that
  /// cannot be read is refused.
  [[nodiscard]] virtual tl::expected<std::vector<std::string>, Refusal>
  names(const std::string& folder) const = 0;
  /// Whether something stands there, be it readable or not.
  [[nodiscard]] virtual bool exists(const std::string& path) const = 0;
};

/// Files above this many bytes are refused: a year of plans is far smaller.
inline constexpr std::size_t largest_file = std::size_t{4} << 20U;

/// The files of the machine.
const Files& disk();

/// Files by their paths, as they are asked for: "plans/household.yaml".
class FilesInMemory final : public Files {
public:
  std::map<std::string, std::string> texts;

  [[nodiscard]] tl::expected<std::string, Refusal> read(const std::string& path) const override;
  [[nodiscard]] tl::expected<std::vector<std::string>, Refusal>
  names(const std::string& folder) const override;
  [[nodiscard]] bool exists(const std::string& path) const override;
};

} // namespace manciple::text
