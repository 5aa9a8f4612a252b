#pragma once

#include <string>
#include <string_view>

/// How RFC 5545 writes text and lines.
namespace manciple::emit {

/// A TEXT value (section 3.3.11): backslash, semicolon and comma with a backslash before them, line
/// ends as "\n". Control characters, which a value must not have, become spaces.
std::string escape_text(std::string_view text);

/// A content line (section 3.1) with its line end: folded so that no line has more than 75 octets,
/// and no character of UTF-8 is cut.
std::string fold_line(std::string_view line);

} // namespace manciple::emit
