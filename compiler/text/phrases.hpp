#pragma once

#include <initializer_list>
#include <span>
#include <string_view>

namespace manciple::text {

/// Whether a text says one of some phrases, whatever the case. A `*` in a phrase stands for up to
/// three words, a word that ends in `~` for every word that begins so: "rinse * chicken~" is said
/// by "Rinse the whole chickens".
bool says(std::string_view text, std::span<const std::string_view> phrases);
inline bool says(std::string_view text, std::initializer_list<std::string_view> phrases) {
  return says(text, std::span(phrases.begin(), phrases.size()));
}

/// Whether a text names a thing, one or several of it, by its whole name: "Slice the carrots" names
/// a carrot, "Peel" no eel.
bool names(std::string_view text, std::string_view noun);

} // namespace manciple::text
