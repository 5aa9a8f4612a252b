#pragma once

#include "buying/item/holding.hpp"

#include <cstdint>
#include <vector>

namespace manciple::buying {

/// Different states of what is held, numbered in the order in which they come up, and found again
/// by hashing with open addressing (Knuth 1973).
class StateTable {
public:
  StateTable() { clear(); }

  [[nodiscard]] std::size_t size() const { return ends_.size() - 1; }
  [[nodiscard]] const Holding* begin(std::size_t number) const {
    return holdings_.data() + ends_[number];
  }
  [[nodiscard]] const Holding* end(std::size_t number) const {
    return holdings_.data() + ends_[number + 1];
  }
  void clear() {
    holdings_.clear();
    ends_.assign(1, 0);
    table_.assign(smallest_table, none);
  }
  /// The state's number.
  std::size_t add(const Holdings& state) {
    if (2 * (size() + 1) > table_.size()) {
      grow();
    }
    const Holding* const first = state.data();
    const std::size_t slot = find(first, first + state.size());
    if (table_[slot] == none) {
      table_[slot] = static_cast<std::uint32_t>(size());
      holdings_.insert(holdings_.end(), state.begin(), state.end());
      ends_.push_back(holdings_.size());
    }
    return table_[slot];
  }

private:
  static constexpr std::uint32_t none = UINT32_MAX;
  static constexpr std::size_t smallest_table = 32;

  /// Where the state is in the table, or belongs.
  [[nodiscard]] std::size_t find(const Holding* first, const Holding* last) const {
    std::uint64_t hash = 0;
    const auto mix = [&](std::int64_t value) {
      hash = (hash ^ static_cast<std::uint64_t>(value)) * 0x9e3779b97f4a7c15U;
    };
    for (const Holding* held = first; held != last; ++held) {
      mix((std::int64_t{held->source} << 2U) + (held->open ? 2 : 0) + (held->thawed ? 1 : 0));
      mix((std::int64_t{held->until} << 24U) + held->frozen_until);
      mix(held->frozen_on);
      mix(held->left);
      mix(held->lent);
    }
    std::size_t slot = static_cast<std::size_t>(hash >> 32U) & (table_.size() - 1);
    while (table_[slot] != none &&
           !std::equal(first, last, begin(table_[slot]), end(table_[slot]))) {
      slot = (slot + 1) & (table_.size() - 1);
    }
    return slot;
  }

  void grow() {
    table_.assign(2 * table_.size(), none);
    for (std::uint32_t number = 0; number < size(); ++number) {
      table_[find(begin(number), end(number))] = number;
    }
  }

  std::vector<Holding> holdings_;
  std::vector<std::size_t> ends_;
  /// A power of two of slots, at most half of them taken.
  std::vector<std::uint32_t> table_;
};

} // namespace manciple::buying
