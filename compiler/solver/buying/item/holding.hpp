#pragma once

#include "buying/item/prepared.hpp"

#include <algorithm>
#include <tuple>
#include <vector>

namespace manciple::buying {

/// What is in the house of one source in one state.
struct Holding {
  std::uint32_t source = 0;
  /// An opened pack; else unopened packs, or what is loose.
  bool open = false;
  /// Was frozen whole and may not be frozen again; serves what takes frozen food.
  bool thawed = false;
  /// Of an opened pack: the last days on which it is good unfrozen, and as portions in the freezer.
  Day until = never;
  Day frozen_until = never;
  /// And the day on which such portions went into the freezer.
  Day frozen_on = never;
  Amount left = 0;
  /// Of it, what demands have taken beyond what they must have (their give), unless another demand
  /// cannot do without it.
  Amount lent = 0;

  [[nodiscard]] Amount free() const { return left - lent; }

  [[nodiscard]] auto key() const {
    return std::tie(source, open, thawed, until, frozen_until, frozen_on);
  }
  friend bool operator==(const Holding&, const Holding&) = default;
};

inline Holding unopened_of(std::size_t source, Amount amount) {
  Holding held;
  held.source = static_cast<std::uint32_t>(source);
  held.left = amount;
  return held;
}

/// It keeps if it is frozen when it comes home, and only then.
inline bool is_frozen_to_keep(const Prepared& item, const Holding& held) {
  return !held.open && !item.keeps_cool(held.source) && item.keeps_frozen(held.source) &&
         !item.sources[held.source].in_freezer;
}

/// By key, each once.
using Holdings = std::vector<Holding>;

inline Holdings::iterator place_of(Holdings& held, const Holding& one) {
  return std::lower_bound(held.begin(), held.end(), one,
                          [](const Holding& a, const Holding& b) { return a.key() < b.key(); });
}

/// Adds to what is held.
inline void put(Holdings& held, const Holding& one) {
  const auto place = place_of(held, one);
  if (place == held.end() || place->key() != one.key()) {
    held.insert(place, one);
    return;
  }
  place->left += one.left;
  place->lent += one.lent;
}

} // namespace manciple::buying
