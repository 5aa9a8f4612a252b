#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

namespace manciple::text {
namespace {

constexpr std::array<std::pair<std::string_view, std::string_view>, 20> irregular{{
    {"leaf", "leaves"},       {"loaf", "loaves"},      {"half", "halves"},
    {"knife", "knives"},      {"calf", "calves"},      {"tomato", "tomatoes"},
    {"potato", "potatoes"},   {"mango", "mangoes"},    {"foot", "feet"},
    {"piece", "pieces"},      {"cookie", "cookies"},   {"shrimp", "shrimp"},
    {"zucchini", "zucchini"}, {"chilli", "chillies"},  {"chili", "chilies"},
    {"pie", "pies"},          {"brownie", "brownies"}, {"smoothie", "smoothies"},
    {"quiche", "quiches"},    {"brioche", "brioches"},
}};

// Words that end in s and are no plural.
constexpr std::array<std::string_view, 11> alike{"hummus",  "couscous",   "asparagus", "molasses",
                                                 "swiss",   "brussels",   "bass",      "citrus",
                                                 "octopus", "lemongrass", "schnapps"};

bool ends_with_word(std::string_view text, std::string_view word) {
  return text.ends_with(word) &&
         (text.size() == word.size() || !is_letter(text[text.size() - word.size() - 1]));
}

} // namespace

bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}
bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

std::string lower(std::string_view text) {
  std::string out(text);
  for (char& c : out) {
    if (c >= 'A' && c <= 'Z') {
      c = static_cast<char>(c - 'A' + 'a');
    }
  }
  return out;
}

std::string without_accents(std::string_view text) {
  // U+00C0 to U+00FF are the bytes C3 80 to C3 BF in UTF-8; a space stands for what stays.
  constexpr std::string_view plain =
      "AAAAAA CEEEEIIII NOOOOO OUUUUY  aaaaaa ceeeeiiii nooooo ouuuuy y";
  std::string out;
  for (std::size_t at = 0; at < text.size(); ++at) {
    const bool latin = text[at] == '\xC3' && at + 1 < text.size();
    const std::size_t letter =
        latin ? static_cast<unsigned char>(text[at + 1]) - 0x80U : plain.size();
    if (letter < plain.size() && plain[letter] != ' ') {
      out += plain[letter];
      ++at;
    } else {
      out += text[at];
    }
  }
  return out;
}

std::string_view trim(std::string_view text) {
  constexpr std::string_view blank = " \t\r\n";
  const std::size_t from = text.find_first_not_of(blank);
  if (from == std::string_view::npos) {
    return {};
  }
  return text.substr(from, text.find_last_not_of(blank) - from + 1);
}

std::vector<std::string_view> split(std::string_view text, char separator) {
  std::vector<std::string_view> parts;
  for (std::size_t at = 0;;) {
    const std::size_t end = text.find(separator, at);
    parts.push_back(trim(text.substr(at, end - at)));
    if (end == std::string_view::npos) {
      return parts;
    }
    at = end + 1;
  }
}

std::size_t find_comma(std::string_view text) {
  for (std::size_t at = text.find(','); at != std::string_view::npos; at = text.find(',', at + 1)) {
    const bool decimal =
        at > 0 && at + 1 < text.size() && is_digit(text[at - 1]) && is_digit(text[at + 1]);
    if (!decimal) {
      return at;
    }
  }
  return std::string_view::npos;
}

std::string join(const std::vector<std::string>& parts, std::string_view separator) {
  std::string out;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    out += i > 0 ? separator : "";
    out += parts[i];
  }
  return out;
}

std::string the_first_few(const std::vector<std::string>& all) {
  constexpr std::size_t shown = 3;
  std::string out;
  for (std::size_t i = 0; i < all.size() && i < shown; ++i) {
    out += (i > 0 ? ", " : "") + all[i];
  }
  return all.size() > shown ? fmt::format("{} and {} more", out, all.size() - shown) : out;
}

std::string slug(std::string_view name) {
  std::string out;
  for (const char c : lower(name)) {
    if (is_letter(c) || is_digit(c) || static_cast<unsigned char>(c) >= 0x80) {
      out += c;
    } else if (c != '\'' && !out.empty() && out.back() != '-') {
      out += '-';
    }
  }
  while (!out.empty() && out.back() == '-') {
    out.pop_back();
  }
  return out;
}

std::string capitalized(std::string text) {
  if (!text.empty() && text.front() >= 'a' && text.front() <= 'z') {
    text.front() = static_cast<char>(text.front() - 'a' + 'A');
  }
  return text;
}

std::string title(std::string_view slug) {
  std::string out(slug);
  std::replace(out.begin(), out.end(), '-', ' ');
  return capitalized(std::move(out));
}

std::string singular(std::string_view noun) {
  for (const auto& [one, many] : irregular) {
    if (ends_with_word(noun, many)) {
      return std::string(noun.substr(0, noun.size() - many.size())) + std::string(one);
    }
  }
  const bool stays = std::any_of(alike.begin(), alike.end(),
                                 [&](std::string_view word) { return ends_with_word(noun, word); });
  const auto cut = [&](std::size_t n) { return std::string(noun.substr(0, noun.size() - n)); };
  if (stays || noun.size() < 3 || !noun.ends_with('s') || noun.ends_with("ss") ||
      noun.ends_with("us")) {
    return std::string(noun);
  }
  if (noun.ends_with("ies") && noun.size() > 4) {
    return cut(3) + "y";
  }
  for (const std::string_view sibilant : {"shes", "ches", "xes", "sses", "zes"}) {
    if (noun.ends_with(sibilant)) {
      return cut(2);
    }
  }
  return cut(1);
}

std::string plural(std::string_view noun) {
  for (const auto& [one, many] : irregular) {
    if (ends_with_word(noun, one)) {
      return std::string(noun.substr(0, noun.size() - one.size())) + std::string(many);
    }
  }
  const bool stays = std::any_of(alike.begin(), alike.end(),
                                 [&](std::string_view word) { return ends_with_word(noun, word); });
  if (noun.empty() || stays) {
    return std::string(noun);
  }
  for (const std::string_view sibilant : {"sh", "ch", "x", "ss", "z"}) {
    if (noun.ends_with(sibilant)) {
      return std::string(noun) + "es";
    }
  }
  const bool consonant_y =
      noun.size() > 1 && noun.ends_with('y') &&
      std::string_view("aeiou").find(noun[noun.size() - 2]) == std::string_view::npos;
  return consonant_y ? std::string(noun.substr(0, noun.size() - 1)) + "ies"
                     : std::string(noun) + "s";
}

} // namespace manciple::text
