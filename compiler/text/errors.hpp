#pragma once

#include "text/diagnostics.hpp"

/// Messages of the text phase: files and YAML.
namespace manciple::text::errors {

inline constexpr Code cannot_read{"T001", "a file cannot be read"};
inline constexpr Code too_large{"T002", "a file is larger than a plan or recipe can be"};
inline constexpr Code not_yaml{"T003", "a file is not YAML"};
inline constexpr Code empty{"T004", "a file is empty"};
inline constexpr Code duplicate_key{"T005", "a key stands twice"};
inline constexpr Code unknown_key{"T006", "a key that is not known here"};
inline constexpr Code missing_key{"T007", "a key that is needed is missing"};
inline constexpr Code wrong_shape{"T008", "a list, mapping or text stands where another is needed"};
inline constexpr Code bad_value{"T009", "a value cannot be read as what is needed here"};
inline constexpr Code not_text{"T011",
                               "bytes that are not UTF-8, or a character that steers a terminal"};
inline constexpr Code no_alias{"T010", "anchors, aliases and several documents are not read"};

} // namespace manciple::text::errors
