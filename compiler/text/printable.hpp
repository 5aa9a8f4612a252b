#pragma once

#include <optional>
#include <string>
#include <string_view>

/// What may reach a terminal, a list or a page: text, and nothing that steers what shows it.
namespace manciple::text {

/// A stretch of bytes that is no text.
struct Unprintable {
  std::size_t at = 0;
  std::size_t size = 0; ///< in bytes
  /// The character (control characters C0, DEL and C1, Unicode's line and paragraph separators);
  /// absent where the bytes are not UTF-8.
  std::optional<char32_t> character;
};

/// The first byte that is not UTF-8 (RFC 3629: no surrogates, nothing overlong, up to U+10FFFF).
std::optional<Unprintable> find_not_utf8(std::string_view text);

/// The first of anything that is no text, line ends and tabs among it.
std::optional<Unprintable> find_unprintable(std::string_view text);

/// The same text with a blank for everything in it that is no text. Line ends go too, unless
/// `lines`.
std::string printable(std::string_view text, bool lines = false);

} // namespace manciple::text
