#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace manciple::text {

/// How many single-letter insertions, deletions, changes and swaps of neighbours turn `a` into `b`
/// (the restricted Damerau-Levenshtein distance; Damerau 1964). Where it is above `most`, some
/// number above `most`.
std::size_t edit_distance(std::string_view a, std::string_view b,
                          std::size_t most = std::string_view::npos - 1);

/// Whether a name says that something is not in it: "gluten-free flour", "cake without nuts",
/// "vegan cheese".
bool takes_away(std::string_view name);

/// What a name says is not in it, as it says it: "gluten free", "without nuts", "vegan"; empty
/// where it says nothing of the kind.
std::string_view taken_away(std::string_view name);

/// The names most like `word`, best first, at most `most`, none that is too far to be meant. For
/// what is free of something ("gluten-free flour") only what is free of the same.
std::vector<std::string> nearest(std::string_view word, const std::vector<std::string_view>& names,
                                 std::size_t most = 3);

/// "did you mean A, B or C?", or nothing when no name is near.
std::string did_you_mean(std::string_view word, const std::vector<std::string_view>& names);

/// The name that `word` is all but certainly a slip of: one letter off, or two in a word of eight
/// letters or more; of three letters, two swapped; in a phrase, word by word. Nothing for another
/// word that is merely like it.
std::optional<std::string_view> slip_of(std::string_view word,
                                        const std::vector<std::string_view>& names);

} // namespace manciple::text
