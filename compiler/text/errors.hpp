#pragma once

#include "text/diagnostics.hpp"

/// Messages of the text phase: files and YAML.
namespace manciple::text::errors {

/// A file cannot be read.
inline constexpr Code cannot_read{"T001"};
/// A file is larger than a plan or recipe can be.
inline constexpr Code too_large{"T002"};
/// A file is not YAML.
inline constexpr Code not_yaml{"T003"};
/// A file is empty.
inline constexpr Code empty{"T004"};
/// A key stands twice.
inline constexpr Code duplicate_key{"T005"};
/// A key that is not known here.
inline constexpr Code unknown_key{"T006"};
/// A key that is needed is missing.
inline constexpr Code missing_key{"T007"};
/// A list, mapping or text stands where another is needed.
inline constexpr Code wrong_shape{"T008"};
/// Anchors, aliases and several documents are not read.
inline constexpr Code no_alias{"T010"};
/// Bytes that are not UTF-8, or a character that steers a terminal.
inline constexpr Code not_text{"T011"};

/// A decimal comma within brackets, where YAML takes it for the end of an item.
inline constexpr Code cut_at_comma{"T012"};

} // namespace manciple::text::errors
