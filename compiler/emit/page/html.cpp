#include "emit/page/html.hpp"

#include <fmt/format.h>

#include <cmath>

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
