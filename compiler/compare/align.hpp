#pragma once

#include <algorithm>
#include <functional>
#include <vector>

namespace manciple::compare {

/// The same thing before and after; one of them is null where it is new or gone.
template <typename T>
struct Pair {
  const T* before = nullptr;
  const T* after = nullptr;
};

/// Pairs what is alike by the first likeness, of the rest what is alike by the second, and so on,
/// each in order. Pairs stand in the order of what is after, then what is gone.
template <typename T>
std::vector<Pair<T>> align(const std::vector<const T*>& before, const std::vector<const T*>& after,
                           const std::vector<std::function<bool(const T&, const T&)>>& alike) {
  std::vector<const T*> partner(after.size(), nullptr);
  std::vector<bool> taken(before.size(), false);
  for (const auto& is_alike : alike) {
    for (std::size_t a = 0; a < after.size(); ++a) {
      for (std::size_t b = 0; b < before.size() && partner[a] == nullptr; ++b) {
        if (!taken[b] && is_alike(*before[b], *after[a])) {
          taken[b] = true;
          partner[a] = before[b];
        }
      }
    }
  }
  std::vector<Pair<T>> out;
  for (std::size_t a = 0; a < after.size(); ++a) {
    out.push_back({partner[a], after[a]});
  }
  for (std::size_t b = 0; b < before.size(); ++b) {
    if (!taken[b]) {
      out.push_back({before[b], nullptr});
    }
  }
  return out;
}

/// Both sides by a key: what is grouped, in the order of keys.
template <typename T>
struct Group {
  std::vector<const T*> before;
  std::vector<const T*> after;
};

} // namespace manciple::compare
