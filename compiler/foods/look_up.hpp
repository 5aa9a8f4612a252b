#pragma once

#include <algorithm>
#include <array>
#include <optional>
#include <string_view>

namespace manciple::foods {

/// The value of an enum whose words stand in the order of its values.
template <typename Enum, std::size_t n>
std::optional<Enum> look_up(const std::array<std::string_view, n>& words, std::string_view word) {
  const auto* const found = std::find(words.begin(), words.end(), word);
  return found == words.end() ? std::nullopt
                              : std::optional(static_cast<Enum>(found - words.begin()));
}

} // namespace manciple::foods
