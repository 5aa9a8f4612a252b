#pragma once

#include <cstddef>
#include <cstdint>

namespace manciple {

/// Pseudo-random numbers that are the same with every standard library (splitmix64, Steele, Lea
/// and Flood 2014).
class Dice {
public:
  explicit Dice(std::uint64_t seed) : state_(seed) {}

  std::uint64_t next() {
    state_ += 0x9e3779b97f4a7c15U;
    std::uint64_t z = state_;
    z = (z ^ (z >> 30U)) * 0xbf58476d1ce4e5b9U;
    z = (z ^ (z >> 27U)) * 0x94d049bb133111ebU;
    return z ^ (z >> 31U);
  }

  /// Low ... high, both included.
  std::int64_t pick(std::int64_t low, std::int64_t high) {
    return low + static_cast<std::int64_t>(next() % static_cast<std::uint64_t>(high - low + 1));
  }
  int number(int low, int high) { return static_cast<int>(pick(low, high)); }
  std::size_t index(std::size_t size) { return static_cast<std::size_t>(next() % size); }
  bool one_in(int n) { return number(1, n) == 1; }

private:
  std::uint64_t state_;
};

} // namespace manciple
