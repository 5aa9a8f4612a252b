#include "emit/page/html.hpp"

#include <fmt/format.h>

#include <cmath>
#include <cstdint>

namespace manciple::emit::page {

std::string escape(std::string_view text) {
  std::string out;
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    switch (c) {
    case '&':
      out += "&amp;";
      break;
    case '<':
      out += "&lt;";
      break;
    case '>':
      out += "&gt;";
      break;
    case '"':
      out += "&quot;";
      break;
    case '\'':
      out += "&#39;";
      break;
    default:
      if ((byte < 0x20 && c != '\n' && c != '\t') || byte == 0x7F) {
        out += "\xEF\xBF\xBD"; // U+FFFD
      } else {
        out += c;
      }
    }
  }
  return out;
}

std::string name(std::string_view text) {
  return "<bdi>" + escape(text) + "</bdi>";
}

namespace {

// A letter of UTF-8: its number, and how many bytes it takes; U+FFFD for what is none.
struct Letter {
  char32_t number = 0;
  std::size_t bytes = 1;
};
Letter letter_at(std::string_view text, std::size_t at) {
  constexpr char32_t not_a_letter = 0xFFFD;
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned char first = byte(at);
  const std::size_t bytes = first < 0x80 ? 1 : first < 0xE0 ? 2 : first < 0xF0 ? 3 : 4;
  if (bytes == 1) {
    return {first, 1};
  }
  char32_t number = first & (0xFFU >> (bytes + 1));
  for (std::size_t i = 1; i < bytes; ++i) {
    if (at + i >= text.size() || (byte(at + i) & 0xC0U) != 0x80U) {
      return {not_a_letter, i};
    }
    number = (number << 6U) | (byte(at + i) & 0x3FU);
  }
  return {first < 0xC2 ? not_a_letter : number, bytes};
}

template <class Write>
std::string each_letter(std::string_view text, const Write& write) {
  std::string out;
  out.reserve(text.size());
  for (std::size_t i = 0; i < text.size();) {
    const Letter letter = letter_at(text, i);
    if (letter.number < 0x80) {
      out += text[i];
    } else {
      out += write(letter.number);
    }
    i += letter.bytes;
  }
  return out;
}

} // namespace

std::string in_ascii(std::string_view html) {
  return each_letter(html, [](char32_t number) {
    return fmt::format("&#{};", static_cast<std::uint32_t>(number));
  });
}

std::string script_in_ascii(std::string_view text) {
  return each_letter(text, [](char32_t number) {
    const auto code = static_cast<std::uint32_t>(number);
    constexpr std::uint32_t planes = 0x10000;
    return code < planes ? fmt::format("\\u{:04x}", code)
                         : fmt::format("\\u{:04x}\\u{:04x}", 0xD800 + ((code - planes) >> 10U),
                                       0xDC00 + ((code - planes) & 0x3FFU));
  });
}

std::string folded(std::string_view html) {
  return fmt::format("<noscript class=folded>{}</noscript>", html);
}

std::string percent(double share) {
  // Printed from a whole number, so that no platform's rounding of doubles shows.
  const auto hundredths = static_cast<long long>(std::llround(share * 10000));
  std::string out = fmt::format("{}.{:02}", hundredths / 100, hundredths % 100);
  out.erase(out.find_last_not_of('0') + 1);
  if (out.back() == '.') {
    out.pop_back();
  }
  return out + "%";
}

} // namespace manciple::emit::page
