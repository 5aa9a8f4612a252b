#include "emit/calendar_text.hpp"

namespace manciple::emit {

std::string escape_text(std::string_view text) {
  std::string out;
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (c == '\\' || c == ';' || c == ',') {
      out += '\\';
      out += c;
    } else if (c == '\n') {
      out += "\\n";
    } else {
      out += byte < 0x20 || byte == 0x7F ? ' ' : c;
    }
  }
  return out;
}

std::string fold_line(std::string_view line) {
  constexpr std::size_t longest = 75;
  std::string out;
  std::size_t room = longest;
  while (line.size() > room) {
    std::size_t cut = room;
    // A byte 10xxxxxx goes on with a character.
    while (cut > 1 && (static_cast<unsigned char>(line[cut]) & 0xC0U) == 0x80U) {
      --cut;
    }
    out.append(line.substr(0, cut)).append("\r\n ");
    line.remove_prefix(cut);
    room = longest - 1; // the space that says "goes on" counts
  }
  return out.append(line).append("\r\n");
}

} // namespace manciple::emit
