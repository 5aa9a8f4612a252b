#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace manciple::text {

/// How many single-letter insertions, deletions, changes and swaps of neighbours turn `a` into `b`
/// (the restricted Damerau-Levenshtein distance; Damerau 1964). Where it is above `most`, some
/// number above `most`.
std::size_t edit_distance(std::string_view a, std::string_view b,
                          std::size_t most = std::string_view::npos - 1);

/// The names most like `word`, best first, at most `most`, none that is too far to be meant.
std::vector<std::string> nearest(std::string_view word, const std::vector<std::string_view>& names,
                                 std::size_t most = 3);

/// "did you mean A, B or C?", or nothing when no name is near.
std::string did_you_mean(std::string_view word, const std::vector<std::string_view>& names);

} // namespace manciple::text
