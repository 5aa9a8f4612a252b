#pragma once

#include <cstdint>
#include <vector>

#include "purchase/model.hpp"

namespace manciple::purchase {

/// Different states (lists of amounts of one length), numbered in the order in which they come up,
/// and found again by hashing with open addressing (Knuth 1973).
class States {
public:
  explicit States(std::size_t length) : length_(length) { clear(); }

  std::size_t size() const { return amounts_.size() / length_; }
  const Amount* at(std::size_t number) const { return amounts_.data() + number * length_; }
  void clear() {
    amounts_.clear();
    table_.assign(smallest_table, none);
  }
  /// The state's number.
  std::size_t add(const std::vector<Amount>& state) {
    if (2 * (size() + 1) > table_.size())
      grow();
    const std::size_t slot = find(state.data());
    if (table_[slot] == none) {
      table_[slot] = static_cast<std::uint32_t>(size());
      amounts_.insert(amounts_.end(), state.begin(), state.end());
    }
    return table_[slot];
  }

private:
  static constexpr std::uint32_t none = UINT32_MAX;
  static constexpr std::size_t smallest_table = 32;

  /// Where the state is in the table, or belongs.
  std::size_t find(const Amount* state) const {
    std::uint64_t hash = 0;
    for (std::size_t i = 0; i < length_; ++i)
      hash = (hash ^ static_cast<std::uint64_t>(state[i])) * 0x9e3779b97f4a7c15U;
    std::size_t slot = static_cast<std::size_t>(hash >> 32U) & (table_.size() - 1);
    while (table_[slot] != none && !same(state, at(table_[slot])))
      slot = (slot + 1) & (table_.size() - 1);
    return slot;
  }

  bool same(const Amount* a, const Amount* b) const {
    std::size_t i = 0;
    while (i < length_ && a[i] == b[i])
      ++i;
    return i == length_;
  }

  void grow() {
    table_.assign(2 * table_.size(), none);
    for (std::uint32_t number = 0; number < size(); ++number)
      table_[find(at(number))] = number;
  }

  std::size_t length_;
  std::vector<Amount> amounts_;
  /// A power of two of slots, at most half of them taken.
  std::vector<std::uint32_t> table_;
};

} // namespace manciple::purchase
