#include "text/phrases.hpp"

#include "text/words.hpp"

#include <algorithm>
#include <string>
#include <vector>

namespace manciple::text {
namespace {

constexpr std::size_t most_between = 3;

bool is_of_word(char c, bool pattern) {
  return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') ||
         static_cast<unsigned char>(c) >= 0x80 || (pattern && (c == '*' || c == '~'));
}

std::vector<std::string> words_of(std::string_view text, bool pattern = false) {
  std::vector<std::string> out(1);
  for (const char each : text) {
    const char c = each >= 'A' && each <= 'Z' ? static_cast<char>(each - 'A' + 'a') : each;
    if (is_of_word(c, pattern)) {
      out.back() += c;
    } else if (!out.back().empty()) {
      out.emplace_back();
    }
  }
  if (out.back().empty()) {
    out.pop_back();
  }
  return out;
}

bool is_like(const std::string& word, const std::string& pattern) {
  return pattern.ends_with('~')
             ? word.starts_with(std::string_view(pattern).substr(0, pattern.size() - 1))
             : word == pattern;
}

// The text from `at` on begins with the phrase from `next` on.
bool begins(const std::vector<std::string>& text, std::size_t at,
            const std::vector<std::string>& phrase, std::size_t next) {
  for (; next < phrase.size(); ++next, ++at) {
    if (phrase[next] == "*") {
      for (std::size_t skip = 0; skip <= most_between; ++skip) {
        if (begins(text, at + skip, phrase, next + 1)) {
          return true;
        }
      }
      return false;
    }
    if (at >= text.size() || !is_like(text[at], phrase[next])) {
      return false;
    }
  }
  return true;
}

} // namespace

bool says(std::string_view text, std::span<const std::string_view> phrases) {
  const std::vector<std::string> words = words_of(text);
  return std::any_of(phrases.begin(), phrases.end(), [&](std::string_view phrase) {
    const std::vector<std::string> wanted = words_of(phrase, true);
    for (std::size_t at = 0; at < words.size(); ++at) {
      if (begins(words, at, wanted, 0)) {
        return true;
      }
    }
    return false;
  });
}

bool names(std::string_view text, std::string_view noun) {
  const std::string one = singular(noun);
  const std::string several = plural(one);
  return says(text, {noun, one, several});
}

} // namespace manciple::text
