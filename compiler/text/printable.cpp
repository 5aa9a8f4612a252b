#include "text/printable.hpp"

namespace manciple::text {
namespace {

// One character, or one byte that begins none.
struct Decoded {
  std::optional<char32_t> character;
  std::size_t size = 1;
};

Decoded decode(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t i) -> unsigned {
    return at + i < text.size() ? static_cast<unsigned char>(text[at + i]) : 0U;
  };
  const unsigned lead = byte(0);
  if (lead < 0x80U) {
    return {static_cast<char32_t>(lead), 1};
  }
  const std::size_t size = lead >= 0xF0U && lead <= 0xF4U   ? 4
                           : lead >= 0xE0U && lead <= 0xEFU ? 3
                           : lead >= 0xC2U && lead <= 0xDFU ? 2
                                                            : 0;
  if (size == 0) {
    return {};
  }
  char32_t character = lead & (0x7FU >> size);
  for (std::size_t i = 1; i < size; ++i) {
    if ((byte(i) & 0xC0U) != 0x80U) {
      return {};
    }
    character = character << 6U | (byte(i) & 0x3FU);
  }
  const bool overlong = (size == 3 && character < 0x800) || (size == 4 && character < 0x10000);
  const bool surrogate = character >= 0xD800 && character <= 0xDFFF;
  if (overlong || surrogate || character > 0x10FFFF) {
    return {};
  }
  return {character, size};
}

bool steers(char32_t c) {
  return c < 0x20 || (c >= 0x7F && c <= 0x9F) || c == 0x2028 || c == 0x2029;
}

template <typename Bad>
std::optional<Unprintable> find(std::string_view text, Bad bad) {
  for (std::size_t at = 0; at < text.size();) {
    const Decoded one = decode(text, at);
    if (bad(one)) {
      return Unprintable{at, one.size, one.character};
    }
    at += one.size;
  }
  return std::nullopt;
}

} // namespace

std::optional<Unprintable> find_not_utf8(std::string_view text) {
  return find(text, [](const Decoded& one) { return !one.character; });
}

std::optional<Unprintable> find_unprintable(std::string_view text) {
  return find(text, [](const Decoded& one) { return !one.character || steers(*one.character); });
}

std::string printable(std::string_view text, bool lines) {
  std::string out;
  out.reserve(text.size());
  for (std::size_t at = 0; at < text.size();) {
    const Decoded one = decode(text, at);
    const bool line_end = lines && one.character == U'\n';
    if (one.character && (!steers(*one.character) || line_end)) {
      out += text.substr(at, one.size);
    } else {
      out += ' ';
    }
    at += one.size;
  }
  return out;
}

} // namespace manciple::text
