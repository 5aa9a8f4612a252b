#pragma once

#include <cstdint>
#include <span>
#include <vector>

namespace manciple::scheduling {

/// A variable seen from below or from above: side 2v is the variable v, side 2v + 1 is -v. What
/// holds for the lower bounds of sides then holds for both bounds of variables.
using Side = std::uint32_t;

constexpr Side other(Side side) {
  return side ^ 1U;
}

/// "This side is at least that much": the only kind of fact that the search knows. [v <= 7] is
/// {2v + 1, -7}.
struct Bound {
  Side side = 0;
  int least = 0;
};

constexpr Bound opposite(Bound bound) {
  return {other(bound.side), 1 - bound.least};
}

/// The bounds of all variables with the history of how they came about, level by level, so that
/// they can be taken back and a conflict can be traced to what it follows from.
class Trail {
public:
  /// A fact on the trail. The entries below the first level follow from the project alone.
  struct Entry {
    Side side = 0;
    int value = 0;    ///< what the side is at least from here on
    int replaced = 0; ///< what it was before
    int previous = 0; ///< the entry that said so, -1 for none
    int level = 0;
    std::size_t reasons = 0; ///< the bounds it follows from: begin in the store
    std::size_t count = 0;
    int clause = -1; ///< the learnt clause that it comes from, if one
  };

  /// A variable from `least` to `most`; the number of its lower side.
  Side add(int least, int most);
  [[nodiscard]] std::size_t sides() const { return now_.size(); }

  [[nodiscard]] int at(Side side) const { return now_[side]; }
  [[nodiscard]] bool holds(Bound bound) const { return now_[bound.side] >= bound.least; }
  [[nodiscard]] bool fails(Bound bound) const { return holds(opposite(bound)); }
  [[nodiscard]] bool fixed(Side side) const { return now_[side] == -now_[other(side)]; }

  /// Makes a bound hold that follows from `reasons`, which all hold. False if it fails; conflict()
  /// is then a set of bounds that hold now and cannot hold together.
  bool set(Bound bound, std::span<const Bound> reasons, int clause = -1);
  bool raise_conflict(std::span<const Bound> reasons, int clause = -1);
  [[nodiscard]] const std::vector<Bound>& conflict() const { return conflict_; }
  [[nodiscard]] int conflict_clause() const { return conflict_clause_; }

  /// Opens a level with a bound that is assumed.
  void decide(Bound bound);
  void back(int level);
  [[nodiscard]] int level() const { return static_cast<int>(levels_.size()); }

  [[nodiscard]] std::size_t size() const { return entries_.size(); }
  [[nodiscard]] const Entry& entry(std::size_t i) const { return entries_[i]; }
  [[nodiscard]] std::span<const Bound> reasons(const Entry& entry) const {
    return {store_.data() + entry.reasons, entry.count};
  }
  /// The entry that first made a bound hold; -1 if it holds without any level.
  [[nodiscard]] int source(Bound bound) const;

private:
  struct Level {
    std::size_t entries = 0;
    std::size_t store = 0;
  };
  void push(Bound bound, std::span<const Bound> reasons, int clause);

  std::vector<int> now_;    // by side
  std::vector<int> latest_; // by side, the last entry
  std::vector<Entry> entries_;
  std::vector<Bound> store_; // reasons
  std::vector<Level> levels_;
  std::vector<Bound> conflict_;
  int conflict_clause_ = -1;
};

} // namespace manciple::scheduling
